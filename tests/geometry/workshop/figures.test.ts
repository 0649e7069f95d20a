import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../../geometry/instrument.ts";
import { toothPhases } from "../../../geometry/motion/tooth-phases.ts";
import { workOut } from "../../../geometry/workout.ts";
import { meshOf } from "../../../geometry/mesh/things.ts";
import { volumeMmCu } from "../../../geometry/mesh/measures.ts";
import { arborFigures } from "../../../geometry/workshop/arbor.ts";
import { columnsOf } from "../../../geometry/workshop/layout.ts";
import { partsList, settingTable, stockList, trainLines } from "../../../geometry/workshop/lists.ts";
import { pieceFigures } from "../../../geometry/workshop/pieces.ts";
import { plateFigures } from "../../../geometry/workshop/plate.ts";
import { wheelFigures } from "../../../geometry/workshop/wheel.ts";
import { windowsOf } from "../../../geometry/workshop/windows.ts";

const read = (name: string): Instrument => JSON.parse(readFileSync(`public/instruments/${name}.instrument.json`, "utf8")) as Instrument;
const dial = workOut(read("estuary-dial")), clock = workOut(read("going-train")), windows = windowsOf(dial);

describe("the figures of a wheel", () => {
  const e1 = wheelFigures(dial, "E1", windows)!;
  it("[SHOP9] are those of its teeth: blank, pitch, root and depth of cut", () => {
    expect([e1.blankDiameter, e1.pitchDiameter, e1.rootDiameter, e1.depthOfCut].map((v) => Number(v.toFixed(9)))).toEqual([31.2, 30, 28.5, 1.35]);
  });
  it("[SHOP9] mark crossings out: a rim under the roots, a hub, and a saw hole inside every opening", () => {
    const c = e1.crossings!;
    expect([c.outer, c.inner]).toEqual([28.5 / 2 - 1.8, 5]);
    expect(c.sawRadius - c.sawDiameter / 2).toBeGreaterThan(c.inner);
    expect(c.sawRadius + c.sawDiameter / 2).toBeLessThan(c.outer);
  });
  it("[SHOP9] say how far the first arm stands past a tooth where the file says where it stands, else it stands on one", () => {
    const turned = (angle: number) => {
      const arbors = dial.instrument.arbors.map((a) => ({ ...a, parts: a.parts.map((p) => (p.id === "E1" && p.kind === "wheel" ? { ...p, crossings: { ...p.crossings!, angle } } : p)) }));
      const movement = workOut({ ...dial.instrument, arbors });
      return wheelFigures(movement, "E1", windows)!.crossings!.pastTooth;
    };
    const pitch = 360 / 50, phase = (toothPhases(dial).get("E1")! * 180) / Math.PI;
    expect(e1.crossings!.pastTooth).toBe(0);
    expect(turned(phase)).toBeCloseTo(0, 6);
    expect(turned(phase + 2)).toBeCloseTo(2, 6);
    expect(turned(phase - 2)).toBeCloseTo(pitch - 2, 6);
    expect(turned(phase + 5 * pitch + 1)).toBeCloseTo(1, 6);
  });
  it("[SHOP9] weigh what the mesh of the wheel weighs (half a percent)", () => {
    for (const id of ["C1", "N1", "A1"]) {
      const w = wheelFigures(dial, id, windows)!, mesh = volumeMmCu(meshOf(dial, id)!) * (w.material === "steel" ? 7.85 : 8.47) / 1000;
      const bored = (Math.PI / 4) * (w.seat.diameter ** 2 - dial.arbors.find((a) => a.id === w.arbor)!.arbor.diameter ** 2) * w.thickness * 8.47 / 1000;
      expect(Math.abs(w.massG! + (w.seat.collet ? bored : 0) - mesh) / mesh).toBeLessThan(0.005);
    }
  });
  it("[SHOP9] name every mate, and none for an id that is no wheel", () => {
    expect(e1.mates.map((m) => [m.id, m.count])).toEqual([["D2", 22]]);
    expect(wheelFigures(dial, "B", windows)).toBeNull();
  });
});

describe("hole tables", () => {
  it("[SHOP10] solved back from their written figures give the centre distances within 0.001 mm", () => {
    for (const movement of [dial, clock]) for (const plate of movement.instrument.frame.plates) {
      const p = plateFigures(movement, plate.id, windowsOf(movement))!;
      for (const c of p.centres) {
        const [a, b] = [c.a, c.b].map((n) => p.holes[n - 1]!).map((h) => [Number(h.x.toFixed(4)), Number(h.y.toFixed(4))] as const);
        expect(Math.abs(Math.hypot(a![0] - b![0], a![1] - b![1]) - c.distance)).toBeLessThan(0.001);
      }
    }
  });
  it("[SHOP10] hold every pivot, pillar and opening of their plate once, a pivot hole wider than its pivot by the sideshake", () => {
    const p = plateFigures(dial, "back", windows)!;
    const pivoted = dial.arbors.filter(({ arbor }) => arbor.pivots?.foot?.plate === "back");
    expect(p.holes.filter((h) => h.what === "pivot").map((h) => h.of)).toEqual(pivoted.map((a) => a.id));
    for (const a of pivoted) expect(p.holes.find((h) => h.of === a.id)!.diameter).toBeCloseTo(a.arbor.pivots!.foot!.diameter + 0.02, 9);
    expect(p.holes.filter((h) => h.what === "pillar").length).toBe(4);
  });
  it("[SHOP10] let a hole stray half of what its closest pair allows", () => {
    const p = plateFigures(dial, "front", windows)!, b = p.holes.find((h) => h.of === "C")!;
    const own = p.centres.filter((c) => c.a === b.number || c.b === b.number).map((c) => Math.min(c.upper!, -c.lower!) / 2);
    expect(b.within).toBeCloseTo(Math.min(...own), 9);
  });
});

describe("arbors", () => {
  const a = arborFigures(dial, 0), b = arborFigures(dial, 1);
  it("[SHOP11] are stepped from foot to head without a gap, and every part sits within", () => {
    for (const f of dial.arbors.map((_, i) => arborFigures(dial, i))) {
      f.steps.reduce((end, s) => { expect(s.from).toBe(end); return s.to; }, 0);
      expect(f.steps.at(-1)!.to).toBeCloseTo(f.length, 9);
      for (const s of f.seats) { expect(s.from).toBeGreaterThanOrEqual(-1e-9); expect(s.to).toBeLessThanOrEqual(f.length + 1e-9); }
    }
  });
  it("[SHOP11] squares narrow outward by twice their taper; collets leave a shoulder and a spigot that stands proud", () => {
    expect(a.squares[0]).toMatchObject({ wide: 1.7, taper: 1 });
    expect(a.squares[0]!.wide - a.squares[0]!.narrow).toBeCloseTo(2 * 8 * Math.tan(Math.PI / 180), 9);
    const [collet] = b.collets;
    expect(collet).toMatchObject({ carries: "B1", spigotDiameter: 4.5, spigotLength: 1.7 });
    expect(collet!.shoulder).toBeCloseTo(0.8, 9);
  });
  it("[SHOP14] have the endshake between shoulders and plates, and the washer that leaves the wanted one", () => {
    const [back, front] = dial.instrument.frame.plates, { foot, head } = dial.arbors[1]!.arbor.pivots!;
    expect(b.pivots.map((p) => p.gap)).toEqual([expect.closeTo(dial.arbors[1]!.arbor.foot + foot!.length - back!.z - back!.thickness, 9), expect.closeTo(front!.z - dial.arbors[1]!.arbor.head + head!.length, 9)]);
    expect(b.pivots[1]!.plateFrom! - b.pivots[0]!.plateTo!).toBeCloseTo(front!.z - back!.z - back!.thickness, 9);
    const with_ = (change: { endshake?: number; longer?: number }) => {
      const { instrument } = dial, arbors = instrument.arbors.map((x) => (x.id === "B" ? { ...x, ...(change.endshake === undefined ? {} : { endshake: change.endshake }), pivots: { ...x.pivots, head: { ...x.pivots!.head!, length: x.pivots!.head!.length + (change.longer ?? 0) } } } : x));
      return arborFigures(workOut({ ...instrument, arbors }), 1).shake;
    };
    // Its shoulders 0.5 closer together: half a millimetre more washer.
    expect(with_({ longer: 0.5, endshake: 0.2 })).toMatchObject({ gap: expect.closeTo(0.66, 9) as number, wanted: 0.2, washer: expect.closeTo(0.46, 9) as number });
    expect(with_({ endshake: 0.3 }).washer).toBeCloseTo(-0.14, 9);
    expect(with_({}).gap - with_({}).washer).toBeCloseTo(dial.practice.endshake, 12);
    expect(b.shake.washerBore).toBeGreaterThan(Math.min(foot!.diameter, head!.diameter));
  });
  it("[SHOP11] are cut from bar at least as thick, and longer", () => {
    for (const f of dial.arbors.map((_, i) => arborFigures(dial, i))) {
      expect(f.stock.diameter).toBeGreaterThanOrEqual(Math.max(...f.steps.map((s) => s.diameter)));
      expect(f.stock.length).toBeGreaterThan(f.length);
    }
  });
});

describe("ratchets, rows and lists", () => {
  it("[SHOP12] a ratchet's faces are even, its chord and back those of its triangle", () => {
    const r = pieceFigures(clock, "G1")!.ratchet!;
    expect(r.faces.length).toBe(24);
    expect(r.tipChord).toBeCloseTo(2 * 13 * Math.sin(Math.PI / 24), 9);
    const tip = [13 * Math.cos(Math.PI / 12), 13 * Math.sin(Math.PI / 12)], foot = [11.5, 0];
    const back = (Math.acos((tip[0]! * (tip[0]! - foot[0]!) + tip[1]! * (tip[1]! - foot[1]!)) / (13 * Math.hypot(tip[0]! - foot[0]!, tip[1]! - foot[1]!))) * 180) / Math.PI;
    expect(r.backAngle).toBeCloseTo(back, 9);
  });
  it("[SHOP13] the developed row holds every arbor once, and those in mesh with the one before at their true distance", () => {
    const columns = columnsOf(dial), all = columns.flatMap((c) => c.arbors);
    expect([...all].sort()).toEqual(dial.arbors.map((a) => a.id).sort());
    expect(columns.filter((c) => c.apart !== null).length).toBeGreaterThan(5);
  });
  it("[SHOP13] the parts list holds every plate, pillar, arbor and part once, and all stock of it is in the stock list", () => {
    const parts = partsList(dial, windows), { frame, arbors } = dial.instrument;
    expect(parts.map((p) => p.id).sort()).toEqual([...frame.plates.map((p) => p.id), ...frame.pillars.map((p) => p.id), ...arbors.flatMap((a) => [a.id, ...a.parts.map((p) => p.id)])].sort());
    expect(stockList(parts).reduce((n, s) => n + s.pieces, 0)).toBe(parts.filter((p) => p.stock !== "filed on the arbor").length);
  });
  it("[SHOP13] the train table has every engagement; the setting-up table begins at 0, and a week later the day of the week is back", () => {
    expect(trainLines(dial).map((t) => t.id)).toEqual(dial.engagements.map((e) => e.id));
    const lines = settingTable(dial), day = dial.displays.findIndex((d) => d.id === "day");
    expect(lines[0]!.readings.every((r) => Math.abs(r) < 1e-9)).toBe(true);
    expect(lines.find((l) => l.days === 7)!.readings[day]! % 7).toBeCloseTo(0, 6);
  });
});
