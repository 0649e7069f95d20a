import { describe, expect, it } from "vitest";
import { whatGoesBefore, orderOfEntry } from "../../../geometry/assembly/before.ts";
import { freedRing, freedThrough } from "../../../geometry/assembly/freeing.ts";
import { platesThrough } from "../../../geometry/assembly/through.ts";
import { entryOf } from "../../../geometry/examine/entry.ts";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Arbor, Part } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arborOf, collet, instrumentOf } from "../../fixtures/handmade.ts";

const ring: Arbor[] = [
  arborOf("A", 0, 0, { parts: [collet("A1", 2, 1, 16), collet("A2", 8, 1, 16)] }),
  arborOf("B", 14, 0, { parts: [collet("B1", 4, 1, 16)] }), arborOf("C", 7, 12, { parts: [collet("C1", 6, 1, 16)] }),
];
const movementOf = (arbors: Arbor[]) => workOut(instrumentOf({ arbors }));
const largest = (arbors: Arbor[]) => {
  const m = movementOf(arbors);
  return Math.max(...orderOfEntry(m.arbors.length, whatGoesBefore(m)).map((g) => g.length));
};
const without = (arbors: readonly Arbor[], id: string) => arbors.map((a) => ({ ...a, parts: a.parts.filter((p) => p.id !== id) }));

describe("what frees a closed ring", () => {
  it("[ENTRY5] each part named as opening it does so when it is taken off, and no other does", () => {
    const { split } = freedRing(movementOf(ring), [0, 1, 2]);
    const oracle = ring.flatMap((a) => a.parts.map((p) => p.id)).filter((id) => largest(without(ring, id)) < 3);
    expect(split).toEqual(oracle);
    expect(split.length).toBeGreaterThan(0);
  });
  it("[ENTRY5] an arbor in a cock of its own leaves no ring; a change of levels likewise", () => {
    const { cock, swap } = freedRing(movementOf(ring), [0, 1, 2]);
    expect(cock).toContain("B");
    for (const id of cock) expect(largest(ring.filter((a) => a.id !== id))).toBeLessThan(3);
    const [p, q] = swap ?? ["", ""];
    const heights = new Map(ring.flatMap((a) => a.parts.map((part) => [part.id, part.z] as const)));
    const swapped = ring.map((a) => ({ ...a, parts: a.parts.map((part): Part => (part.id === p ? { ...part, z: heights.get(q)! } : part.id === q ? { ...part, z: heights.get(p)! } : part)) }));
    expect(largest(swapped)).toBeLessThan(3);
  });
  it("[ENTRY5] the finding says which is trapped and what would free it", () => {
    const finding = entryOf(movementOf(ring)).findings.find((f) => f.severity === "tight");
    expect(finding?.says).toMatch(/is trapped between the others\. A cock for [ABC], or [ABC]\d made to come off, or .* on each other's levels would free them/);
  });
  it("[ENTRY5] four arbors each two of which enclose one another are freed by no one change, and that is said", () => {
    const both = (id: string, x: number, y: number, z: number) => arborOf(id, x, y, { parts: [collet(`${id}1`, z, 0.5, 40), collet(`${id}2`, z + 8, 0.5, 40)] });
    const tangle = [both("A", 0, 0, 0), both("B", 5, 0, 1), both("C", 0, 5, 2), both("D", 5, 5, 3)];
    expect(freedRing(movementOf(tangle), [0, 1, 2, 3])).toEqual({ cock: [], split: [], swap: null });
    expect(entryOf(movementOf(tangle)).findings.find((f) => f.severity === "tight")?.says).toContain("split the frame between them");
  });
});

describe("a very long train", () => {
  it("[ENTRY5] [LOST1] of two thousand arbors, each with a display whose rate has a thousand figures, has its sheet", () => {
    const count = 2000, across = 45;
    const arbors = Array.from({ length: count }, (_, i) => {
      const row = Math.floor(i / across), along = row % 2 === 0 ? i % across : across - 1 - (i % across);
      return arborOf(`A${i}`, 40.5 * along, 40.5 * row, { parts: [
        { id: `p${i}`, kind: "pinion" as const, leaves: 20, z: 2 + 4 * ((i + 1) % 2), thickness: 2 }, { id: `w${i}`, kind: "wheel" as const, teeth: 61, z: 2 + 4 * (i % 2), thickness: 2 },
      ] });
    });
    const sheet = examine(workOut({
      ...instrumentOf({ arbors }), engagements: arbors.slice(1).map((_, i) => ({ driver: `w${i}`, driven: `p${i + 1}` })),
      input: { arbor: "A0", days: 1, sense: "clockwise" }, displays: arbors.map(({ id }) => ({ id: `D${id}`, name: id, arbor: id, days: 29.53 })),
    }));
    expect(sheet.arbors[count - 1]?.rate?.length).toBeGreaterThan(1000);
    expect(sheet.displays).toHaveLength(count);
    expect(sheet.findings.length).toBeGreaterThan(count);
  }, 120_000);
});

describe("what frees an arbor trapped through a plate", () => {
  const inPlate = (parts: Part[], opening: number) => workOut({
    ...instrumentOf({ arbors: [arborOf("A", 0, 0, { parts })] }),
    frame: { plates: [{ id: "front", z: 10, thickness: 2, outline: { circle: { diameter: 100 } }, openings: [{ x: 0, y: 0, diameter: opening }] }], pillars: [] },
  });
  it("[ENTRY5] the opening named is the least that lets one side through", () => {
    const parts = [collet("low", 3, 1, 9), collet("high", 15, 1, 12)];
    const m = inPlate(parts, 4);
    const { opening, loosen } = freedThrough(m, 0, platesThrough(m, 0)[0]!);
    expect(opening).toBe(9);
    expect(platesThrough(inPlate(parts, opening), 0)[0]?.trapped).toBe(false);
    expect(platesThrough(inPlate(parts, opening - 0.001), 0)[0]?.trapped).toBe(true);
    const freed = parts.map((p): Part => (loosen.includes(p.id) ? { ...p, join: { by: "screw" } } : p));
    expect(platesThrough(inPlate(freed, 4), 0)[0]?.trapped).toBe(false);
  });
});
