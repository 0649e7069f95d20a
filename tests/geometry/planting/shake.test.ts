// How far arbors shake in their bearings.
import { describe, expect, it } from "vitest";
import type { Arbor, Instrument, Practice } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, instrument, pipeOn, studOn } from "../train/made.ts";

const between = (arbors: readonly Arbor[], practice: Partial<Practice> = {}) => {
  const made: Instrument = {
    ...instrument(arbors, []), practice,
    frame: {
      plates: [
        { id: "back", z: -2, thickness: 2, outline: { circle: { diameter: 100 } } }, { id: "front", z: 30, thickness: 2, outline: { circle: { diameter: 100 } } },
      ], pillars: [],
    },
  };
  return workOut(made).arbors;
};
const pivots = { foot: { diameter: 1, length: 2, plate: "back" }, head: { diameter: 1, length: 3, plate: "front" } };

describe("shake", () => {
  it("[SHAKE1] with both pivots is what the shoulders leave to the inner faces of their plates, below 0 where they leave none", () => {
    const [free, jammed] = between([arbor("A", [], { foot: -1.9, head: 32.8, pivots }), arbor("B", [], { foot: -2.1, head: 33.2, pivots })]);
    expect(free.ownShake.down).toBeCloseTo(0.1, 12);
    expect(free.ownShake.up).toBeCloseTo(0.2, 12);
    expect(jammed.ownShake.down).toBeCloseTo(-0.1, 12);
    expect(jammed.ownShake.up).toBeCloseTo(-0.2, 12);
  });

  it("[SHAKE1] otherwise is half the endshake each way: its own, else the practice's", () => {
    const [one, own, plain] = between([arbor("A", [], { pivots: { foot: pivots.foot } }), arbor("B", [], { endshake: 0.4 }), arbor("C", [])], { endshake: 0.3 });
    expect(one.ownShake).toEqual({ up: 0.15, down: 0.15 });
    expect(own.ownShake).toEqual({ up: 0.2, down: 0.2 });
    expect(plain.shake).toEqual({ up: 0.15, down: 0.15 });
  });

  it("[SHAKE2] of a rider is its own and that of all it rides on; an arbor of the frame has none", () => {
    const [post, pipe, stud, outer] = between([
      arbor("F", [], { fixed: true, pivots }), arbor("P", [], { ...pipeOn("F"), endshake: 0.2 }), arbor("S", [], { ...studOn("P", 5), endshake: 0.1, fixed: true }), arbor("Q", [], { ...pipeOn("S"), endshake: 0.4 }),
    ]);
    expect(post).toMatchObject({ onFrame: true, shake: { up: 0, down: 0 }, ownSideshake: 0 });
    expect(pipe).toMatchObject({ onFrame: false, shake: { up: 0.1, down: 0.1 } });
    expect(stud.onFrame).toBe(false);
    expect(outer.ownShake).toEqual({ up: 0.2, down: 0.2 });
    expect(outer.shake.up).toBeCloseTo(0.35, 12);
  });

  it("[SHAKE3] sideways is its own, else of a pipe the bore less what it rides on (never under 0), else the practice's", () => {
    const sideways = between([
      arbor("A", [], { diameter: 4 }), arbor("P", [], { ...pipeOn("A"), bore: 4.05 }), arbor("Q", [], { ...pipeOn("A"), bore: 3.9 }),
      arbor("R", [], { ...pipeOn("A"), bore: 4.05, sideshake: 0.01 }), arbor("T", [], pipeOn("A")), arbor("S", [], { ...studOn("A", 9), bore: 4.05 }), arbor("U", [], { sideshake: 0.02 }),
    ], { sideshake: 0.07 }).map((a) => a.ownSideshake);
    [0.07, 0.05, 0, 0.01, 0.07, 0.07, 0.02].forEach((mm, i) => expect(sideways[i]).toBeCloseTo(mm, 12));
  });
});
