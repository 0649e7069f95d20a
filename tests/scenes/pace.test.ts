// When pictures are drawn coarser. Milliseconds.
import { describe, expect, it } from "vitest";
import { createPace } from "../../scenes/pace.ts";

const frames = (pace: ReturnType<typeof createPace>, every: number, count: number, from = 0) =>
  Array.from({ length: count }, (_, i) => pace(from + i * every));

describe("the pace", () => {
  it("stays sharp at sixty frames a second", () => {
    expect(frames(createPace(false), 16.7, 200).some(Boolean)).toBe(false);
  });
  it("turns coarse when frames of a motion come slower than 45 ms", () => {
    const drawn = frames(createPace(false), 100, 30);
    expect(drawn[0]).toBe(false);
    expect(drawn.at(-1)).toBe(true);
  });
  it("takes single frames, however far apart, for no motion at all", () => {
    expect(frames(createPace(true), 2001, 20).some(Boolean)).toBe(false);
    expect(frames(createPace(false), 301, 20).some(Boolean)).toBe(false);
  });
  it("is coarse from the second frame of a motion where slowness is known, and no more once at rest", () => {
    const pace = createPace(true);
    expect(frames(pace, 50, 3)).toEqual([false, true, true]);
    expect(pace(900)).toBe(true);
    expect(pace(9000)).toBe(false);
  });
});
