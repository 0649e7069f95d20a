// How far each arbor can move in its bearings. Shoulders stand a pivot's length in from the ends; an arbor without two
// pivots has its endshake, half each way. All in mm; below 0 where the plates leave no endshake.
import type { Arbor, Instrument, Practice } from "../instrument.ts";
import type { Layout } from "../train/layout.ts";

export interface Shake { readonly up: number; readonly down: number }
export interface Freedom {
  readonly ownShake: Shake;
  /** Its own and that of everything it rides on. */
  readonly shake: Shake;
  /** On diameter. */
  readonly ownSideshake: number;
  readonly onFrame: boolean;
}

const NONE: Shake = { up: 0, down: 0 };

export function freedomsOf(instrument: Instrument, layout: Layout, practice: Practice): Freedom[] {
  const { arbors, frame } = instrument;
  const faces = new Map(frame.plates.map((p) => [p.id, { lower: p.z, upper: p.z + p.thickness }]));
  const onFrame = arbors.map((a) => a.fixed === true && a.rides === undefined);
  const own = arbors.map((a, i): Shake => {
    if (onFrame[i]) return NONE;
    const foot = a.pivots?.foot, head = a.pivots?.head;
    const footPlate = foot && faces.get(foot.plate), headPlate = head && faces.get(head.plate);
    if (foot === undefined || head === undefined || footPlate === undefined || headPlate === undefined) {
      const half = (a.endshake ?? practice.endshake) / 2;
      return { up: half, down: half };
    }
    return { up: headPlate.lower - (a.head - head.length), down: a.foot + foot.length - footPlate.upper };
  });
  return arbors.map((a, i) => {
    const shake = layout.chains[i].reduce((sum, j) => ({ up: sum.up + own[j].up, down: sum.down + own[j].down }), own[i]);
    const ridden = layout.chains[i].length === 0 ? null : arbors[layout.chains[i][0]];
    return { ownShake: own[i], shake, ownSideshake: onFrame[i] ? 0 : sideshakeOf(a, ridden, practice), onFrame: onFrame[i] };
  });
}

/** A pipe's is its own, else its bore less what it rides on; everything else's its own; else the practice's. */
function sideshakeOf(arbor: Arbor, ridden: Arbor | null, practice: Practice): number {
  if (arbor.sideshake !== undefined) return arbor.sideshake;
  const pipe = ridden !== null && arbor.rides?.radius === 0;
  return pipe && arbor.bore !== undefined ? Math.max(0, arbor.bore - ridden.diameter) : practice.sideshake;
}
