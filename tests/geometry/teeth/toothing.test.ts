import { describe, expect, it } from "vitest";
import type { Arbor, Engagement, Gearing, Instrument, Part } from "../../../geometry/instrument.ts";
import { theoreticalAddendum } from "../../../geometry/teeth/addendum.ts";
import { teethOf } from "../../../geometry/teeth/toothing.ts";

const base = { z: 0, thickness: 2 };
const arbor = (id: string, parts: Part[]): Arbor => ({ id, diameter: 3, foot: -2, head: 20, parts });
const instrument = (parts: Part[], pairs: [string, string][], gearing?: Partial<Gearing>): Instrument => ({
  endshake: 1, name: "Tide wheelwork of Havnholm", frame: { plates: [], pillars: [] },
  arbors: parts.map((p) => arbor(`on-${p.id}`, [p])),
  engagements: pairs.map(([driver, driven]): Engagement => ({ driver, driven })),
  input: { arbor: `on-${parts[0]!.id}`, days: 1, sense: "clockwise" },
  ...(gearing ? { gearing } : {}),
});
const wheel = (id: string, teeth: number, said: object = {}): Part => ({ ...base, id, kind: "wheel", teeth, ...said });
const pinion = (id: string, leaves: number, said: object = {}): Part => ({ ...base, id, kind: "pinion", leaves, ...said });
const lantern = (id: string, trundles: number, trundleDiameter: number): Part => ({ ...base, id, kind: "lantern", trundles, trundleDiameter });

describe("toothed parts", () => {
  it("[TEETH1] are filled in from the part, else the gearing, else the defaults", () => {
    const t = teethOf(instrument([wheel("W", 40), wheel("V", 20, { module: 2, pressureAngle: 14.5, thinning: 0.1, shift: 0.2, topping: 0.3 })], []));
    expect(t.get("W")).toMatchObject({
      form: "involute", role: "wheel", count: 40, module: 1, pressureAngleDeg: 20, thinning: 0.05, shift: 0, topping: 0, internal: false,
      addendumFactor: null, lanternMate: null, measuredTipRadius: null,
    });
    expect(t.get("V")).toMatchObject({ module: 2, pressureAngleDeg: 14.5, thinning: 0.1, shift: 0.2, topping: 0.3 });
    const g = teethOf(instrument([wheel("W", 40)], [], { form: "straight", module: 0.8, pressureAngle: 15, thinning: 0.02 }));
    expect(g.get("W")).toMatchObject({ form: "straight", module: 0.8, pressureAngleDeg: 15, thinning: 0.02 });
  });
  it("[TEETH1] of clock form and lanterns do not take the default thinning, but a clock part's own", () => {
    const t = teethOf(instrument([wheel("W", 40), wheel("V", 40, { thinning: 0.1 }), lantern("L", 8, 1.2)], [], { form: "cycloidal", thinning: 0.07 }));
    expect(t.get("W")!.thinning).toBe(0);
    expect(t.get("V")!.thinning).toBe(0.1);
    expect(t.get("L")).toMatchObject({ form: "lantern", role: "pinion", count: 8, trundleDiameter: 1.2, thinning: 0, module: 1 });
  });
  it("[TEETH10] of clock wheels take the factor of the pinion of most leaves that they engage, driving or driven", () => {
    const t = teethOf(instrument(
      [wheel("W", 64), pinion("P", 8), pinion("Q", 10), wheel("V", 60), wheel("U", 30)], [["W", "P"], ["Q", "W"], ["V", "P"]], { form: "cycloidal" }));
    expect(t.get("W")).toMatchObject({ addendumFactor: theoreticalAddendum(64, 10), mateCount: 10, lanternMate: null });
    expect(t.get("V")).toMatchObject({ addendumFactor: theoreticalAddendum(60, 8), mateCount: 8 });
    expect(t.get("U")).toMatchObject({ addendumFactor: null, mateCount: null });
  });
  it("[TEETH12] of clock pinions take the highest wheel they engage for their depth and the smallest for their tops", () => {
    const t = teethOf(instrument([wheel("W", 64), pinion("P", 8), wheel("V", 40), pinion("R", 7)], [["W", "P"], ["V", "P"]], { form: "cycloidal" }));
    expect(t.get("P")).toMatchObject({ role: "pinion", count: 8, addendumFactor: theoreticalAddendum(64, 8), mateCount: 40 });
    expect(t.get("R")).toMatchObject({ addendumFactor: null, mateCount: null });
  });
  it("[TEETH13] of clock wheels are made for a lantern only where they engage no pinion, for the one of most trundles", () => {
    const t = teethOf(instrument(
      [wheel("W", 60), lantern("L", 6, 1.2), lantern("M", 8, 1.1), wheel("V", 60), pinion("P", 8)],
      [["W", "L"], ["W", "M"], ["V", "L"], ["V", "P"]], { form: "cycloidal" }));
    expect(t.get("W")).toMatchObject({ addendumFactor: null, lanternMate: { count: 8, trundleDiameter: 1.1 } });
    expect(t.get("V")).toMatchObject({ mateCount: 8, lanternMate: null });
  });
  it("[TEETH3] carry their measured tip", () => {
    const t = teethOf(instrument([wheel("W", 40, { measured: { tipDiameter: 41.8 } })], []));
    expect(t.get("W")!.measuredTipRadius).toBe(20.9);
  });
});
