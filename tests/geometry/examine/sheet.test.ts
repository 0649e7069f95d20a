import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { examine } from "../../../geometry/examine/sheet.ts";
import { gravestFirst } from "../../../geometry/examine/order.ts";
import type { Finding, Sheet } from "../../../geometry/finding.ts";
import type { Instrument } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";
import { mirrored, renamed, shuffled, turned } from "../../fixtures/changed.ts";
import { generated } from "../../fixtures/generated.ts";
import { arborOf, collet, instrumentOf } from "../../fixtures/handmade.ts";
import { jumble } from "../../fixtures/jumble.ts";

const RUNS = { seed: 4711, numRuns: 50 };
/** mm, and other figures likewise: what rounding may change when an instrument is turned. */
const ROUNDING = 1e-6;
/** mm: what the gap of followed outlines is true to, from either side. */
const FOLLOWED = 2e-3;

const sheetOf = (instrument: Instrument): Sheet => examine(workOut(instrument), { all: true });
const seeds = fc.integer({ min: 0, max: 1e9 });

/** Findings by code and what quarrels, whichever is named first. */
const byName = (sheet: Sheet, old: (id: string) => string = (id) => id) =>
  new Map(sheet.findings.map((f) => [`${f.code} ${f.between.map(old).sort().join("+")}`, f]));

/** The same findings, severities, ways and figures; those at a limit may tip over by rounding and are left aside. */
function expectSame(one: Sheet, other: Sheet, old?: (id: string) => string) {
  const a = byName(one), b = byName(other, old);
  expect([...b.keys()].sort()).toEqual([...a.keys()].sort());
  for (const [name, f] of a) {
    const g = b.get(name)!;
    if (isAtLimit(f)) continue;
    expect([name, g.severity, g.way]).toEqual([name, f.severity, f.way]);
    for (const figure of ["gap", "worst", "wanted"] as const)
      expect(Math.abs((f[figure] ?? 0) - (g[figure] ?? 0)), `${name} ${figure}`).toBeLessThan(f.when ? FOLLOWED : ROUNDING);
  }
  expect(other.counts.foul + other.counts.tight + other.counts.free).toBe(one.counts.foul + one.counts.tight + one.counts.free);
}

const isAtLimit = ({ worst = NaN, wanted = NaN }: Finding): boolean => Math.abs(worst) < ROUNDING || Math.abs(worst - wanted) < ROUNDING;

describe("a sheet of any instrument", () => {
  it("[SHEET1] is the same for the instrument turned round or mirrored", () => {
    fc.assert(fc.property(seeds, fc.double({ min: -180, max: 180, noNaN: true }), (seed, deg) => {
      const sheet = sheetOf(jumble(seed, 6));
      expectSame(sheet, sheetOf(turned(jumble(seed, 6), deg)));
      expectSame(sheet, sheetOf(mirrored(jumble(seed, 6))));
    }), RUNS);
  });

  it("[SHEET1] is the same whatever the order of the file, to the last word, and whatever the names", () => {
    fc.assert(fc.property(seeds, (seed) => {
      const instrument = jumble(seed, 6), sheet = sheetOf(instrument);
      const other = sheetOf(shuffled(instrument, seed + 1));
      expectSame(sheet, other);
      const told = (s: Sheet) => s.findings.filter((f) => f.code === "gap").map((f) => f.says);
      expect(told(other)).toEqual(told(sheet));
      const { instrument: anew, old } = renamed(instrument, seed + 2);
      expectSame(sheet, sheetOf(anew), (id) => old.get(id) ?? id);
    }), RUNS);
  });

  it("[SHEET2] counts every examined item once, listed or not, and lists what is free only where it is asked for", () => {
    fc.assert(fc.property(seeds, (seed) => {
      const movement = workOut(jumble(seed));
      const brief = examine(movement), full = examine(movement, { all: true });
      expect(brief.counts).toEqual(full.counts);
      const listed = (s: Sheet, severity: string) => s.findings.filter((f) => f.severity === severity).length;
      for (const severity of ["foul", "tight", "free"] as const) expect(listed(full, severity)).toBe(full.counts[severity]);
      expect(listed(brief, "free")).toBe(0);
      expect(brief.findings).toEqual(full.findings.filter((f) => f.severity !== "free"));
    }), RUNS);
  });

  it("[SHEET3] lists the gravest first, and what lacks most before what lacks less", () => {
    const { findings } = sheetOf(generated(60));
    const rank = { foul: 0, tight: 1, free: 2 };
    for (let i = 1; i < findings.length; i++) {
      const before = findings[i - 1]!, after = findings[i]!;
      expect(rank[before.severity]).toBeLessThanOrEqual(rank[after.severity]);
      expect(gravestFirst(before, after)).toBeLessThanOrEqual(0);
    }
  });

  it("[SHEET4] holds no figure that is not finite, and says something in words of everything", () => {
    const walk = (value: unknown): void => {
      if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
      else if (value !== null && typeof value === "object") Object.values(value).forEach(walk);
    };
    for (let seed = 0; seed < 60; seed++) {
      const sheet = sheetOf(jumble(seed));
      walk(sheet);
      for (const f of sheet.findings) expect(f.says.length).toBeGreaterThan(8);
      expect(structuredClone(sheet)).toEqual(sheet);
    }
  });

  it("[SHEET4] is pure: the movement is only read, and twice gives the same", () => {
    const movement = deepFrozen(workOut(jumble(5)));
    expect(JSON.stringify(examine(movement))).toBe(JSON.stringify(examine(movement)));
  });
});

describe("the rows of a sheet", () => {
  const plates = ["back", "front"].map((id, i) => ({ id, z: i * 20 - 3 * (1 - i), thickness: 3, outline: { circle: { diameter: 200 } } }));
  const wheel = (id: string, teeth: number) => ({ id, kind: "wheel" as const, teeth, z: 4, thickness: 2 });
  const instrument = instrumentOf({
    name: "Two wheels", frame: { plates, pillars: [] }, engagements: [{ driver: "a", driven: "b" }],
    arbors: [
      arborOf("A", 0, 0, { parts: [wheel("a", 30)] }), arborOf("B", 25, 0, { parts: [wheel("b", 20), collet("c", 8, 2, 5)] }),
      arborOf("C", 0, 60, { fixed: true }), arborOf("D", 60, 0),
    ],
    input: { arbor: "A", days: 2, sense: "clockwise" },
    displays: [{ id: "d", name: "Dial", arbor: "B" }],
  });

  it("[SHEET5] an arbor: where it stands, its exact rate, days for one turn, null where it does not turn", () => {
    const { arbors } = sheetOf(instrument);
    expect(arbors.map((a) => [a.id, a.x, a.y, a.planted, a.rate])).toEqual([
      ["A", 0, 0, "file", "1"], ["B", 25, 0, "file", "-3/2"], ["C", 0, 60, "file", "0"], ["D", 60, 0, "file", null],
    ]);
    expect(arbors.map((a) => a.days)).toEqual([2, expect.closeTo(4 / 3, 12), null, null]);
    expect(arbors[0]).toMatchObject({ up: expect.closeTo(0.075, 12), down: expect.closeTo(0.075, 12) });
  });

  it("[SHEET5] an engagement and a display with their own figures, under their own ids", () => {
    const sheet = sheetOf(instrument);
    expect(sheet.engagements).toMatchObject([{ id: "a-b", distance: 25, computed: 25, faceOverlap: expect.closeTo(2 - 0.15, 9) }]);
    expect(sheet.displays).toMatchObject([{ id: "d", rate: "-3/2", days: expect.closeTo(4 / 3, 12), wanted: null, sense: "anticlockwise" }]);
    expect([sheet.endshake, sheet.name]).toEqual([1, "Two wheels"]);
  });
});

function deepFrozen<T>(value: T): T {
  if (value !== null && typeof value === "object" && !Object.isFrozen(value) && !ArrayBuffer.isView(value)) {
    Object.freeze(value);
    for (const v of value instanceof Map ? value.values() : Object.values(value)) deepFrozen(v);
  }
  return value;
}
