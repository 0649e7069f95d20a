import { describe, expect, it } from "vitest";
import { formOf, profileOf, toothOutline } from "../../../geometry/teeth/forms.ts";
import { halfAngleAt, teeth } from "./sample.ts";

const straight = (said: object = {}) => teeth({ form: "straight", count: 30, ...said });

describe("straight teeth", () => {
  it("[TEETH14] have flat flanks, the two of a tooth at twice the pressure angle", () => {
    for (const angle of [10, 14.5, 20, 30]) {
      const flank = profileOf(straight({ pressureAngleDeg: angle })).pieces.find((p) => p.name === "flank")!;
      const a = flank.at(0), b = flank.at(1), half = flank.at(0.5);
      expect((Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI).toBeCloseTo(angle, 9);
      expect(half).toMatchObject({ nx: a.nx, ny: a.ny });
    }
  });
  it("[TEETH14] are half the pitch less the thinning thick on the pitch circle", () => {
    expect(30 * halfAngleAt(15, toothOutline(straight({ thinning: 0.1 }), 0.01))).toBeCloseTo(Math.PI / 2 - 0.1, 9);
  });
  it("[TEETH14] end in a flat bottom 1.25 modules deep, square to the middle of the space", () => {
    const root = profileOf(straight({ module: 2 })).pieces[0]!;
    const a = root.at(0), b = root.at(1);
    expect(root.name).toBe("root");
    expect(Math.hypot(a.x, a.y)).toBeCloseTo(27.5, 9);
    expect(a.x * (b.x - a.x) + a.y * (b.y - a.y)).toBeCloseTo(0, 9);
  });
  it("[TEETH14] of few leaves end where the flanks of a space meet, above that depth", () => {
    const { pieces, leastRadius } = profileOf(straight({ count: 8 }));
    expect(pieces[0]!.name).toBe("flank");
    expect(leastRadius).toBeGreaterThan(4 - 1.25);
    const foot = pieces[0]!.at(0);
    expect(Math.atan2(foot.y, foot.x)).toBeCloseTo(-Math.PI / 8, 9);
  });
  it("[TEETH14] say that they keep no constant rate", () => {
    expect(formOf(straight()).doesNotCover.join(" ")).toMatch(/constant rate/);
  });
});
