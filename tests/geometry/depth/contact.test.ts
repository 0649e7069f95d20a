import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Contact, contactAt } from "../../../geometry/depth/contact.ts";
import { flankOf } from "../../../geometry/depth/flank.ts";
import { driveOf, flanksOf } from "../../../geometry/depth/holding.ts";
import { involuteBacklashMm, involuteContactRatio, involuteInterferes, involuteSpan } from "../../../geometry/depth/involute.ts";
import { involutePairOf, type Pair, pairOf, workingRadiusMm } from "../../../geometry/depth/pair.ts";
import { freeArcsOf } from "../../../geometry/depth/phases.ts";
import { type Mating, touchAt } from "../../../geometry/depth/touch.ts";
import type { Part } from "../../../geometry/instrument.ts";
import { toDeg } from "../../../geometry/numeric/angle.ts";
import { theoreticalAddendum } from "../../../geometry/teeth/addendum.ts";
import { rolledAt, rollToPolar } from "../../../geometry/teeth/rolled.ts";
import { straightPiece, type Piece } from "../../../geometry/teeth/profile.ts";
import { placed } from "../../../geometry/planar/outline.ts";
import { profileOf, toothOutline, trundleOutlines } from "../../../geometry/teeth/forms.ts";
import { lantern, pairStand, pinion, wheel } from "./stand.ts";

const clock = { form: "cycloidal" };
const least = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => Math.min(a, b));
const most = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => Math.max(a, b));

function run(driver: Part, driven: Part, opened = 0, phases = 60) {
  const pair = pairOf(pairStand(driver, driven), 0);
  const distance = (pair.computedMm ?? NaN) + opened;
  return { pair, distance, contact: contactAt(flanksOf(pair), distance, phases) as Contact, radius: workingRadiusMm(pair, distance) };
}

/** Neither tip reaches below where the rack's straight flank, one module deep, has cut its mate. */
function tipsStayOnFlanks(pair: Pair, distance: number): boolean {
  const sin = Math.sin(Math.PI / 9), base = (s: Pair["driver"]) => (s.teeth.module * s.teeth.count * Math.cos(Math.PI / 9)) / 2;
  const tangents = Math.sqrt(distance ** 2 - (base(pair.driver) + base(pair.driven)) ** 2);
  const lowest = ({ teeth: { module, count, shift } }: Pair["driver"]) => (module * count * sin) / 2 - ((1 - shift) * module) / sin;
  const reached = (mate: Pair["driver"]) => tangents - Math.sqrt(mate.tipRadiusMm ** 2 - base(mate) ** 2);
  return reached(pair.driven) >= lowest(pair.driver) && reached(pair.driver) >= lowest(pair.driven) && lowest(pair.driver) > 0 && lowest(pair.driven) > 0;
}

describe("involutes brought together by their outlines", () => {
  it("[DEPTH11] agree with the closed formulas to 1e-6 modules and keep their rate to 1e-9, at any distance and either way round", () => {
    const given = fc.record({
      z1: fc.integer({ min: 14, max: 90 }), z2: fc.integer({ min: 14, max: 90 }), opened: fc.double({ min: -0.05, max: 0.4, noNaN: true }),
      module: fc.double({ min: 0.3, max: 3, noNaN: true }), x1: fc.double({ min: -0.1, max: 0.3, noNaN: true }), thinning: fc.double({ min: 0, max: 0.1, noNaN: true }),
    });
    fc.assert(fc.property(given, ({ z1, z2, opened, module, x1, thinning }) => {
      const { pair, distance, contact, radius } = run(wheel("A1", z1, { module, shift: x1, thinning }), wheel("B1", z2, { module, thinning }), opened * module, 24);
      const closed = involutePairOf(pair)!;
      fc.pre(!involuteInterferes(closed, distance) && (involuteContactRatio(closed, distance) ?? 0) > 1 && tipsStayOnFlanks(pair, distance));
      for (const arc of contact.freeArcRad) expect(Math.abs(arc * radius - involuteBacklashMm(closed, distance)!)).toBeLessThan(1e-6 * module);
      for (const rate of contact.rate) expect(Math.abs(rate - 1)).toBeLessThan(1e-9);
      for (const lead of contact.leadRad) expect(Math.abs(lead * radius)).toBeLessThan(1e-6 * module);
      expect(contact.butting).toBe(false);
      expect(contact.ratio).toBeCloseTo(involuteContactRatio(closed, distance)!, 3);
      expect(contact.begins).toBeCloseTo(-involuteSpan(closed, distance)!.bySecond, 3);
      expect(contact.ends).toBeCloseTo(involuteSpan(closed, distance)!.byFirst, 3);
    }), { seed: 17, numRuns: 60 });
  });

  it("[DEPTH11] touch on the line of action, with the pressure along it", () => {
    const { contact, distance } = run(wheel("A1", 40), wheel("B1", 60), 0.2);
    const cosine = (50 * Math.cos(Math.PI / 9)) / distance, angle = Math.acos(cosine);
    for (const touch of contact.touches) {
      expect(touch!.how).toBe("flanks");
      // Driver's normal: the common tangent of the base circles, leaning towards the driven by the working angle.
      expect(touch!.nx).toBeCloseTo(Math.sin(angle), 9);
      expect(touch!.ny).toBeCloseTo(Math.cos(angle), 9);
      expect(touch!.x * touch!.ny - touch!.y * touch!.nx).toBeCloseTo(20 * Math.cos(Math.PI / 9), 8);
      // Sliding: relative rate of turning times the distance from the pitch point; the driver's flank goes in before it, comes out after.
      const beyond = Math.hypot(touch!.x - distance * 0.4, touch!.y) * Math.sign(touch!.y);
      expect(touch!.slidingMmPerRad).toBeCloseTo(-beyond * (1 + 40 / 60), 8);
    }
  });

  it("[DEPTH11] in an annulus agree with the closed formulas too, whichever drives", () => {
    const ring = wheel("R1", 80, { internal: true, outsideDiameter: 90, topping: 0.45 });
    for (const [a, b] of [[wheel("A1", 40), ring], [ring, wheel("A1", 40)]] as const)
      for (const opened of [0, -0.1, -0.2]) {
        const { pair, distance, contact, radius } = run(a, b, opened);
        const closed = involutePairOf(pair)!;
        for (const arc of contact.freeArcRad) expect(arc * radius).toBeCloseTo(involuteBacklashMm(closed, distance)!, 8);
        for (const rate of contact.rate) expect(rate).toBeCloseTo(1, 9);
        const { byFirst, bySecond } = involuteSpan(closed, distance)!;
        expect(contact.begins).toBeCloseTo(a === ring ? -byFirst : -bySecond, 3);
        expect(contact.ends).toBeCloseTo(a === ring ? bySecond : byFirst, 3);
      }
  });

  it("[DEPTH11] that interfere do not keep their rate", () => {
    const { contact } = run(wheel("A1", 60), pinion("B1", 8), 0);
    expect(most(contact.rate) - least(contact.rate)).toBeGreaterThan(0.01);
  });
});

/** One wheel tooth of epicycloid cut at 95 %, against one leaf with bare radial flanks, module 1: the model of the check values. */
function bareTooth(teeth: number, leaves: number, share: number, delta: number): { mating: Mating; centreU: number; lag(u: number): number } {
  const pitch = teeth / 2, generating = leaves / 4, half = Math.PI / (2 * teeth), tip = pitch + share * theoreticalAddendum(teeth, leaves);
  const cosine = ((pitch + generating) ** 2 + generating ** 2 - tip ** 2) / (2 * (pitch + generating) * generating);
  const addendum: Piece = {
    name: "tip", from: 0, to: Math.acos(cosine),
    at: (roll) => {
      const { radius, polarRad, normalRad } = rolledAt({ pitch, generating, back: 0 }, roll);
      const polar = polarRad - half, normal = normalRad - half;
      return { x: radius * Math.cos(polar), y: radius * Math.sin(polar), nx: -Math.cos(normal), ny: -Math.sin(normal) };
    },
  };
  // Bare radial flanks have no top: they go on past the pitch circle, where too shallow a wheel still meets them.
  const inside = 0.1 * leaves, outside = leaves / 2 + 0.5;
  const leaf = straightPiece("flank", inside, 0, outside, 0, 1);
  const profile = (piece: Piece) => ({ pieces: [piece], joined: true, leastRadius: 0, greatestRadius: 0 });
  const mating: Mating = {
    driver: flankOf(profile(addendum), false), driven: flankOf(profile(leaf), false), axisX: pitch + leaves / 2 + delta, facing: -1, choosingRad: 0.01,
  };
  return { mating, centreU: -half, lag: (u) => touchAt(mating, u)!.leadRad - (u + half) * (teeth / leaves) };
}

/** Pitches after the line of centres at which the flanks part, the wheel's tip corner going on alone. */
function partingOf({ mating, centreU }: ReturnType<typeof bareTooth>, teeth: number, from = 0.05): number {
  let low = from, high = 1.95;
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2, touch = touchAt(mating, centreU + (mid * 2 * Math.PI) / teeth);
    if (touch?.how === "flanks") low = mid; else high = mid;
  }
  return low;
}

describe("clock teeth, one tooth with bare radial flanks", () => {
  // Camus 1766, Willis 1841 for the construction; the figures recomputed from the generating circle.
  it.each([[6, 3, 1, 0.6602], [6, 3, 0.95, 0.6391], [8, 8, 0.95, 0.8126], [10, 12, 1, 0.9797], [12, 8, 0.95, 1.0539], [12, 3, 0.95, 0.9841], [16, 6, 1, 1.2863], [20, 12, 0.95, 1.4912]])(
    "[DEPTH13] %i leaves at ratio %i with %f of the full tip part %f pitches after the line of centres (1e-4)", (leaves, ratio, share, wanted) => {
      const one = bareTooth(leaves * ratio, leaves, share, 0);
      expect(Math.abs(partingOf(one, leaves * ratio) - wanted)).toBeLessThan(1e-4);
      for (let p = 0.02; p < wanted - 0.02; p += 0.05) expect(Math.abs(one.lag(one.centreU + (p * 2 * Math.PI) / (leaves * ratio)))).toBeLessThan(1e-9);
    });

  // The depthing table of the check values (section 10), with its printed tolerances: 0.002 on the rate, 2 % on the lag; last
  // contact is said there to be low by up to 0.003 away from the true distance (and is printed to 0.001), true at it.
  it.each([[0, 0.81, 1, 1, 0], [0.05, 0.82, 0.981, 0.988, 31.6], [-0.05, 0.798, 1.013, 1.02, 31.6]])(
    "[DEPTH11] 60 teeth on 8 leaves %f modules off run at the rates and the lag of the depthing table", (delta, last, slow, quick, gained) => {
      const one = bareTooth(60, 8, 0.95, delta), parting = partingOf(one, 60);
      const at = (pitches: number) => one.centreU + (pitches * 2 * Math.PI) / 60;
      expect(parting - last).toBeGreaterThan(-0.0005);
      expect(parting - last).toBeLessThan(0.0005 + (delta === 0 ? 0 : 0.003));
      // Contact after the line of centres only, as long as the flanks meet; the tip's corner that goes on alone is left out.
      const rates = Array.from({ length: 200 }, (_, i) => touchAt(one.mating, at((parting * (i + 0.5)) / 200))!.rate / (60 / 8));
      const tolerance = delta === 0 ? 1e-4 : 0.002;
      expect(Math.abs(least(rates) - slow)).toBeLessThan(tolerance);
      expect(Math.abs(most(rates) - quick)).toBeLessThan(tolerance);
      const lag = toDeg(one.lag(at(parting)) - one.lag(at(0))) * 60;
      if (gained === 0) expect(Math.abs(lag)).toBeLessThan(1e-6);
      else expect(Math.abs((-Math.sign(delta) * lag) / gained - 1)).toBeLessThan(0.02);
    });
  it("[DEPTH11] off the true distance the lag is that of stepping through the epicycloid's points, to 0.01 arcminutes", () => {
    // Brute force: the radial flank is pushed ahead by the foremost of 20,000 points of the wheel's tooth.
    const curve = { pitch: 30, generating: 2, back: 0 }, tip = 30 + 0.95 * theoreticalAddendum(60, 8);
    const most = Math.acos((32 ** 2 + 4 - tip ** 2) / (2 * 32 * 2));
    const forward = (delta: number, pastRad: number) => Array.from({ length: 20001 }, (_, i) => {
      const { radius, polarRad } = rolledAt(curve, (most * i) / 20000), at = pastRad - polarRad;
      return Math.atan2(radius * Math.sin(at), 34 + delta - radius * Math.cos(at));
    }).reduce((a, b) => Math.max(a, b));
    for (const delta of [-0.05, 0.05])
      for (const pitches of [0, 0.2, 0.5, 0.79]) {
        const one = bareTooth(60, 8, 0.95, delta), pastRad = (pitches * 2 * Math.PI) / 60;
        expect(Math.abs(60 * toDeg(forward(delta, pastRad) - pastRad * 7.5 - one.lag(one.centreU + pastRad)))).toBeLessThan(0.01);
      }
  });
});

describe("whole pairs of clock teeth and lanterns", () => {
  it("[DEPTH13] [DEPTH11] twelve leaves at the true distance keep their rate and go on to the end of the recess", () => {
    const { contact } = run(wheel("A1", 96, clock), pinion("B1", 12, clock));
    for (const rate of contact.rate) expect(Math.abs(rate - 1)).toBeLessThan(1e-9);
    // Recess of 12 leaves at ratio 8, 95 % tip: recomputed from the generating circle.
    expect(Math.abs(contact.ends! - 1.0539)).toBeLessThan(2e-4);
    expect(contact.begins).toBeGreaterThan(-0.01);
  });
  it("[DEPTH13] few leaves begin before the line of centres: 6, 7 and 8 always, 12 at ratio 8 not (Camus 1766, Willis 1841)", () => {
    for (const leaves of [6, 7, 8]) expect(run(wheel("A1", 8 * leaves, clock), pinion("B1", leaves, clock)).contact.begins).toBeLessThan(-0.05);
  });
  it("[DEPTH13] a lantern's action lies after the line of centres, but for a trifle", () => {
    for (const trundles of [6, 8, 10, 12]) {
      const { contact } = run(wheel("A1", 8 * trundles, clock), lantern("B1", trundles, 1.25));
      expect(contact.begins).toBeGreaterThan(-0.1);
      expect(contact.ends).toBeGreaterThan(0.85);
    }
  });
  // One tooth that fills the space between two pins: pin-centre epicycloid set back by half the pin, recomputed (1e-3).
  it.each([[6, 1.05, 1.224], [8, 1.25, 1.416], [8, Math.PI / 2, 1.349], [10, 1.25, 1.619], [12, 1.05, 1.861]])(
    "[DEPTH13] %i trundles of %f modules at ratio 8 part %f pitches after the line of centres", (trundles, pin, wanted) => {
      const teeth = 8 * trundles, curve = { pitch: teeth / 2, generating: trundles / 2, back: pin / 2 }, half = Math.PI / teeth;
      const flank: Piece = {
        name: "tip", from: 0.6, to: rollToPolar(curve, half),
        at: (roll) => {
          const { radius, polarRad, normalRad } = rolledAt(curve, roll);
          return { x: radius * Math.cos(polarRad - half), y: radius * Math.sin(polarRad - half), nx: -Math.cos(normalRad - half), ny: -Math.sin(normalRad - half) };
        },
      };
      const trundle = profileOf(pairOf(pairStand(wheel("A1", teeth, clock), lantern("B1", trundles, pin)), 0).driven.teeth);
      const mating: Mating = {
        driver: flankOf({ pieces: [flank], joined: true, leastRadius: 0, greatestRadius: 0 }, false), driven: flankOf(trundle, false),
        axisX: (teeth + trundles) / 2, facing: -1, choosingRad: 0.01,
      };
      expect(Math.abs(partingOf({ mating, centreU: -half, lag: () => 0 }, teeth, 0.5) - wanted)).toBeLessThan(1e-3);
    });
  it("[DEPTH12] too shallow the pinion runs slow and jumps at the hand-over, too deep it does the other; the mean keeps", () => {
    const shallow = run(wheel("A1", 60, clock), pinion("B1", 8, clock), 0.1, 240).contact, deep = run(wheel("A1", 60, clock), pinion("B1", 8, clock), -0.05, 240).contact;
    expect(most(shallow.leadRad) - least(shallow.leadRad)).toBeGreaterThan(1e-4);
    expect(most(deep.leadRad) - least(deep.leadRad)).toBeGreaterThan(1e-4);
    for (const { leadRad } of [shallow, deep]) expect(Math.abs(leadRad.reduce((a, b) => a + b))).toBeLessThan(1e-9);
    expect(shallow.rate.reduce((a, b) => a + b) / 240).toBeCloseTo(1, 2);
  });
  it("[DEPTH12] [DEPTH14] a driven that no tooth reaches in time waits, and its contact ratio is under 1", () => {
    const { contact } = run(wheel("A1", 60), pinion("B1", 20), 1.9, 120);
    expect(least(contact.rate)).toBe(0);
    expect(contact.ratio).toBeLessThan(1);
    expect(contact.ratio).toBeCloseTo(Array.from(contact.touches).filter((t) => t).length / 120, 12);
    expect(run(wheel("A1", 60, clock), pinion("B1", 8, clock), 0.1).contact.ratio).toBeGreaterThanOrEqual(1);
  });
  it("[DEPTH15] the free arc at the true distance is the pitch less both thicknesses, whatever the module", () => {
    // Thicknesses of wheel and leaf after BS 978-2: half the pitch, and a third (6 to 9 leaves) or two fifths of it.
    for (const module of [0.5, 1, 2])
      for (const [leaves, share] of [[8, 1 / 6], [12, 1 / 10]]) {
        const { pair, distance, radius } = run(wheel("A1", 8 * leaves, { ...clock, module }), pinion("B1", leaves, { ...clock, module }));
        expect(least(freeArcsOf(flanksOf(pair), 60).all(distance)!) * radius).toBeCloseTo(share * Math.PI * module, 6);
      }
  });
  it("[DEPTH11] scaling by the module changes nothing but lengths", () => {
    for (const [a, b] of [[wheel("A1", 60, clock), pinion("B1", 8, clock)], [wheel("A1", 40, { form: "straight" }), pinion("B1", 20, { form: "straight" })]]) {
      const one = run(a, b, 0.08), three = run({ ...a, module: 3 } as Part, { ...b, module: 3 } as Part, 0.24);
      three.contact.leadRad.forEach((lead, i) => expect(lead).toBeCloseTo(one.contact.leadRad[i], 8));
      three.contact.touches.forEach((t, i) => expect(t!.x / 3).toBeCloseTo(one.contact.touches[i]!.x, 6));
      expect(three.contact.begins).toBeCloseTo(one.contact.begins!, 4);
    }
  });
  it("[DEPTH11] driver and driven swapped mirror the path: what began ends, as far on the other side", () => {
    for (const opened of [0, 0.15]) {
      const there = run(wheel("A1", 30), pinion("B1", 24), opened, 240).contact, back = run(pinion("B1", 24), wheel("A1", 30), opened, 240).contact;
      expect(there.begins).toBeCloseTo(-back.ends!, 6);
      expect(there.ends).toBeCloseTo(-back.begins!, 6);
    }
  });
  it("[DEPTH15] [DEPTH2] opening the distance never lowers the least free arc, of any form, whichever drives", () => {
    const filed = { form: "straight" }, ring = wheel("R1", 60, { internal: true, outsideDiameter: 70, topping: 0.45 });
    const pairs: [Part, Part][] = [
      [wheel("A1", 60), pinion("B1", 20)], [wheel("A1", 60, clock), pinion("B1", 8, clock)], [pinion("A1", 8, clock), wheel("B1", 60, clock)],
      [wheel("A1", 64, clock), lantern("B1", 8, 1.3)], [lantern("A1", 8, 1.3), wheel("B1", 64, clock)],
      [wheel("A1", 40, filed), wheel("B1", 50, filed)], [ring, wheel("B1", 24)], [wheel("A1", 24), ring],
    ];
    for (const [a, b] of pairs) {
      const flanks = flanksOf(pairOf(pairStand(a, b), 0)), from = flanks.pair.computedMm!, way = flanks.pair.annulus ? -1 : 1;
      let last = -Infinity;
      for (let opened = -0.2; opened <= 0.6; opened += 0.05) {
        const distance = from + way * opened;
        // An annulus opens as its pinion comes nearer, and its working circle then shrinks: the turn of the driven is what opens.
        const arc = least(freeArcsOf(flanks, 48).all(distance)!) * workingRadiusMm(flanks.pair, flanks.pair.annulus ? from : distance);
        expect(arc).toBeGreaterThanOrEqual(last - 1e-9);
        last = arc;
      }
    }
  });
});

describe("the drawn teeth themselves", () => {
  const CHORD = 0.004;
  const filed = { form: "straight", thinning: 0.6 };
  const ring = wheel("R1", 48, { internal: true, outsideDiameter: 60, topping: 0.45 });
  /** Name, driver, driven, opening from the computed distance that clears, and one that is deep. */
  const pairs: [string, Part, Part, number, number][] = [
    ["involutes", wheel("A1", 24), pinion("B1", 14), 0.05, -0.3],
    ["clock teeth", wheel("A1", 30, clock), pinion("B1", 8, clock), 0.05, -1],
    ["clock teeth, the pinion driving", pinion("A1", 10, clock), wheel("B1", 30, clock), 0.05, -1],
    ["straight teeth", wheel("A1", 30, filed), wheel("B1", 24, filed), 0.1, -1],
    ["a lantern", wheel("A1", 32, clock), lantern("B1", 8, 1.2), 0.05, -1.2],
    ["a lantern that drives", lantern("A1", 10, 1.2), wheel("B1", 30, clock), 0.05, -1.2],
    ["an annulus", wheel("A1", 18), ring, 0.05, -0.3],
    ["an annulus that drives", ring, wheel("B1", 18), 0.05, -0.3],
  ];
  const PHASES = 6;

  it.each(pairs)("[DEPTH11] %s: never overlap by more than the chord error where the kernel lets them touch, on either side, and do when pressed further", (_, a, b, opened) => {
    const stands = standsOf(a, b, opened);
    for (let phase = 0; phase < PHASES; phase++) {
      const [back, forward] = stands.between(phase), own = stands.radius;
      for (const at of [back, forward, (back + forward) / 2]) expect(stands.overlapMm(phase, at)).toBeLessThan(2 * CHORD);
      for (const at of [back - (10 * CHORD) / own, forward + (10 * CHORD) / own]) expect(stands.overlapMm(phase, at)).toBeGreaterThan(2 * CHORD);
    }
  });
  it.each(pairs)("[DEPTH15] %s: overlap wherever the driven stands, at some phase, at a distance where the free arc is under 0", (_, a, b, _clears, deep) => {
    const stands = standsOf(a, b, deep);
    const phases = Array.from({ length: PHASES }, (_, phase) => phase).filter((phase) => { const [back, forward] = stands.between(phase); return forward < back; });
    expect(phases.length).toBeGreaterThan(0);
    for (const phase of phases) {
      const [back, forward] = stands.between(phase);
      for (let i = 0; i <= 8; i++) {
        const at = forward + ((back - forward) * i) / 8;
        expect(stands.overlapMm(phase, at)).toBeGreaterThan(Math.min(CHORD, ((back - forward) * stands.radius) / 8));
      }
    }
  });

  /** The pair at a distance: between what places the kernel lets the driven's tooth stand, and how deep the polygons then lie in one another. */
  function standsOf(a: Part, b: Part, opened: number) {
    const pair = pairOf(pairStand(a, b), 0), flanks = flanksOf(pair), way = pair.annulus ? -1 : 1;
    const distance = pair.computedMm! + way * opened, { mating, pitchRad, ratio, first, last } = driveOf(flanks, distance)!;
    const arcs = contactAt(flanks, distance, PHASES)!.freeArcRad;
    const teeth = (side: Pair["driver"]) => (side.teeth.form === "lantern" ? trundleOutlines(side.teeth, CHORD) : [toothOutline(side.teeth, CHORD)]);
    const turnOf = (phase: number) => (phase / PHASES) * pitchRad;
    return {
      radius: workingRadiusMm(pair, distance),
      between(phase: number): [number, number] {
        let back = -Infinity;
        for (let k = -6; k <= 6; k++) {
          const u = turnOf(phase) + k * pitchRad;
          if (u >= first && u <= last) back = Math.max(back, (touchAt(mating, u)?.leadRad ?? -Infinity) - k * pitchRad * ratio);
        }
        return [back, back + arcs[phase]];
      },
      overlapMm(phase: number, standsRad: number): number {
        const ones = teeth(pair.driver).map((o) => placed(o, turnOf(phase), 0, 0));
        const twos = teeth(pair.driven).map((o) => placed(o, pair.annulus ? standsRad : Math.PI - standsRad, mating.axisX, 0));
        let deepest = 0;
        for (const one of ones) for (const two of twos)
          deepest = Math.max(deepest, deepestIn(one, two, pair.annulus === "driven"), deepestIn(two, one, pair.annulus === "driver"));
        return deepest;
      },
    };
  }

  /** How far any corner of one polygon lies in the metal of another, mm: inside it, or outside an annulus's. */
  function deepestIn(points: Float64Array, polygon: Float64Array, outside: boolean): number {
    const xs = polygon.filter((_, i) => i % 2 === 0), ys = polygon.filter((_, i) => i % 2 === 1);
    const [left, right, low, high] = [least(xs), most(xs), least(ys), most(ys)];
    let deepest = 0;
    for (let i = 0; i < points.length; i += 2) {
      const x = points[i], y = points[i + 1];
      if (isIn(x, y, xs, ys, left, right, low, high) === outside) continue;
      let near = Infinity;
      for (let j = 0, k = xs.length - 1; j < xs.length; k = j++) {
        const dx = xs[j] - xs[k], dy = ys[j] - ys[k], t = Math.max(0, Math.min(1, ((x - xs[k]) * dx + (y - ys[k]) * dy) / (dx * dx + dy * dy || 1)));
        near = Math.min(near, (x - xs[k] - t * dx) ** 2 + (y - ys[k] - t * dy) ** 2);
      }
      deepest = Math.max(deepest, Math.sqrt(near));
    }
    return deepest;
  }

  function isIn(x: number, y: number, xs: Float64Array, ys: Float64Array, left: number, right: number, low: number, high: number): boolean {
    let inside = false;
    if (x < left || x > right || y < low || y > high) return false;
    for (let j = 0, k = xs.length - 1; j < xs.length; k = j++)
      if (ys[j] > y !== ys[k] > y && x < ((xs[k] - xs[j]) * (y - ys[j])) / (ys[k] - ys[j]) + xs[j]) inside = !inside;
    return inside;
  }
});
