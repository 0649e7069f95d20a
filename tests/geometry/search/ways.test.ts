import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { examine } from "../../../geometry/examine/sheet.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { searchWaysOut, waysOut, type WaysOut } from "../../../geometry/search/ways.ts";
import { workOut } from "../../../geometry/workout.ts";

const RANK = { free: 0, tight: 1, foul: 2 };
const draft = JSON.parse(readFileSync(new URL("../../../public/instruments/estuary-dial-first-draft.instrument.json", import.meta.url), "utf8")) as Instrument;

const wheel = (id: string, teeth: number, more: Partial<Part> = {}): Part => ({ id, kind: "wheel", teeth, z: 4, thickness: 2, ...more } as Part);
const arbor = (id: string, x: number, y: number, parts: Part[], more: Partial<Arbor> = {}): Arbor => ({ id, x, y, diameter: 2, foot: 0, head: 12, parts, ...more });
const instrument = (arbors: Arbor[], more: Partial<Instrument> = {}): Instrument => ({
  endshake: 1, name: "spoiled", practice: { planGap: 0.2, faceGap: 0.3, wobble: 0, runout: 0, sideshake: 0 },
  frame: { plates: [], pillars: [] }, arbors, engagements: [{ driver: "A1", driven: "B1" }], input: { arbor: "A", days: 1, sense: "clockwise" }, ...more,
});
const ways = (i: Instrument, code: string): WaysOut => waysOut(workOut(i)).fouls.find((f) => f.finding.code === code)!;

describe("ways out of what is spoiled", () => {
  it("[WAY1] are each carried out and examined: the foul is gone, and nothing is found that was not as grave before", () => {
    const before = new Map(examine(workOut(draft)).findings.map((f) => [`${f.code} ${f.between.join(" ")}`, f.severity]));
    const { fouls } = waysOut(workOut(draft));
    expect(fouls.flatMap((f) => f.ways).length).toBeGreaterThan(10);
    for (const { finding, ways: found } of fouls) for (const way of found) {
      const after = examine(workOut(way.instrument));
      expect(after.counts).toEqual(way.counts);
      for (const f of after.findings) {
        const key = `${f.code} ${f.between.join(" ")}`;
        expect(key).not.toBe(`${finding.code} ${finding.between.join(" ")}`);
        expect(RANK[f.severity]).toBeLessThanOrEqual(RANK[before.get(key) ?? "free"]);
      }
    }
  });

  it("[WAY1] come in turn, the cheapest of each, until nothing fouls that has a way out", () => {
    const { inTurn, instrument: after, counts } = waysOut(workOut(draft));
    expect(inTurn.length).toBeGreaterThan(6);
    expect(examine(workOut(after)).counts).toEqual(counts);
    expect(counts.foul).toBeLessThanOrEqual(2);
    const fouls = inTurn.map((w) => w.counts.foul);
    expect([...fouls].sort((a, b) => b - a)).toEqual(fouls);
    expect([...searchWaysOut(draft)].at(-1)).toMatchObject({ done: 1, best: { counts } });
  });

  it("[WAY2] cut an uncut wheel with a shift for a hole that came wrong, and offer nothing on a wheel that is made", () => {
    const off = (made: boolean) => instrument([
      arbor("A", 0, 0, [wheel("A1", 30, { measured: { runout: 0 } })], { steady: true }),
      arbor("B", 30, 0, [wheel("B1", 30, made ? { measured: { runout: 0 } } : {})], { measured: { x: 29.7, y: 0 } }),
    ]);
    const found = ways(off(false), "depth");
    expect(found.ways.map((w) => w.says).join("; ")).toMatch(/Cut wheel B1 with a shift of -0\.3\d* modules|shift of -0\.2\d* modules/);
    for (const way of found.ways) {
      expect(way.remade.map((r) => r.id)).not.toContain("A1");
      expect(workOut(way.instrument).arbors.map((a) => [a.x, a.y])).toEqual([[0, 0], [29.7, 0]]);
    }
    expect(ways(off(true), "depth").ways).toEqual([]);
  });

  it("[WAY2] turn a washer down or thin it where it is in the way, but not one that is made", () => {
    const inTheWay = (made: boolean) => instrument([
      arbor("A", 0, 0, [{ id: "C", kind: "collet", diameter: 12, z: 2, thickness: 2, ...(made ? { measured: { thickness: 2 } } : {}) }], { steady: true }),
      arbor("B", 7, 0, [], { steady: true }),
    ], { engagements: [] });
    expect(ways(inTheWay(false), "gap").ways.map((w) => w.says)).toEqual(["Turn collet C down to 11.6 mm"]);
    expect(ways(inTheWay(true), "gap").ways).toEqual([]);
  });

  it("[WAY3] give a pair one tooth more and one fewer where two made holes hold it and a post is in the way", () => {
    const held = instrument([
      arbor("A", 0, 0, [wheel("A1", 30)], { steady: true }), arbor("B", 30, 0, [wheel("B1", 30)], { steady: true }),
      arbor("S", -16.9, 0, [], { steady: true, fixed: true }),
    ]);
    const found = ways(held, "gap");
    expect(found.ways.map((w) => w.says)).toContain("Give wheel A1 29 and wheel B1 31 teeth");
    // Were anything shown by what turns, its rate would have to stay.
    const shown = { ...held, displays: [{ id: "d", name: "d", arbor: "B" }] };
    expect(ways(shown, "gap").ways.map((w) => w.says)).not.toContain("Give wheel A1 29 and wheel B1 31 teeth");
  });

  it("[WAY2] drill another hole where the other is made and no height helps", () => {
    const disc = (id: string): Part => ({ id, kind: "disc", diameter: 10, z: 2, thickness: 8 });
    const found = ways(instrument([arbor("A", 0, 0, [disc("D")], { steady: true }), arbor("B", 9.9, 0, [disc("E")])], { engagements: [] }), "gap").ways;
    const hole = found.find((w) => w.remade.every((r) => r.work === "hole"))!;
    expect(hole.remade).toEqual([{ id: "B", work: "hole" }]);
    const [a, b] = workOut(hole.instrument).arbors;
    expect([a!.x, a!.y]).toEqual([0, 0]);
    expect(Math.hypot(b!.x, b!.y)).toBeGreaterThanOrEqual(10.2 - 1e-9);
  });

  it("[WAY2] ease one of two pairs that share their axes and want other distances: nothing is made anew for it", () => {
    const shared = instrument([
      arbor("A", 0, 0, [wheel("A1", 30), wheel("A2", 30, { z: 8 })], { steady: true }), arbor("B", 30, 0, [wheel("B1", 30), wheel("B2", 31, { z: 8 })], { steady: true }),
    ], { engagements: [{ driver: "A1", driven: "B1" }, { driver: "A2", driven: "B2" }] });
    const [first] = ways(shared, "reverted").ways;
    expect(first!.says).toMatch(/^Ease A\d-B\d by [-−]?0\.5 mm$/);
    expect(first!.remade.map((r) => r.work)).toEqual(["drawing"]);
  });

  it("[WAY2] make a washer thinner that touches what turns over it", () => {
    const washer = instrument([
      arbor("A", 0, 0, [{ id: "C", kind: "collet", diameter: 12, z: 2, thickness: 2 }], { steady: true }),
      arbor("B", 7, 0, [{ id: "D", kind: "disc", diameter: 10, z: 3.9, thickness: 1, measured: { thickness: 1 } } as Part], { steady: true }),
    ], { engagements: [] });
    const thinned = ways(washer, "gap").ways.find((w) => w.says.startsWith("Make collet C"))!;
    expect(thinned.says).toMatch(/^Make collet C 1\.\d+ mm thick, its lower face as it is$/);
    expect(thinned.remade).toEqual([{ id: "C", work: "turning" }]);
  });

  it("[WAY3] rank by what must be made otherwise: a setting before a hole, a hole before cutting, cutting before a count", () => {
    const moves = instrument([
      arbor("A", 0, 0, [wheel("A1", 30)], { steady: true }), arbor("B", 25, 0, [wheel("B1", 20)]), arbor("C", 31, 12, [wheel("C1", 12, { z: 5 })], { steady: true }),
    ]);
    const found = ways(moves, "gap");
    const costs = found.ways.map((w) => w.cost);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(found.ways[0]!.remade[0]!.work).toBe("setting");
    expect(found.ways.length).toBeGreaterThan(1);
  });
});
