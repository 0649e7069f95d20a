import { describe, expect, it } from "vitest";
import { thingsOf } from "../../../geometry/bodies/thing.ts";
import { firstAtMost, gapAt, leastGap } from "../../../geometry/clearance/follow.ts";
import { spinOf, type Spin } from "../../../geometry/clearance/spin.ts";
import type { Arbor, Instrument, Part } from "../../../geometry/instrument.ts";
import { cycleOf } from "../../../geometry/motion/recurrence.ts";
import { unevenOf } from "../../../geometry/motion/uneven.ts";
import { writeRatio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";

const wheel = (id: string, teeth: number, z: number): Part => ({ id, kind: "wheel", teeth, z, thickness: 1, module: 0.5 });
const pointer = (id: string, length: number, angle: number, z: number): Part => ({ id, kind: "pointer", length, tail: 0, width: 2, angle, z, thickness: 1 });
const pin = (id: string, radius: number, angle: number, z: number): Part => ({ id, kind: "pin", radius, angle, diameter: 2, z, thickness: 1 });
const arbor = (id: string, parts: Part[], more: Partial<Arbor>): Arbor => ({ id, diameter: 2, foot: 0, head: 30, parts, ...more });

function spinBetween(instrument: Omit<Instrument, "endshake" | "name" | "frame" | "input">, a: string, b: string): Spin {
  const movement = workOut({ endshake: 1, name: "spin", frame: { plates: [], pillars: [{ id: "P", x: 30, y: 0, diameter: 4, from: 0, to: 30 }] }, input: { arbor: "A", days: 1, sense: "clockwise" }, ...instrument });
  const things = thingsOf(movement), find = (id: string) => things.find((t) => t.id === id);
  const [first, second] = [find(a), find(b)];
  const spin = first && second && spinOf(movement, unevenOf(movement), first, first.cylinders[0] as never, second, second.cylinders[0] as never);
  if (!spin) throw new Error(`${a} and ${b} are not followed`);
  return spin;
}

describe("two things in motion", () => {
  // An hour and a minute hand: 12 to 1 by 30/10 × 32/8, the same centres at one module (check-values 4.4, from memory, recomputed).
  const handsWith = (angle: number): Spin => spinBetween({
    arbors: [
      arbor("A", [wheel("a", 10, 2), pointer("minute", 20, 90, 25)], { x: 0, y: 0 }),
      arbor("B", [wheel("b1", 30, 2), wheel("b2", 8, 5)], { x: 10, y: 0 }),
      arbor("E", [wheel("e", 32, 5), pointer("hour", 15, angle, 25)], { foot: 4, rides: { on: "A", radius: 0, angle: 0 }, diameter: 4 }),
    ],
    engagements: [{ driver: "a", driven: "b1" }, { driver: "b2", driven: "e" }],
  }, "minute", "hour");

  it("[SPIN1] hands on one axis have one phase between them and meet every 12/11 turn", () => {
    const hands = handsWith(90);
    expect(hands.phases).toHaveLength(1);
    expect(writeRatio(cycleOf(hands.phases))).toBe("12/11");
    expect(firstAtMost(hands, 0)?.turns).toBe(0);
    expect(leastGap(hands).gap).toBeLessThan(-1.99);
  });

  it("[SPIN2] the first meeting of hands that start apart is when arithmetic says, clockwise", () => {
    // The hour hand stands 90° ahead, clockwise. On one axis they always share metal; all but wholly only when nearly in line.
    const hands = handsWith(0);
    const first = firstAtMost(hands, -1.9)?.turns ?? 0;
    expect(first).toBeGreaterThan(0.15);
    expect(first).toBeLessThan((12 / 11) * 0.25 + 1e-6);
  });

  it("[SPIN3] a pin against a pillar: first turn, place and cycle by hand", () => {
    const spin = spinBetween({ arbors: [arbor("A", [pin("pin", 29, 90, 10)], { x: 0, y: 0 })], engagements: [] }, "pin", "P");
    expect(writeRatio(cycleOf(spin.phases))).toBe("1");
    const least = leastGap(spin);
    expect(Math.abs(least.gap - (1 - 3))).toBeLessThan(0.001);
    expect(Math.abs(least.turns - 0.25)).toBeLessThan(0.01);
    const place = spin.place(least.turns);
    expect(Math.hypot(place.x - 29.5, place.y)).toBeLessThan(0.6);
  });

  it("[SPIN1] what one carrier carries alike does not turn against itself: a pipe on a stud, and what stands on the stud", () => {
    // Planet S rolls round the fixed 200: (S − 1) = 200/100, so S = 3; the pipe Q goes with the carrier's own turn, 1.
    const carried = (a: string, b: string) => spinBetween({
      arbors: [arbor("F", [wheel("f", 200, 2)], { x: 0, y: 0, fixed: true }),
        arbor("A", [], { rides: { on: "F", radius: 0, angle: 0 }, diameter: 4, foot: 8, head: 12 }),
        arbor("S", [wheel("s", 100, 2), pointer("hand", 20, 90, 25), wheel("round", 30, 20)], { rides: { on: "A", radius: 75, angle: 40 } }),
        arbor("Q", [pointer("other", 15, 10, 25)], { rides: { on: "S", radius: 0, angle: 0 }, diameter: 4, foot: 14 })],
      engagements: [{ driver: "f", driven: "s" }], couplings: [{ kind: "friction", between: ["A", "Q"] }],
    }, a, b);
    const hands = carried("hand", "other");
    expect(writeRatio(cycleOf(hands.phases))).toBe("1/2");
    expect(firstAtMost(hands, 0)?.turns).toBe(0);
    // A wheel and a hand on one axis: the same at every turn, and nothing to search.
    const still = carried("round", "other");
    expect(still.phases).toEqual([]);
    expect(leastGap(still)).toMatchObject({ turns: 0, proved: true });
    const place = hands.place(0);
    expect(Math.hypot(place.x - 75 * Math.cos((40 * Math.PI) / 180), place.y - 75 * Math.sin((40 * Math.PI) / 180))).toBeLessThan(20);
    const quarter = hands.place(0.25);
    expect(Math.hypot(quarter.x - 75 * Math.cos((-50 * Math.PI) / 180), quarter.y - 75 * Math.sin((-50 * Math.PI) / 180))).toBeLessThan(20);
  });

  it("[SPIN1] is seen from what goes round with most of the motion: a pin and a slotted post carried past it for ever alike", () => {
    const post = spinBetween({
      arbors: [arbor("A", [pin("pin", 14.5, 195, 5)], { x: 0, y: 0 }),
        arbor("C", [{ id: "s", kind: "slot", diameter: 28, radius: 4, angle: 33, length: 4, width: 1, z: 7, thickness: 1 }], { fixed: true, rides: { on: "A", radius: 26.5, angle: 84 } })],
      engagements: [],
    }, "pin", "s");
    expect(writeRatio(cycleOf(post.phases))).toBe("1");
    const least = leastGap(post), apart = Math.hypot(26.5 * Math.cos((84 * Math.PI) / 180) - 14.5 * Math.cos((195 * Math.PI) / 180), 26.5 * Math.sin((84 * Math.PI) / 180) - 14.5 * Math.sin((195 * Math.PI) / 180));
    expect(least.proved).toBe(true);
    expect(Math.abs(least.gap - (apart - 14 - 1))).toBeLessThan(0.001);
  });

  it("[SPIN1] three rates of a few thousand turns together are followed as one, and to the end", () => {
    // Planet S: 1 + 56/17 = 73/17; B: −60/19. All three come round together in 17 × 19 turns.
    const hands = spinBetween({
      arbors: [arbor("A", [wheel("a", 60, 8)], { x: -20, y: 30 }), arbor("B", [wheel("b", 19, 8), pin("pin", 8.7, 293, 25)], { x: -0.25, y: 30 }),
        arbor("F", [wheel("f", 56, 2)], { x: 0, y: 0, fixed: true }), arbor("K", [], { rides: { on: "F", radius: 0, angle: 0 }, diameter: 4, foot: 8, head: 12 }),
        arbor("S", [wheel("s", 17, 2), pointer("hand", 23, 62, 25)], { rides: { on: "K", radius: 18.25, angle: 78 } })],
      engagements: [{ driver: "a", driven: "b" }, { driver: "f", driven: "s" }], couplings: [{ kind: "friction", between: ["A", "K"] }],
    }, "hand", "pin");
    expect(hands.phases).toHaveLength(1);
    expect(writeRatio(cycleOf(hands.phases))).toBe("323");
    expect(leastGap(hands).proved).toBe(true);
  });

  it("[SPIN4] a carried arbor is followed round, and by a pin and slot unevenly", () => {
    const carried = spinBetween({
      arbors: [arbor("A", [{ id: "arm", kind: "arm", length: 20, width: 4, angle: 0, z: 3, thickness: 1 }], { x: 0, y: 0 }),
        arbor("S", [{ id: "knob", kind: "collet", diameter: 6, z: 8, thickness: 2 }], { rides: { on: "A", radius: 20, angle: 90 } })],
      engagements: [],
    }, "knob", "P");
    expect(Math.abs(leastGap(carried).gap - 5)).toBeLessThan(0.001);
    expect(Math.abs(leastGap(carried).turns - 0.25)).toBeLessThan(0.01);
    const slotted = spinBetween({
      arbors: [arbor("A", [pin("p", 10, 0, 5)], { x: 0, y: 0 }),
        arbor("S", [{ id: "s", kind: "slot", diameter: 30, radius: 10, angle: 0, length: 10, width: 2.2, z: 5, thickness: 1 }, pointer("hand", 20, 90, 20)], { x: 2, y: 0 })],
      engagements: [], couplings: [{ kind: "pin and slot", driver: "p", driven: "s" }],
    }, "hand", "P");
    // An even hand would point at the pillar after a quarter turn; this one has been carried past by 11.3°.
    expect(gapAt(slotted, 0.25)).toBeGreaterThan(28 - Math.hypot(20, 1) - 2 + 0.3);
    expect(Math.abs(leastGap(slotted).gap - (28 - Math.hypot(20, 1) - 2))).toBeLessThan(0.001);
    const nearest = leastGap(slotted).turns, pinAt = -2 * Math.PI * nearest;
    expect(Math.abs(Math.abs(Math.atan2(10 * Math.sin(pinAt), 10 * Math.cos(pinAt) - 2)) - Math.PI / 2)).toBeLessThan(0.12); // a corner of the hand is nearest: atan(1/20) beside its middle
  });
});
