import { describe, expect, it } from "vitest";
import { createPlaying, type Hung } from "../../src/state/playing.ts";

/** Frames that the test gives. */
function frames() {
  let call: ((ms: number) => void) | null = null;
  return {
    next: (then: (ms: number) => void) => { call = then; return () => { call = null; }; },
    give: (ms: number) => { const then = call; call = null; then?.(ms); },
    waiting: () => call !== null,
  };
}
const steps = (n: number): Hung[] => Array.from({ length: n }, (_, i) => ({ hidden: new Set<string>(), ids: [`N${i}`], by: 10 }));
const prepared = (n: number) => {
  const f = frames(), playing = createPlaying(f);
  playing.prepare(steps(n));
  return { f, playing };
};

describe("putting together as it is played", () => {
  it("stands whole until a step is asked for, which then hangs over its place", () => {
    const { playing } = prepared(3);
    expect([playing.now(), playing.hung(), playing.height()]).toEqual([null, null, 0]);
    playing.show(1);
    expect([playing.now(), playing.hung()?.ids, playing.height()]).toEqual([{ step: 1, way: 0 }, ["N1"], 1]);
  });
  it("goes on and back by steps; past the last it stands whole, and before the first it stays there", () => {
    const { playing } = prepared(2);
    playing.on();
    playing.on();
    expect(playing.now()?.step).toBe(1);
    playing.on();
    expect(playing.now()).toBe(null);
    playing.back();
    expect(playing.now()?.step).toBe(1);
    playing.back();
    playing.back();
    expect(playing.now()?.step).toBe(0);
  });
  it("plays each step down in order, never up, and ends whole with no frame waiting", () => {
    const { f, playing } = prepared(3);
    playing.play(1, false);
    const seen: [number, number][] = [];
    for (let ms = 0; f.waiting() && ms < 60_000; ms += 50) {
      f.give(ms);
      const now = playing.now();
      if (now) seen.push([now.step, playing.height()]);
    }
    expect(seen.map(([s]) => s)).toEqual([...seen.map(([s]) => s)].sort((a, b) => a - b));
    for (let i = 1; i < seen.length; i++) if (seen[i]![0] === seen[i - 1]![0]) expect(seen[i]![1]).toBeLessThanOrEqual(seen[i - 1]![1]);
    expect(new Set(seen.map(([s]) => s)).size).toBe(3);
    expect([playing.now(), f.waiting()]).toEqual([null, false]);
  });
  it("takes down from the last, each step up, and ends with the first hanging", () => {
    const { f, playing } = prepared(2);
    playing.play(-1, false);
    expect([playing.now()?.step, playing.height()]).toEqual([1, 0]);
    for (let ms = 0; f.waiting() && ms < 60_000; ms += 50) f.give(ms);
    expect([playing.now(), playing.height()]).toEqual([{ step: 0, way: 0 }, 1]);
  });
  it("stops where it is, and with less motion asked for is only hanging or in", () => {
    const { f, playing } = prepared(3);
    playing.play(1, true);
    for (let ms = 0; ms < 3000; ms += 50) { f.give(ms); expect([0, 1]).toContain(playing.height()); }
    const before = playing.now()?.step;
    playing.stop();
    expect([playing.now(), f.waiting()]).toEqual([{ step: before, way: 0 }, false]);
  });
  it("keeps the step in hand while the steps change, and lets go of one that is no more", () => {
    const { playing } = prepared(3);
    playing.show(2);
    playing.prepare(steps(4));
    expect(playing.now()?.step).toBe(2);
    playing.prepare(steps(1));
    expect(playing.now()).toBe(null);
  });
  it("tells its hearers of every change and not after they have stopped; what it gives is one object while nothing changes", () => {
    const { playing } = prepared(2);
    let told = 0;
    const end = playing.subscribe(() => { told++; });
    playing.show(0);
    expect(told).toBe(1);
    expect(playing.now()).toBe(playing.now());
    end();
    playing.show(1);
    expect(told).toBe(1);
  });
});
