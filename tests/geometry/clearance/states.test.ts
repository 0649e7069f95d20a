// The figures at the worst against states that a movement can really take: every arbor somewhere in its shake and its
// holes, every toothed part with its run-out some way, every carrier somewhere in its turn.
import { describe, expect, it } from "vitest";
import { edgeDistance } from "../../../geometry/bodies/plate.ts";
import type { Thing } from "../../../geometry/bodies/thing.ts";
import { allGapsOf, sceneOf } from "../../../geometry/clearance/gaps.ts";
import type { Movement } from "../../../geometry/movement.ts";
import { toNumber } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";
import { jumble } from "../../fixtures/jumble.ts";
import { sourceOf, type Source } from "../../fixtures/random.ts";

const ROUNDING_MM = 1e-9;

interface Place { readonly x: number; readonly y: number; readonly lift: number }

/** Where every arbor is at one state: what rides goes with what it rides on. */
function stateOf(movement: Movement, s: Source): Place[] {
  const turns = s.between(-50, 50);
  const end = s.chance(0.5);
  const own = movement.arbors.map(({ ownShake, ownSideshake }) => {
    const a = s.between(0, 2 * Math.PI), r = ownSideshake / 2;
    const lift = end ? s.pick([-ownShake.down, ownShake.up]) : s.between(-ownShake.down, ownShake.up);
    return { x: r * Math.cos(a), y: r * Math.sin(a), lift };
  });
  const place = (i: number): Place => {
    const a = movement.arbors[i]!, [on] = a.chain;
    if (on === undefined) return { x: a.x + own[i]!.x, y: a.y + own[i]!.y, lift: own[i]!.lift };
    const carrier = movement.arbors[on]!, below = place(on);
    const turn = carrier.rate === null ? 0 : 2 * Math.PI * toNumber(carrier.rate) * turns;
    const vx = a.x - carrier.x, vy = a.y - carrier.y, c = Math.cos(turn), z = Math.sin(turn);
    return { x: below.x + c * vx - z * vy + own[i]!.x, y: below.y + z * vx + c * vy + own[i]!.y, lift: below.lift + own[i]!.lift };
  };
  return movement.arbors.map((_, i) => place(i));
}

function centreOf(thing: Thing, state: readonly Place[], s: Source): Place {
  const at = thing.arbor < 0 ? { ...thing.axis.atRest, lift: 0 } : state[thing.arbor]!;
  const a = s.between(0, 2 * Math.PI);
  return { x: at.x + thing.runoutMm * Math.cos(a), y: at.y + thing.runoutMm * Math.sin(a), lift: at.lift };
}

describe("the figures at the worst", () => {
  it("[GAP16] hold at every state within the shakes, in plan and in height", () => {
    let judged = 0, carried = 0, least = Infinity;
    for (let seed = 0; seed < 250; seed++) {
      const movement = workOut(jumble(seed)), s = sourceOf(seed + 77);
      const scene = sceneOf(movement);
      if (movement.arbors.some((a) => a.ownShake.up + a.ownShake.down < 0)) continue;
      carried += scene.things.filter((t) => t.axis.swings.length > 0).length;
      const { pairs } = allGapsOf(scene);
      for (let k = 0; k < 12; k++) {
        const state = stateOf(movement, s);
        for (const { a, b, verdict } of pairs) {
          if (a.cylinders.length > 1 || b.cylinders.length > 1) continue;
          const [ca, cb] = verdict.cylinders, pa = centreOf(a, state, s), pb = centreOf(b, state, s);
          const d = Math.hypot(pa.x - pb.x, pa.y - pb.y);
          const plan = a.plate !== null || b.plate !== null ? null : Math.max(
            d - ca.radius - cb.radius, ca.inner > 0 ? ca.inner - d - cb.radius : -Infinity, cb.inner > 0 ? cb.inner - d - ca.radius : -Infinity);
          const onPlate = b.plate === null ? null : Math.max(edgeDistance(b.plate.outline, pa.x, pa.y) - ca.radius,
            ...(b.plate.openings ?? []).map((o) => o.diameter / 2 - Math.hypot(o.x - pa.x, o.y - pa.y) - ca.radius));
          least = Math.min(least, (plan ?? onPlate ?? Infinity) - verdict.plan.worst);
          const aOver = ca.z0 + pa.lift - cb.z1 - pb.lift, bOver = cb.z0 + pb.lift - ca.z1 - pa.lift;
          const drawnAOver = ca.z0 - cb.z1 > cb.z0 - ca.z1;
          least = Math.min(least, (drawnAOver ? aOver : bOver) - verdict.height.worst);
          judged++;
        }
      }
    }
    expect(least).toBeGreaterThan(-ROUNDING_MM);
    expect(judged).toBeGreaterThan(50_000);
    expect(carried).toBeGreaterThan(300);
  });
});
