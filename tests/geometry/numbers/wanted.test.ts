import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { finerThanStated, periodOf, wantedPeriod, wantedRatio } from "../../../geometry/numbers/wanted.ts";
import { ratio, writeRatio } from "../../../geometry/numeric/ratio.ts";

describe("a wanted ratio as it is typed", () => {
  it("[NUM12] is exact, whatever way it is written", () => {
    const read = (text: string) => { const w = wantedRatio(text); return "fault" in w ? w.fault : writeRatio(w.ratio); };
    expect(["191/23", "29,53", "1.5e3", " 2.5 / 1.25 "].map(read)).toEqual(["191/23", "2953/100", "1500", "2"]);
  });

  it("[NUM12] is stated to half a unit of its last place, and a finer error is said", () => {
    const wanted = wantedRatio("29.5306");
    if ("fault" in wanted) throw new Error(wanted.fault);
    expect(wanted.stated).toBeCloseTo(0.00005 / 29.5306, 12);
    expect(finerThanStated(wanted, 1e-9)).toMatch(/stated to 1 in 590,612/);
    expect(finerThanStated(wanted, 1e-3)).toBeNull();
    expect(wantedRatio("443/15")).toMatchObject({ stated: 0 });
  });

  it("[NUM12] is a period against the input or any arbor", () => {
    const day = periodOf(ratio(1), 1), week = periodOf(ratio(-1, 7), 1);
    const against = (from: typeof day) => { const w = wantedPeriod("14", from); return "fault" in w ? w.fault : writeRatio(w.ratio); };
    expect([against(day), against(week)]).toEqual(["1/14", "1/2"]);
    expect(wantedPeriod("14", periodOf(ratio(0), 1))).toHaveProperty("fault");
  });

  it("[NUM12] never throws, whatever is typed", () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.double().map(String), fc.constantFrom("0", "-3", "1/0", "1e999", "9".repeat(70), "")), (text) => {
      const read = wantedRatio(text);
      if ("fault" in read) expect(read.fault.length).toBeGreaterThan(10);
      else expect(read.ratio.s > 0n && read.ratio.n > 0n).toBe(true);
    }), { seed: 71 });
  });
});
