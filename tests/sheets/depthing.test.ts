import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { depthingOf, type Instrument, pitchRadius, type Teeth, teethOf, workOut } from "../../geometry/index.ts";
import { rangeOf, ticksOf, zoneAt, zonesOf } from "../../src/sheets/depthing/scale.ts";
import { sectorOf } from "../../src/sheets/depthing/sector.ts";
import { asComputed, asItStands } from "../../src/sheets/depthing/standings.ts";
import { acrossOf, pitchesBy, tipToRootEnds } from "../../src/sheets/depthing/turning.ts";
import { depthed } from "../../src/workers/depthing.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const example = (name: string): Instrument => JSON.parse(readFileSync(`public/instruments/${name}.instrument.json`, "utf8"));
const movement = workOut(SLIPWAY);

describe("the window as a scale", () => {
  const window = { nearest: 10, nearestWanted: 10.1, farthestWanted: 10.3, farthest: 11 };

  it("is deep, right, shallow and lets go in rising distance, without a gap", () => {
    const zones = zonesOf(window, false, [9.8, 11.2]);
    expect(zones.map((z) => z.name)).toEqual(["binds", "deep", "right", "shallow", "lets go"]);
    expect(zones.map((z) => z.from)).toEqual([9.8, 10, 10.1, 10.3, 11]);
    expect(zones.map((z) => z.to)).toEqual([10, 10.1, 10.3, 11, 11.2]);
    expect(zoneAt(zones, 10.2)).toBe("right");
    expect(zoneAt(zones, 12)).toBeNull();
  });

  it("is the other way round for an annulus, which is deep farther out", () => {
    expect(zonesOf(window, true, [9.8, 11.2]).map((z) => z.name)).toEqual(["lets go", "shallow", "right", "deep", "binds"]);
  });

  it("has nothing right where the practice cannot be met, and no zones where the pair cannot work", () => {
    expect(zonesOf({ ...window, nearestWanted: null, farthestWanted: null }, false, [9.8, 11.2]).map((z) => z.name)).toEqual(["binds", "deep", "shallow", "lets go"]);
    expect(zonesOf({ nearest: null, farthest: null, nearestWanted: null, farthestWanted: null }, false, [9, 11])).toEqual([]);
  });

  it("reaches wherever the pair stands", () => {
    const [low, high] = rangeOf(window, [9.2, 10.15]);
    expect(low).toBeLessThan(9.2);
    expect(high).toBeGreaterThan(11);
  });

  it("has the zone that the state says, for every pair of the examples", () => {
    let judged = 0;
    for (const name of ["estuary-dial-first-draft", "going-train", "small-tellurian"]) {
      const m = workOut(example(name));
      m.engagements.forEach((e, i) => {
        const { state, window: w, holeTolerance } = depthingOf(m, i);
        if (state === null || w.nearest === null || w.nearestWanted === null) return;
        const zone = zoneAt(zonesOf(w, asItStands(m, i, false).pair.annulus !== null, rangeOf(w, [e.distance])), e.distance);
        expect(zone === "right").toBe(holeTolerance! >= 0);
        if (state === "shallow") expect(["shallow", "lets go"]).toContain(zone);
        judged += 1;
      });
    }
    expect(judged).toBeGreaterThan(10);
  }, 60_000);
});

describe("ticks", () => {
  it("are round numbers, about as many as asked, with as many decimals as they need", () => {
    expect(ticksOf(22.45, 22.92, 5)).toEqual({ at: [22.5, 22.6, 22.7, 22.8, 22.9].map((n) => expect.closeTo(n, 9)), step: 0.1, decimals: 1 });
    expect(ticksOf(-0.5, 0.5, 4)).toMatchObject({ step: 0.5, decimals: 1 });
    expect(ticksOf(3, 3, 4).at.length).toBeLessThan(2);
  });
});

describe("teeth seen where they meet", () => {
  const teeth = teethOf(SLIPWAY);
  const places = (path: string): number[][] => [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);

  it("are only those within reach and one more to either side, and the whole wheel where it is all within reach", () => {
    const wheel = [...teeth.values()].find((t) => t.count > 30)!;
    const all = sectorOf(wheel, 1000), near = sectorOf(wheel, 4);
    expect(places(near.edge).length).toBeLessThan(places(all.edge).length / 2);
    expect(all.edge.endsWith("Z")).toBe(true);
    const far = Math.max(...places(near.edge).map(([, y]) => y!));
    expect(far).toBeGreaterThan(4);
    expect(Math.min(...places(near.edge).map(([x, y]) => Math.hypot(x!, y!)))).toBeGreaterThan(0.7 * pitchRadius(wheel));
  });

  it("of an annulus have their metal outside", () => {
    const ring: Teeth = { ...[...teeth.values()][0]!, form: "involute", internal: true, count: 60 };
    const reach = Math.max(...places(sectorOf(ring, 1000).edge).map(([x, y]) => Math.hypot(x!, y!)));
    expect(Number(/A(-?[\d.]+) /.exec(sectorOf(ring, 1000).metal)![1])).toBeGreaterThan(reach);
  });
});

describe("a pair on the sheet", () => {
  it("turns a pitch of the driver for each of its teeth in a turn of its arbor, whichever way the crank turns it", () => {
    for (const sense of ["clockwise", "anticlockwise"] as const) {
      const turned = workOut({ ...SLIPWAY, input: { ...SLIPWAY.input, sense } });
      const pitches = pitchesBy(turned, 0), count = turned.teeth.get(turned.engagements[0]!.driver.id)!.count;
      const share = (turns: number) => pitches(turns) - Math.floor(pitches(turns));
      expect(Math.abs(share(0) - Math.round(share(0)))).toBeLessThan(1e-9);
      expect(share(0.25 / count)).toBeCloseTo(0.25, 9);
    }
  });

  it("has its pitch point between the axes as the counts are, and beyond both with an annulus", () => {
    const { pair } = asItStands(movement, 0, false);
    const z1 = pair.driver.teeth.count, z2 = pair.driven.teeth.count;
    expect(acrossOf(pair).pitchPoint).toBeCloseTo((pair.distanceMm * z1) / (z1 + z2), 12);
    const ring = { ...pair, annulus: "driven" as const, driven: { ...pair.driven, teeth: { ...pair.driven.teeth, count: 3 * z1 } } };
    expect(acrossOf(ring)).toMatchObject({ drivenAxis: -pair.distanceMm, pitchPoint: pair.distanceMm / 2 });
  });

  it("figures the clearance where it is least: as far apart on the drawing as it is", () => {
    for (const i of movement.engagements.keys()) {
      const standing = asItStands(movement, i, false), ends = tipToRootEnds(standing.pair)!;
      expect(ends[1] - ends[0]).toBeCloseTo(standing.tipToRootMm!, 12);
    }
  });

  it("has at its computed distance the figures that it would have there, and keeps them while arbors are moved", () => {
    const computed = asComputed(movement, 0)!;
    expect(computed.pair.distanceMm).toBe(movement.engagements[0]!.computed);
    expect(asComputed({ ...movement }, 0)).toBe(computed);
  });

  it("agrees with the depthing of the kernel in backlash, contact and clearance", () => {
    for (const name of ["estuary-dial", "going-train"]) {
      const m = workOut(example(name));
      for (const i of m.engagements.keys()) {
        const d = depthingOf(m, i), s = asItStands(m, i, true);
        if (!s.contact) continue;
        expect(s.tipToRootMm).toBe(d.tipClearance);
        expect(s.contact.begins!).toBeCloseTo(d.contact.begins!, 1);
        expect(s.contact.ends!).toBeCloseTo(d.contact.ends!, 1);
        expect(s.backlashMm!).toBeGreaterThan(d.backlash.tightest!);
        expect(s.backlashMm!).toBeLessThan(d.backlash.slackest!);
      }
    }
  }, 60_000);

  it("is depthed by its id, with the backlash that is wanted in mm; there is no answer about a pair that is not there", () => {
    const answer = depthed({ instrument: SLIPWAY, engagement: movement.engagements[0]!.id })!;
    const [least, most] = movement.practice.backlash, m = movement.teeth.get(movement.engagements[0]!.driven.id)!.module;
    expect(answer.wanted![0]).toBeCloseTo(least * m, 9);
    expect(answer.wanted![1]).toBeCloseTo(most * m, 9);
    expect(answer.depthing).toEqual(depthingOf(movement, 0));
    expect(answer.cycle!.freeArcMm.length).toBeGreaterThan(1);
    expect(depthed({ instrument: SLIPWAY, engagement: "none" })).toBeNull();
  });
});
