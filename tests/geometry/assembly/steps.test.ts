import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { puttingTogether, takingDown } from "../../../geometry/assembly/steps.ts";
import { unitsOf } from "../../../geometry/assembly/units.ts";
import type { Arbor, Instrument, Part, Plate } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";

const plate = (id: string, z: number, more: Partial<Plate> = {}): Plate => ({ id, z, thickness: 2, outline: { circle: { diameter: 200 } }, ...more });
const collet = (id: string, z: number, diameter: number, more: Partial<Part> = {}): Part => ({ id, kind: "collet", z, thickness: 1, diameter, ...more }) as Part;
/** Between plates whose faces are at 0 and 20. */
const arbor = (id: string, x: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({
  id, x, y: 0, diameter: 3, foot: -2, head: 22, parts,
  pivots: { foot: { diameter: 1, length: 2.1, plate: "back" }, head: { diameter: 1, length: 2.1, plate: "front" } }, ...more,
});
const worked = (arbors: Arbor[], more: Partial<Instrument> = {}) => workOut({
  endshake: 1, name: "dry fit", frame: { plates: [plate("back", -2), plate("front", 20)], pillars: [] }, arbors, engagements: [],
  input: { arbor: arbors[0]?.id ?? "A", days: 1, sense: "clockwise" }, ...more,
});
const ids = (movement: ReturnType<typeof worked>) => puttingTogether(movement).steps.map((s) => s.ids.join("+"));
const estuary = workOut(JSON.parse(readFileSync(new URL("../../../public/instruments/estuary-dial.instrument.json", import.meta.url), "utf8")) as Instrument);

describe("putting together", () => {
  it("[ENTRY6] arbors go in from the lowest up, then the plate that catches their heads", () => {
    const m = worked([arbor("A", 0, [collet("A1", 8, 20)]), arbor("B", 15, [collet("B1", 3, 20)])]);
    expect(puttingTogether(m).base).toBe("back");
    expect(ids(m)).toEqual(["B", "A", "front"]);
  });
  it("[ENTRY6] what stands over the front plate waits for it; a cock behind the back plate comes last, from behind", () => {
    const hand: Arbor = { id: "R", x: 0, y: 0, diameter: 4, foot: 23, head: 26, parts: [collet("R1", 24, 12)] };
    const cock = plate("cock", -8, { outline: { circle: { diameter: 12 } } });
    const m = worked([hand, arbor("A", 0, [collet("A1", 8, 20)])], { frame: { plates: [cock, plate("back", -2), plate("front", 20)], pillars: [] } });
    expect(ids(m)).toEqual(["A", "front", "R", "cock"]);
    expect(unitsOf(m).units.find((u) => u.id === "cock")?.behind).toBe(true);
  });
  it("[ENTRY7] a pinned pointer outside goes on after the plate, a screwed collet after the pipe that it locks in", () => {
    const through = arbor("A", 0, [collet("A1", 8, 20), { id: "A2", kind: "pointer", z: 24, thickness: 1, length: 30, tail: 5, width: 2, angle: 0, join: { by: "pin" } }], { head: 26, pivots: { foot: { diameter: 1, length: 2.1, plate: "back" }, head: { diameter: 1, length: 6.1, plate: "front" } } });
    expect(ids(worked([through]))).toEqual(["A", "front", "A2"]);
    const locked = arbor("A", 0, [collet("A1", 2, 12), collet("A9", 12, 8, { join: { by: "screw" } })]);
    const pipe: Arbor = { id: "E", diameter: 5, bore: 3.04, foot: 4, head: 11, rides: { on: "A", radius: 0, angle: 0 }, parts: [collet("E1", 6, 20)] };
    expect(ids(worked([locked, pipe]))).toEqual(["A", "E", "A9", "front"]);
    expect(puttingTogether(worked([locked, pipe])).steps[2]?.says).toBe("on to A, held by a screw; holds E in");
    const fast = { ...locked, parts: locked.parts.map((p): Part => ({ ...p, join: { by: "soft solder" } })) };
    expect(ids(worked([fast, pipe]))).toEqual(["A+E", "front"]);
  });
  it("[ENTRY7] a collet held by a pin, or a hub on a square, locks in what rides under it; one that passes the bore does not", () => {
    const pipe = (bore: number): Arbor => ({ id: "E", diameter: bore + 2, bore, foot: 4, head: 11, rides: { on: "A", radius: 0, angle: 0 }, parts: [collet("E1", 6, 20)] });
    const over = (by: "pin" | "square", diameter = 8) => arbor("A", 0, [collet("A1", 2, 12), collet("A9", 12, diameter, { join: { by } })]);
    for (const [by, held] of [["pin", "held by a pin"], ["square", "held by its square"]] as const) {
      const { steps } = puttingTogether(worked([over(by), pipe(3.04)]));
      expect(steps.map((s) => s.ids.join("+"))).toEqual(["A", "E", "A9", "front"]);
      expect(steps[2]?.says).toBe(`on to A, ${held}; holds E in`);
      // And nothing under it comes off before it does.
      expect(takingDown(worked([over(by), pipe(3.04)]), "E")).toEqual([["front"], ["A9"], ["E"]]);
    }
    expect(ids(worked([over("pin", 3.02), pipe(3.04)]))).not.toContain("A9");
  });
  it("[ENTRY8] a little lean lets one of two go in last, and is told instead of bringing both down together", () => {
    const m = worked([arbor("A", 0, [collet("A1", 10, 20)], { pivots: { foot: { diameter: 1, length: 2, plate: "back" } } }), arbor("B", 19.5, [collet("B1", 5, 20), collet("B2", 14, 20)])]);
    const [both] = puttingTogether(m).steps;
    // Half a millimetre of overlap, 11 over the hole.
    expect(both?.lean).toEqual({ arbor: "A", degrees: (Math.atan2(0.5, 11) * 180) / Math.PI });
    expect(both?.says).toContain("both brought down together, or A last, leaned 2.6°");
  });
  it("[ENTRY8] lifted clear: a foot out of its hole, a wheel over its mate, a pipe over the whole arbor", () => {
    const lifts = (arbors: Arbor[]) => puttingTogether(worked(arbors)).steps.map((s) => s.lift);
    expect(lifts([arbor("A", 0, [])])).toEqual([2, 2]);
    // B's collet from 6 must rise over A's, whose top is 9, since both share the heights from 6 to 9.
    expect(lifts([arbor("A", 0, [{ ...collet("A1", 4, 20), thickness: 5 }]), arbor("B", 15, [{ ...collet("B1", 6, 20), thickness: 9 }])])[1]).toBe(3);
    const pipe: Arbor = { id: "E", diameter: 5, bore: 3.04, foot: 10, head: 30, rides: { on: "A", radius: 0, angle: 0 }, parts: [] };
    expect(lifts([arbor("A", 0, [], { head: 36, pivots: {} }), pipe])[1]).toBe(26);
  });
  it("[ENTRY8] two that enclose one another go in together; the lean is the closed form atan(overlap / height)", () => {
    const m = worked([arbor("A", 0, [collet("A1", 10, 20)], { pivots: { foot: { diameter: 1, length: 2, plate: "back" } } }), arbor("B", 16, [collet("B1", 5, 20), collet("B2", 14, 20)])]);
    const [both] = puttingTogether(m).steps;
    expect(both?.ids).toEqual(["A", "B"]);
    // A1's top stands 11 over the hole and 4 under B2; B1's stands 5.9 over its own and as far under A1.
    expect(both?.lean?.arbor).toBe("A");
    expect(both?.lean?.degrees).toBeCloseTo((Math.atan2(4, 11) * 180) / Math.PI, 9);
    expect(both?.says).toContain("20° of lean is more than A bears");
  });
  it("[ENTRY9] a plate counts the heads that it catches, and how far one can stand out", () => {
    const m = worked([arbor("A", 0, []), arbor("B", 30, [])]);
    // 0.03 mm of shake in a hole 2 mm deep, 22 mm under the head: 0.33 mm.
    expect(puttingTogether(m).steps.at(-1)?.says).toBe("two pivots to catch at once; A leans most, its head up to 0.3 mm out");
  });
  it("[ENTRY10] taking down gives exactly what lies over it, itself last", () => {
    const m = worked([arbor("A", 0, [collet("A1", 8, 20)]), arbor("B", 15, [collet("B1", 3, 20)]), arbor("C", 60, [])]);
    expect(takingDown(m, "A")).toEqual([["front"], ["A"]]);
    expect(takingDown(m, "B")).toEqual([["front"], ["A"], ["B"]]);
    expect(takingDown(m, "front")).toEqual([["front"]]);
    expect(takingDown(m, "nothing of that name")).toEqual([]);
  });
  it("[ENTRY6] [ENTRY10] on random stacks: every unit once, nothing before what it waits for, and what is not named may stay", () => {
    const made = fc.array(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: 4, max: 30 }), fc.integer({ min: 0, max: 18 })), { minLength: 1, maxLength: 8 });
    fc.assert(fc.property(made, (rows) => {
      const m = worked(rows.map(([x, d, z], i) => arbor(`N${i}`, x, [collet(`N${i}.1`, z, d)], { y: 11 * i })));
      const { units, before } = unitsOf(m);
      const steps = ids(m).flatMap((s) => s.split("+"));
      expect([...steps].sort()).toEqual(units.map((u) => u.id).sort());
      for (const unit of units) {
        const out = takingDown(m, unit.id).flat();
        expect(out.at(-1)).toBe(takingDown(m, unit.id).at(-1)?.at(-1));
        expect(out).toContain(unit.id);
        for (const b of before) if (out.includes(units[b.first]!.id)) expect(out).toContain(units[b.then]!.id);
      }
    }), { seed: 104, numRuns: 60 });
  });
  it("[ENTRY6] the estuary dial goes together in fourteen steps or fewer, plate before pointers, each arbor said", () => {
    const { steps } = puttingTogether(estuary);
    const at = (id: string) => steps.findIndex((s) => s.ids.includes(id));
    expect(steps.at(-1)?.title).toBe("Pointers");
    expect(at("front")).toBe(steps.length - 2);
    for (const e of estuary.engagements) expect(at(estuary.arbors[e.driverArbor]!.id)).toBeLessThan(at("front"));
    expect(steps[at("G")]?.says).toBe("over E1 and H1; into E2 and F1 at once");
    for (const s of steps) expect(s.says.length).toBeGreaterThan(3);
  });
});
