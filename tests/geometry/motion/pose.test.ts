import { describe, expect, it } from "vitest";
import { motionOf } from "../../../geometry/motion/motion.ts";
import { poseAt, poseInto } from "../../../geometry/motion/pose.ts";
import { readingAt } from "../../../geometry/motion/reading.ts";
import { TAU, toRad, wrapSignedRad } from "../../../geometry/numeric/angle.ts";
import { ratio, ZERO } from "../../../geometry/numeric/ratio.ts";
import type { Movement } from "../../../geometry/movement.ts";
import type { Part } from "../../../geometry/instrument.ts";
import { stand, wheel } from "../depth/stand.ts";

const pinPart = (id: string, radius: number, angle = 0): Part => ({ id, kind: "pin", z: 1, thickness: 3, radius, angle, diameter: 1 });
const slotPart = (id: string, radius: number, angle = 0): Part =>
  ({ id, kind: "slot", z: 2, thickness: 1, diameter: 40, radius, angle, length: 12, width: 1.1 });

const placeOf = (pose: Float64Array, i: number): [number, number, number] => [pose[3 * i] ?? NaN, pose[3 * i + 1] ?? NaN, pose[3 * i + 2] ?? NaN];
const turnsApart = (rad: number, turns: number): number => Math.abs(wrapSignedRad(rad - TAU * turns)) / TAU;

function anticlockwise(movement: Movement): Movement {
  return { ...movement, instrument: { ...movement.instrument, input: { ...movement.instrument.input, sense: "anticlockwise" } } };
}

describe("the pose of a movement", () => {
  const carried = stand({
    arbors: [
      { id: "hand", x: 3, y: 4, parts: [] }, { id: "moon", x: 13, y: 4, parts: [] }, { id: "buoy", x: 13, y: 6, parts: [] },
      { id: "post", x: -8, y: 0, parts: [] },
    ],
    engagements: [], carriers: { moon: "hand", buoy: "moon" }, rates: { hand: ratio(1, 3), moon: ratio(-5, 7), buoy: ZERO },
  });

  it("[MOTION2] turns clockwise from the dial side where the input's sense is clockwise, else anticlockwise, by rate times turns", () => {
    const clockwise = poseAt(carried, 10.5), contrary = poseAt(anticlockwise(carried), 10.5);
    expect(turnsApart(placeOf(clockwise, 0)[2], -3.5)).toBeLessThan(1e-12);
    expect(turnsApart(placeOf(contrary, 0)[2], 3.5)).toBeLessThan(1e-12);
    expect(turnsApart(placeOf(clockwise, 1)[2], 7.5)).toBeLessThan(1e-12);
  });
  it("[MOTION3] takes carried arbors round with their carriers, one within another, true to 1e-9 mm", () => {
    const t = 0.4, pose = poseAt(carried, t);
    const hand = -TAU * t / 3, moon = TAU * t * 5 / 7;
    const x = 3 + 10 * Math.cos(hand), y = 4 + 10 * Math.sin(hand);
    expect(Math.hypot(placeOf(pose, 1)[0] - x, placeOf(pose, 1)[1] - y)).toBeLessThan(1e-9);
    expect(Math.hypot(placeOf(pose, 2)[0] - (x - 2 * Math.sin(moon)), placeOf(pose, 2)[1] - (y + 2 * Math.cos(moon)))).toBeLessThan(1e-9);
    expect(placeOf(pose, 3).slice(0, 2)).toEqual([-8, 0]);
  });
  it("[MOTION3] leaves what nothing drives standing on what carries it", () => {
    const idle = { ...carried, arbors: carried.arbors.map((a) => (a.id === "moon" || a.id === "post" ? { ...a, rate: null } : a)) };
    const pose = poseAt(idle, 0.3);
    expect(turnsApart(placeOf(pose, 1)[2], -0.1)).toBeLessThan(1e-12);
    expect(placeOf(pose, 3).map(Math.abs)).toEqual([8, 0, 0]);
  });
  it("[MOTION1] [MOTION2] stays true to 1e-9 turn after a million turns, and is finite for turns that are no number", () => {
    expect(turnsApart(placeOf(poseAt(carried, 1_000_000.5), 1)[2], (5 * 2_000_001) / 14)).toBeLessThan(1e-9);
    for (const t of [NaN, Infinity, -Infinity, 1e300]) expect(poseAt(carried, t).every(Number.isFinite)).toBe(true);
  });
  it("[MOTION4] writes into the caller's array the same numbers that it gives in a new one", () => {
    const out = new Float64Array(12), motion = motionOf(carried);
    for (const t of [0, 1.25, -3, 77]) { poseInto(out, motion, t); expect([...out]).toEqual([...poseAt(carried, t)]); }
  });
});

describe("pins in slots", () => {
  /** A pin 10 from its axis turns once; the slot's axis stands `apart` away along +x; a wheel of the slot's arbor drives a third. */
  const pair = (apart: number, pinAngle: number, mean = ratio(1)): Movement => anticlockwise(stand({
    arbors: [
      { id: "P", x: 0, y: 0, parts: [pinPart("p", 10, pinAngle)] },
      { id: "S", x: apart, y: 0, parts: [slotPart("s", 10), wheel("S1", 30)] },
      { id: "T", x: apart, y: 25, parts: [wheel("T1", 20)] },
    ],
    engagements: [{ driver: "S1", driven: "T1" }], couplings: [{ kind: "pin and slot", driver: "p", driven: "s" }],
    rates: { P: ratio(1), S: mean, T: mean.mul(ratio(-3, 2)) },
  }));

  it("[MOTION5] the slot turns by the change of the pin's direction from its axis, and begins as drawn", () => {
    for (const pinAngle of [0, 35, 200]) for (const t of [0, 0.1, 0.5, 0.77, 12.9, 1e5 + 0.3]) {
      const movement = pair(1.5, pinAngle), pose = poseAt(movement, t);
      const direction = (turns: number) => Math.atan2(10 * Math.sin(toRad(pinAngle) + TAU * turns), 10 * Math.cos(toRad(pinAngle) + TAU * turns) - 1.5);
      expect(Math.abs(wrapSignedRad(placeOf(pose, 1)[2] - direction(t) + direction(0)))).toBeLessThan(1e-9);
    }
  });
  it("[MOTION5] what the slot's arbor drives follows its unevenness, turned by the teeth", () => {
    for (const t of [0.13, 0.5, 3.8]) {
      const pose = poseAt(pair(2, 20), t);
      const lead = wrapSignedRad(placeOf(pose, 1)[2] - TAU * t);
      expect(Math.abs(lead)).toBeGreaterThan(0.01);
      expect(Math.abs(wrapSignedRad(placeOf(pose, 2)[2] - (-1.5 * (TAU * t + lead))))).toBeLessThan(1e-9);
    }
  });
  it("[MOTION5] the greatest lead is arcsin(e/ρ): 6.58° at e 1.1, ρ 9.6 (closed form), to 1e-3 degree", () => {
    const movement = anticlockwise(stand({
      arbors: [{ id: "P", x: 0, y: 0, parts: [pinPart("p", 9.6)] }, { id: "S", x: 1.1, y: 0, parts: [slotPart("s", 9.6)] }],
      engagements: [], couplings: [{ kind: "pin and slot", driver: "p", driven: "s" }],
    }));
    let most = 0;
    for (let k = 0; k < 3600; k++) most = Math.max(most, Math.abs(wrapSignedRad(placeOf(poseAt(movement, k / 3600), 1)[2] - (TAU * k) / 3600)));
    expect(Math.abs((most * 360) / TAU - (Math.asin(1.1 / 9.6) * 360) / TAU)).toBeLessThan(1e-3);
  });
  it("[MOTION5] a pin circle that leaves the slot's axis outside swings it to and fro about where it stands", () => {
    const pose = (t: number) => wrapSignedRad(placeOf(poseAt(pair(25, 0, ZERO), t), 1)[2]);
    expect(Math.abs(pose(0.5))).toBeLessThan(1e-9);
    expect(pose(0.2) * pose(0.8)).toBeLessThan(0);
    expect(Math.abs(pose(0.2) + pose(0.8))).toBeLessThan(1e-9);
    let most = 0;
    for (let k = 0; k < 2000; k++) most = Math.max(most, Math.abs(pose(k / 2000)));
    expect(Math.abs(most - Math.asin(10 / 25))).toBeLessThan(1e-5);
  });
  it("[MOTION5] on a carrier the pin's turning is counted against the carrier", () => {
    const movement = anticlockwise(stand({
      arbors: [
        { id: "C", x: 0, y: 0, parts: [] },
        { id: "P", x: 20, y: 0, parts: [pinPart("p", 9.6), wheel("P1", 10)] }, { id: "S", x: 21.1, y: 0, parts: [slotPart("s", 9.6)] },
        { id: "sun", x: 0, y: 0, fixed: true, parts: [wheel("sun1", 50)] },
      ],
      engagements: [{ driver: "sun1", driven: "P1" }], couplings: [{ kind: "pin and slot", driver: "p", driven: "s" }],
      carriers: { P: "C", S: "C" }, carrier: "C",
      rates: { C: ratio(1, 9), P: ratio(2, 3), S: ratio(2, 3), sun: ZERO },
    }));
    for (const t of [0.4, 5.1]) {
      const pose = poseAt(movement, t), turned = TAU * t * (2 / 3 - 1 / 9);
      const direction = Math.atan2(9.6 * Math.sin(turned), 9.6 * Math.cos(turned) - 1.1);
      expect(Math.abs(wrapSignedRad(placeOf(pose, 2)[2] - TAU * t / 9 - direction))).toBeLessThan(1e-9);
      // Where it is drawn, the pin lies on the slot's own direction.
      const [px, py, pa] = placeOf(pose, 1), [sx, sy, sa] = placeOf(pose, 2);
      const pin = Math.atan2(py + 9.6 * Math.sin(pa) - sy, px + 9.6 * Math.cos(pa) - sx);
      expect(Math.abs(wrapSignedRad(pin - sa))).toBeLessThan(1e-9);
    }
  });
  it("[MOTION5] a slot that drives takes its pin round so that it always lies in the slot, as far ahead as arcsin(e/ρ)", () => {
    const movement = anticlockwise(stand({
      arbors: [{ id: "S", x: 1.1, y: 0.4, parts: [slotPart("s", 9.6)] }, { id: "P", x: 0, y: 0, parts: [pinPart("p", 9.6, 30)] }],
      engagements: [], couplings: [{ kind: "pin and slot", driver: "s", driven: "p" }],
    }));
    const direction = (turned: number) => Math.atan2(9.6 * Math.sin(toRad(30) + turned) - 0.4, 9.6 * Math.cos(toRad(30) + turned) - 1.1);
    let most = 0;
    for (const t of [0, 0.1, 0.25, 0.5, 0.77, 12.9]) {
      const turned = placeOf(poseAt(movement, t), 1)[2];
      expect(Math.abs(wrapSignedRad(direction(turned) - direction(0) - TAU * t))).toBeLessThan(1e-9);
    }
    const turnedAt = (k: number) => wrapSignedRad(placeOf(poseAt(movement, k / 3600), 1)[2] - (TAU * k) / 3600);
    for (let k = 0; k < 1800; k++) most = Math.max(most, Math.abs(turnedAt(k + 1800) - turnedAt(k)));
    // From one side to the other: twice the greatest.
    expect(Math.abs(most - 2 * Math.asin(Math.hypot(1.1, 0.4) / 9.6))).toBeLessThan(1e-5);
  });
  it("[MOTION5] one pin and slot after another add up truly", () => {
    const movement = anticlockwise(stand({
      arbors: [
        { id: "Q", x: 1.2, y: 0, parts: [slotPart("q", 8)] },
        { id: "P", x: 0, y: 0, parts: [pinPart("p", 10)] }, { id: "S", x: 1.5, y: 0, parts: [slotPart("s", 10), pinPart("s2", 8)] },
      ],
      engagements: [], couplings: [{ kind: "pin and slot", driver: "s2", driven: "q" }, { kind: "pin and slot", driver: "p", driven: "s" }],
    }));
    // The stand takes its first arbor as input; here the pin's is.
    const driven = { ...movement, instrument: { ...movement.instrument, input: { ...movement.instrument.input, arbor: "P" } } };
    const t = 0.3, pose = poseAt(driven, t);
    const s = Math.atan2(10 * Math.sin(TAU * t), 10 * Math.cos(TAU * t) - 1.5);
    const q = Math.atan2(8 * Math.sin(s), 8 * Math.cos(s) + 0.3);
    expect(Math.abs(wrapSignedRad(placeOf(pose, 2)[2] - s))).toBeLessThan(1e-9);
    expect(Math.abs(wrapSignedRad(placeOf(pose, 0)[2] - q))).toBeLessThan(1e-9);
  });
});

describe("the reading of a display", () => {
  const movement = stand({
    arbors: [{ id: "A", x: 0, y: 0, parts: [] }, { id: "B", x: 0, y: 0, parts: [] }],
    engagements: [], rates: { A: ratio(1, 12), B: ratio(1, 4) }, displays: [["A"], ["B", "A"]],
  });
  it("[MOTION6] is the part of a turn clockwise since the input stood at 0, and that in the dial's divisions", () => {
    const shown = readingAt(movement, 0, 15);
    expect(Math.abs(shown.fraction - 0.25)).toBeLessThan(1e-12);
    expect(Math.abs(shown.value - 90)).toBeLessThan(1e-9);
    expect(readingAt(movement, 0, 0)).toEqual({ fraction: 0, value: 0 });
  });
  it("[MOTION6] is taken against the dial where the dial turns too, and counted the way its dial is numbered", () => {
    expect(Math.abs(readingAt(movement, 1, 15).fraction - 0.5)).toBeLessThan(1e-12);
    const instrument = { ...movement.instrument, displays: [{ id: "A-dial", name: "ebb", arbor: "A", sense: "anticlockwise" as const }] };
    expect(Math.abs(readingAt({ ...movement, instrument }, 0, 15).value - 270)).toBeLessThan(1e-9);
  });
});
