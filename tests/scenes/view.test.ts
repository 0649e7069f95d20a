// Where the eye stands, and the plane in which an arbor is carried. Lengths in mm; pixels are unit-less shares here.
import fc from "fast-check";
import { Euler, PerspectiveCamera, Raycaster, Vector2, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import {
  between, eyeOf, FIELD_RAD, nearedBy, onLevel, right, sayView, slidBy, standingView, towards, turnedBy, up, viewOfPlace,
  type Bound, type Vec, type View,
} from "../../scenes/eye/view.ts";
import { createEasing, placeCamera, roomTurn } from "../../scenes/frames.ts";
import { createEye, TURN_MS } from "../../scenes/eye/eye.ts";
import type { Standing } from "../../scenes/props.ts";

const BOUND: Bound = { x: 3, y: -4, radiusMm: 58, lowMm: -2.5, highMm: 51 };
const STANDINGS: readonly Standing[] = ["dial side", "back side", "edge", "quarter"];
const SEEDED = { seed: 20261125, numRuns: 200 };
const angle = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const anyView = fc.record({
  azimuthRad: angle(-9, 9), tiltRad: angle(0, Math.PI), distanceMm: angle(60, 500),
  target: fc.tuple(angle(-20, 20), angle(-20, 20), angle(0, 40)),
});

function cameraOf(view: View, aspect: number): PerspectiveCamera {
  const camera = new PerspectiveCamera();
  placeCamera(camera, view, aspect);
  return camera;
}
const seen = (place: Vec, view: View, aspect: number) => new Vector3(...place).project(cameraOf(view, aspect));

describe("standing views", () => {
  it("show the whole bound, and nearly fill the picture, in wide and in narrow windows", () => {
    for (const standing of STANDINGS)
      for (const aspect of [0.45, 1, 1.2, 2.5]) {
        const view = standingView(standing, BOUND, aspect);
        let reach = 0;
        for (let i = 0; i < 360; i++)
          for (const z of [BOUND.lowMm, BOUND.highMm]) {
            const a = (i * Math.PI) / 180;
            const p = seen([BOUND.x + BOUND.radiusMm * Math.cos(a), BOUND.y + BOUND.radiusMm * Math.sin(a), z], view, aspect);
            reach = Math.max(reach, Math.abs(p.x), Math.abs(p.y));
          }
        expect(reach).toBeLessThan(0.92);
        expect(reach).toBeGreaterThan(0.85);
      }
  });

  it("look square on: +y up and +x right from the dial side, +x left from the back, z up on the edge", () => {
    const dial = standingView("dial side", BOUND, 1), back = standingView("back side", BOUND, 1), edge = standingView("edge", BOUND, 1);
    expect(towards(dial)).toEqual([0, -0, 1]);
    expect(right(dial)[0]).toBeCloseTo(1, 12);
    expect(up(dial)[1]).toBeCloseTo(1, 12);
    expect(towards(back)[2]).toBeCloseTo(-1, 12);
    expect(right(back)[0]).toBeCloseTo(-1, 12);
    expect(up(back)[1]).toBeCloseTo(1, 12);
    expect(up(edge)[2]).toBeCloseTo(1, 12);
  });

  it("are said in words", () => {
    expect(STANDINGS.map((s) => sayView(standingView(s, BOUND, 1)))).toEqual([
      "Seen from the dial side", "Seen from the back side", "Seen from the edge", "Seen from the dial side, turned 38°",
    ]);
    expect(sayView(turnedBy(standingView("quarter", BOUND, 1), -Math.PI / 2, 0))).toBe("Seen from the dial side, turned −52°");
  });
});

describe("the camera", () => {
  it("stands where the view says, with the view's own right and up (1e-9)", () => {
    fc.assert(fc.property(anyView, (view) => {
      const camera = cameraOf(view, 1.3);
      const axes = [new Vector3(), new Vector3(), new Vector3()] as const;
      camera.matrixWorld.extractBasis(...axes);
      expect(camera.position.distanceTo(new Vector3(...eyeOf(view)))).toBeLessThan(1e-9);
      for (const [axis, wanted] of [[axes[0], right(view)], [axes[1], up(view)], [axes[2], towards(view)]] as const)
        expect(axis.distanceTo(new Vector3(...wanted))).toBeLessThan(1e-9);
    }), SEEDED);
  });

  it("keeps what is under the pointer there while it comes nearer (1e-6 of the picture)", () => {
    fc.assert(fc.property(anyView, angle(-1, 1), angle(-1, 1), angle(0.8, 1.25), (view, across, upward, factor) => {
      const half = view.distanceMm * Math.tan(FIELD_RAD / 2);
      const place = new Vector3(...view.target).addScaledVector(new Vector3(...right(view)), across * half).addScaledVector(new Vector3(...up(view)), upward * half);
      // Far bounds never stop the zoom here.
      const nearer = nearedBy(view, factor, { ...BOUND, radiusMm: 200 }, across, upward);
      if (nearer.distanceMm < 0.16 * 200) return;
      const p = place.clone().project(cameraOf(nearer, 1));
      expect(Math.hypot(p.x - across, p.y - upward)).toBeLessThan(1e-6);
    }), SEEDED);
  });

  it("slides the picture with the hand, by shares of its height", () => {
    const view = standingView("quarter", BOUND, 1), slid = slidBy(view, 0.25, -0.1);
    const p = seen(view.target, slid, 1);
    expect(p.x).toBeCloseTo(0.5, 9);
    expect(p.y).toBeCloseTo(-0.2, 9);
  });

  it("never leans past the dial or past the back", () => {
    const view = standingView("quarter", BOUND, 1);
    expect(turnedBy(view, 0, -9).tiltRad).toBe(0);
    expect(turnedBy(view, 0, 9).tiltRad).toBe(Math.PI);
  });
});

describe("turning to a place", () => {
  it("brings the place to the near side and into the picture", () => {
    const from = standingView("quarter", BOUND, 1.2);
    fc.assert(fc.property(angle(0, 2 * Math.PI), angle(0.2, 0.95), angle(-2, 50), fc.constantFrom("plan" as const, "height" as const), (a, r, z, way) => {
      const place: Vec = [BOUND.x + r * BOUND.radiusMm * Math.cos(a), BOUND.y + r * BOUND.radiusMm * Math.sin(a), z];
      const view = viewOfPlace(place, way, from, BOUND, 1.2);
      const p = seen(place, view, 1.2);
      expect(Math.max(Math.abs(p.x), Math.abs(p.y))).toBeLessThan(1);
      const near = towards(view);
      expect(near[0] * (place[0] - BOUND.x) + near[1] * (place[1] - BOUND.y)).toBeGreaterThan(0);
    }), SEEDED);
  });

  it("looks from behind at what lies behind the back plate", () => {
    expect(sayView(viewOfPlace([20, 0, -6], "plan", standingView("quarter", BOUND, 1), BOUND, 1))).toMatch(/^Seen from the back side/);
  });

  it("goes the shorter way round and ends exactly there", () => {
    const a = { ...standingView("quarter", BOUND, 1), azimuthRad: 3 }, b = { ...a, azimuthRad: -3, tiltRad: 1.4 };
    expect(Math.abs(between(a, b, 0.5).azimuthRad)).toBeGreaterThan(3);
    expect(between(a, b, 0)).toEqual(a);
    expect(Math.cos(between(a, b, 1).azimuthRad)).toBeCloseTo(Math.cos(-3), 12);
    expect(between(a, b, 1).tiltRad).toBe(1.4);
  });

  it("takes 450 ms, or none where motion is to be still, and a hand ends it", () => {
    const a = standingView("quarter", BOUND, 1), b = standingView("edge", BOUND, 1);
    const eye = createEye(a);
    eye.glideTo(b, false);
    expect([eye.step(1000), eye.step(1000 + TURN_MS / 2), eye.step(1000 + TURN_MS)]).toEqual([true, true, false]);
    expect(eye.view().tiltRad).toBe(b.tiltRad);
    eye.glideTo(a, true);
    expect([eye.step(2000), eye.view()]).toEqual([false, a]);
    eye.glideTo(b, false);
    eye.step(3000);
    eye.set(a);
    expect([eye.step(3100), eye.view()]).toEqual([false, a]);
    expect(TURN_MS).toBe(450);
  });
});

describe("the plane of a drag", () => {
  it("gives back the place that the ray was aimed at (1e-6 mm)", () => {
    fc.assert(fc.property(anyView, angle(-0.8, 0.8), angle(-0.8, 0.8), angle(-5, 45), (view, x, y, level) => {
      const ray = new Raycaster();
      ray.setFromCamera(new Vector2(x, y), cameraOf(view, 1.3));
      const at = onLevel(ray.ray.origin.toArray(), ray.ray.direction.toArray(), level);
      if (!at) return;
      const away = ray.ray.distanceToPoint(new Vector3(at.x, at.y, level));
      expect(away).toBeLessThan(1e-6 * Math.max(1, Math.hypot(at.x, at.y)));
    }), SEEDED);
  });

  it("is refused edge-on and behind the eye, where a pixel would be metres", () => {
    expect(onLevel([0, -100, 10], [0, 1, 0], 10)).toBeNull();
    expect(onLevel([0, -100, 10], [0, 1, 0.01], 12)).toBeNull();
    expect(onLevel([0, 0, 100], [0, 0, 1], 10)).toBeNull();
    expect(onLevel([1, 2, 100], [0, 0, -1], 10)).toEqual({ x: 1, y: 2 });
  });
});

describe("the room", () => {
  it("goes round with the eye, and comes to light the back when that is turned up", () => {
    const above = (view: { azimuthRad: number; tiltRad: number }) => new Vector3(0, 0, 1).applyEuler(roomTurn(view, new Euler()));
    expect(above({ azimuthRad: 1, tiltRad: 0 }).z).toBeCloseTo(1, 12);
    expect(above({ azimuthRad: 1, tiltRad: Math.PI }).z).toBeCloseTo(-1, 12);
    const left = new Vector3(-1, 0, 0).applyEuler(roomTurn({ azimuthRad: 0.7, tiltRad: 1 }, new Euler()));
    expect(left.distanceTo(new Vector3(-Math.cos(0.7), -Math.sin(0.7), 0))).toBeLessThan(1e-12);
  });
});

describe("lifting", () => {
  it("eases over its time from where it is, and is there at once where motion is still", () => {
    const easing = createEasing(0, 300);
    expect(easing.at(0, 0, false)).toEqual({ share: 0, going: false });
    expect(easing.at(1, 100, false)).toEqual({ share: 0, going: true });
    expect(easing.at(1, 250, false).share).toBeCloseTo(0.5, 12);
    expect(easing.at(1, 400, false)).toEqual({ share: 1, going: false });
    expect(easing.at(0.2, 500, true)).toEqual({ share: 0.2, going: false });
  });
});
