import { describe, expect, it } from "vitest";
import { examine, type Instrument, workOut } from "../../geometry/index.ts";
import { depthOf, engagementRows } from "../../src/sheets/depth.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

/** The word for the first engagement once its driven arbor stands so far along x, and its wheel is changed. */
function wordAt(x: number, wheel: object = {}): string {
  const instrument: Instrument = {
    ...SLIPWAY,
    arbors: SLIPWAY.arbors.map((a) => (a.id === "B" ? { ...a, x, parts: a.parts.map((p) => (p.id === "B1" ? { ...p, ...wheel } : p)) } : a)),
  } as Instrument;
  const movement = workOut(instrument);
  const [row] = engagementRows(movement, examine(movement, { all: false }));
  return depthOf(movement, row!).word;
}

describe("the word for a depth", () => {
  it("is right at the computed distance, shallow farther off, deep nearer, and lets go where contact is lost", () => {
    expect([wordAt(30), wordAt(30.3), wordAt(29.8), wordAt(31.4)]).toEqual(["right", "shallow", "deep", "lets go"]);
  });

  it("follows the thinning where the distance is the computed one", () => {
    expect([wordAt(30, { thinning: 0.6 }), wordAt(30, { thinning: -0.04 })]).toEqual(["shallow", "deep"]);
  });

  it("is unequal where the teeth do not agree", () => {
    expect(wordAt(30, { pressureAngle: 14.5 })).toBe("unequal");
  });
});
