import { describe, expect, it } from "vitest";
import { createClock, MOST_TURNS, toothOn } from "../../src/state/clock.ts";

/** Frames that come when the test says so. */
function frames() {
  let waiting: ((ms: number) => void) | null = null;
  return {
    next: (call: (ms: number) => void) => {
      waiting = call;
      return () => { waiting = null; };
    },
    at: (ms: number) => waiting?.(ms),
    waiting: () => waiting !== null,
  };
}

describe("the clock of turns", () => {
  it("tells every hearer of a change, and none when nothing changed", () => {
    const clock = createClock(frames());
    let heard = 0;
    const end = clock.subscribe(() => { heard += 1; });
    clock.set(2);
    clock.set(2);
    end();
    clock.set(3);
    expect(heard).toBe(1);
  });

  it("runs by the time that has passed, however unevenly the frames come", () => {
    const at = frames(), clock = createClock(at);
    clock.set(10);
    clock.run(0.5);
    for (const ms of [1000, 1016, 1700, 3000]) at.at(ms);
    expect(clock.turns()).toBeCloseTo(11, 12);
    clock.stop();
    expect(clock.running()).toBe(false);
    expect(at.waiting()).toBe(false);
  });

  it("goes by whole teeth where it must", () => {
    const at = frames(), clock = createClock(at);
    clock.run(1, 17);
    at.at(0);
    for (const ms of [40, 90, 130, 400]) {
      at.at(ms);
      expect(clock.turns() * 17).toBeCloseTo(Math.round(clock.turns() * 17), 9);
    }
    expect(clock.turns()).toBeCloseTo(6 / 17, 12);
  });

  it("never holds what is not a number, nor more turns than a double can tell apart", () => {
    const clock = createClock(frames());
    clock.set(Number.NaN);
    expect(clock.turns()).toBe(0);
    clock.set(Number.MAX_VALUE);
    expect(clock.turns()).toBe(MOST_TURNS);
  });

  it("steps by a tooth without drift: a turn of 17 teeth, ten thousand times over, is ten thousand turns", () => {
    let turns = 0;
    for (let i = 0; i < 170_000; i++) turns = toothOn(turns, 17, 1);
    expect(turns).toBe(10_000);
    expect(toothOn(0.3, 10, -1)).toBeCloseTo(0.2, 15);
    expect(toothOn(0.25, 10, 1)).toBeCloseTo(0.35, 15);
  });
});
