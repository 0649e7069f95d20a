import { describe, expect, it } from "vitest";
import { angleSettings, nearSettings, oppositeCheck, runningCheck } from "../../../geometry/numbers/approximate.ts";
import { ORDINARY_HEAD, plainSettings } from "../../../geometry/numbers/dividing.ts";
import { decimalRatio, ratio, ZERO } from "../../../geometry/numeric/ratio.ts";

describe("near dividing", () => {
  it("[DIV6] is true exactly where plain indexing is", () => {
    for (const count of [24, 51, 94, 96, 127]) {
      const true_ = nearSettings(count, ORDINARY_HEAD).filter((s) => s.each.equals(ZERO)).map((s) => s.circle).sort((a, b) => a - b);
      expect(true_).toEqual(plainSettings(count, ORDINARY_HEAD).map((s) => s.circle));
    }
  });

  it("[DIV6] closes out by the count times each error, and says so", () => {
    for (const s of nearSettings(127, ORDINARY_HEAD)) {
      const all = s.turns * s.circle + s.holes;
      expect(s.closesDeg).toBeCloseTo((360 * 127 * all) / (s.circle * 40) - 360, 9);
    }
    expect(nearSettings(24, ORDINARY_HEAD)[0]?.says).toBe("true");
    // Source: a wheel meant for 96, cut on the 47 circle, closes as 94 (trade 1.13, [S56] and [D]).
    expect(nearSettings(96, { ...ORDINARY_HEAD, plates: [[47]] })[0]).toMatchObject({ turns: 0, holes: 20, says: "comes out as 94, not 96" });
  });
});

describe("angular indexing", () => {
  // Source: Machinery's Handbook 1916 (check-values 7.4 [48]); 48° 40′ recomputed there.
  it("[DIV7] gives the published angles", () => {
    const onCircle = (angle: ReturnType<typeof ratio>, circle: number) => angleSettings(angle, ORDINARY_HEAD).find((s) => s.circle === circle);
    expect(onCircle(ratio(1), 18)).toMatchObject({ turns: 0, holes: 2, errorDeg: 0 });
    expect(onCircle(ratio(35), 18)).toMatchObject({ turns: 3, holes: 16, errorDeg: 0 });
    expect(onCircle(decimalRatio("11.5"), 18)).toMatchObject({ turns: 1, holes: 5, errorDeg: 0 });
    expect(onCircle(ratio(146, 3), 27)).toMatchObject({ turns: 5, holes: 11, errorDeg: 0 });
  });

  // Source: 24′ is only approximate (check-values 7.4 [49]): a 22.5-hole circle would be needed, 23 is used.
  it("[DIV7] has no true setting for 24 minutes", () => {
    const all = angleSettings(ratio(24, 60), ORDINARY_HEAD);
    expect(all.every((s) => s.errorDeg !== 0)).toBe(true);
    expect(all.find((s) => s.circle === 23)).toMatchObject({ turns: 0, holes: 1 });
  });
});

describe("checks while cutting", () => {
  it("[DIV8] every tenth tooth and the last stand where the holes add up to", () => {
    const setting = plainSettings(94, ORDINARY_HEAD)[0] ?? { circle: 1, turns: 1, holes: 0 };
    const card = runningCheck(94, setting, 40);
    expect(card.map((c) => c.tooth)).toEqual([10, 20, 30, 40, 50, 60, 70, 80, 90, 94]);
    for (const c of card) {
      expect(c.turns * setting.circle + c.hole).toBe(c.tooth * 20);
      expect(c.degrees).toBeCloseTo((360 * c.tooth) / 94, 9);
    }
    expect(card.at(-1)).toMatchObject({ turns: 40, hole: 0, degrees: 360 });
  });

  it("[DIV8] right across stands a space of an even count and a tooth of an odd one", () => {
    const setting = { circle: 18, turns: 1, holes: 12 };
    expect(oppositeCheck(24, setting)).toMatchObject({ after: 12, turns: 20, hole: 0, faces: "a space" });
    expect(oppositeCheck(25, { circle: 15, turns: 1, holes: 9 })).toMatchObject({ after: 12, faces: "a tooth" });
  });
});
