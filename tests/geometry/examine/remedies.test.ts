import { describe, expect, it } from "vitest";
import { applied } from "../../../geometry/examine/applied.ts";
import { remediesFor } from "../../../geometry/examine/remedies.ts";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Finding, Remedy, Sheet } from "../../../geometry/finding.ts";
import type { Instrument } from "../../../geometry/instrument.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { workOut } from "../../../geometry/workout.ts";
import { generated } from "../../fixtures/generated.ts";
import { arborOf, collet, instrumentOf } from "../../fixtures/handmade.ts";
import { jumble } from "../../fixtures/jumble.ts";

const name = (f: Finding) => `${f.code} ${[...f.between].sort().join("+")}`;
const fouls = (sheet: Sheet) => new Set(sheet.findings.filter((f) => f.severity === "foul").map(name));

/** What is wrong with a remedy once it is carried out and everything is examined again. */
function faultsOf(movement: Movement, sheet: Sheet, finding: Finding, remedy: Remedy): string[] {
  const after = examine(workOut(applied(movement, remedy)));
  const before = fouls(sheet);
  return [
    ...after.findings.filter((f) => name(f) === name(finding)).map((f) => `${remedy.says} leaves ${f.says}`),
    ...[...fouls(after)].filter((f) => !before.has(f)).map((f) => `${remedy.says} brings ${f}`),
  ];
}

function tried(instrument: Instrument, thorough = false): { offered: number; faults: string[] } {
  const movement = workOut(instrument), sheet = examine(movement, { thorough });
  const remedies = sheet.findings.filter((f) => f.code === "gap").flatMap((f) => f.remedies.map((r) => [f, r] as const));
  return { offered: remedies.length, faults: remedies.flatMap(([f, r]) => faultsOf(movement, sheet, f, r)) };
}

const disc = (id: string, z: number, diameter: number) => collet(id, z, 2, diameter);
const wheel = (id: string, teeth: number, z: number) => ({ id, kind: "wheel" as const, teeth, z, thickness: 2 });

describe("remedies", () => {
  it("[REMEDY1] every one that is offered cures its finding and brings no new foul, in any instrument", () => {
    let offered = 0;
    for (let seed = 0; seed < 25; seed++) {
      const all = tried(jumble(seed, 5));
      expect(all.faults).toEqual([]);
      offered += all.offered;
    }
    expect(offered).toBeGreaterThan(15);
  });

  it("[REMEDY1] likewise in a large train", () => {
    const { offered, faults } = tried(generated(240));
    expect(offered).toBeGreaterThan(3);
    expect(faults).toEqual([]);
  });

  it("[REMEDY2] an arbor that is free goes straight, just so far as is wanted", () => {
    const movement = workOut(instrumentOf({ arbors: [
      arborOf("A", 0, 0, { steady: true, parts: [disc("a", 0, 20)] }), arborOf("B", 11.5, 0, { foot: -1, head: 4 }),
    ] }));
    const [finding] = examine(movement).findings.filter((f) => f.code === "gap");
    expect(finding).toMatchObject({ between: ["a", "B"], severity: "tight", worst: expect.closeTo(0.5 - 0.03, 9) });
    const [move] = finding!.remedies;
    expect(move?.move).toBe("B");
    const { x, y } = move!.by as { x: number; y: number };
    expect(x).toBeGreaterThanOrEqual(0.53 - 1e-9);
    expect(x).toBeLessThan(0.535);
    expect(Math.abs(y)).toBeLessThan(1e-9);
  });

  it("[REMEDY2] an arbor in gear with one other slides on its arc and keeps its distance", () => {
    const instrument = instrumentOf({
      arbors: [
        arborOf("A", 0, 0, { steady: true, foot: -1, head: 5, parts: [wheel("a", 40, 0)] }),
        arborOf("B", 30, 0, { foot: -1, head: 5, parts: [wheel("b", 20, 0)] }),
        arborOf("P", 38, 8, { steady: true, foot: -1, head: 5 }),
      ],
      engagements: [{ driver: "a", driven: "b" }],
    });
    const movement = workOut(instrument), sheet = examine(movement);
    const finding = sheet.findings.find((f) => f.code === "gap" && f.between.includes("b") && f.between.includes("P"))!;
    const slide = finding.remedies.find((r) => r.move === "B")!;
    expect(faultsOf(movement, sheet, finding, slide)).toEqual([]);
    const { x, y } = slide.by as { x: number; y: number };
    expect(Math.abs(Math.hypot(30 + x, y) - 30)).toBeLessThan(1e-9);
    expect(slide.says).toContain("in gear");
  });

  it("[REMEDY3] a part goes up or down by hundredths, keeps its engagement, its neighbours and its arbor's length", () => {
    const instrument = instrumentOf({ arbors: [
      arborOf("A", 0, 0, { steady: true, parts: [disc("a", 5, 20), disc("top", 12, 20)] }),
      arborOf("B", 15, 0, { steady: true, foot: 2, head: 4, parts: [disc("b", 2, 24)] }),
    ] });
    const movement = workOut({ ...instrument, arbors: [instrument.arbors[0]!, { ...instrument.arbors[1]!, parts: [{ ...disc("b", 2, 24), thickness: 3.2 } as never] }] });
    const finding = examine(movement).findings.find((f) => f.code === "gap" && f.between.includes("a") && f.between.includes("b"))!;
    expect(finding).toMatchObject({ way: "height", severity: "foul", gap: expect.closeTo(-0.2, 9) });
    // 0.2 shared, both half endshakes 0.075, both wobbles 0.05 and 0.5 wanted.
    expect(finding.remedies).toEqual([{ says: "Raise collet a by 0.95 mm", move: "a", by: { z: 0.95 } }]);
  });

  it("[REMEDY4] a steady arbor, and one whose hole is made, stays", () => {
    const pair = (own: object) => workOut(instrumentOf({ arbors: [
      arborOf("A", 0, 0, { steady: true }), arborOf("B", 1, 0, own),
    ] }));
    const moves = (own: object) => examine(pair(own)).findings.find((f) => f.code === "gap")!.remedies.map((r) => r.move);
    expect(moves({})).toEqual(["B"]);
    expect(moves({ steady: true })).toEqual([]);
    expect(moves({ measured: { x: 1, y: 0 } })).toEqual([]);
  });

  it("[REMEDY5] where an arbor is in gear all round, the others follow it; sought only where time is given", () => {
    const arbors = [
      arborOf("A", 0, 0, { steady: true, foot: -1, head: 9, parts: [wheel("a", 40, 0)] }),
      arborOf("B", 30, 0, { foot: -1, head: 9, parts: [wheel("b", 20, 0), wheel("b2", 30, 4)] }),
      arborOf("C", 55, 0, { foot: -1, head: 9, parts: [wheel("c", 20, 4)] }),
      arborOf("P", 34.5, 10, { steady: true, foot: -1, head: 3 }),
    ];
    const movement = workOut(instrumentOf({ arbors, engagements: [{ driver: "a", driven: "b" }, { driver: "b2", driven: "c" }] }));
    const find = (sheet: Sheet) => sheet.findings.find((f) => f.code === "gap" && f.between.includes("b") && f.between.includes("P"))!;
    const quick = examine(movement), slow = examine(movement, { thorough: true });
    expect(find(quick).remedies).toEqual([]);
    const [pull] = find(slow).remedies;
    expect(pull?.with?.map((w) => w.move)).toEqual(["C"]);
    expect(faultsOf(movement, quick, find(slow), pull!)).toEqual([]);
    expect(remediesFor(movement, find(quick))).toEqual(find(slow).remedies);
  });

  it("[REMEDY6] where places are left to the solver, a remedy is tried by planting anew", () => {
    const arbors = [
      arborOf("A", 0, 0, { steady: true, foot: -1, head: 5, parts: [wheel("a", 40, 0)] }),
      { ...arborOf("B", 0, 0, { foot: -1, head: 5, parts: [wheel("b", 20, 0)] }), x: undefined, y: undefined },
      arborOf("C", -40, 0, { foot: -1, head: 9, parts: [disc("c", 6, 20)] }), arborOf("D", -40, 9.5, { foot: 5, head: 9, parts: [] }),
    ].map(({ x, y, ...rest }) => (x === undefined || y === undefined ? rest : { ...rest, x, y }));
    const { offered, faults } = tried(instrumentOf({ arbors, engagements: [{ driver: "a", driven: "b" }] }));
    expect(offered).toBeGreaterThan(0);
    expect(faults).toEqual([]);
  });
});
