// `lost-motion`: pointers that hang back more than wanted when the input is reversed.
import { type Depth, depthsOf } from "../depth/depth.ts";
import { lostMotionOf, waysOf } from "../depth/lost-motion.ts";
import type { Finding } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";

export function lostMotionFindings(movement: Movement, depths: readonly Depth[] = depthsOf(movement)): Finding[] {
  const ways = waysOf(movement);
  return movement.displays.flatMap((display, i) => {
    const lostDeg = lostMotionOf(movement, i, depths, ways);
    if (lostDeg === null) return [];
    const divisionDeg = 360 / display.divisions, wantedDeg = movement.practice.lostMotion * divisionDeg;
    const isOver = lostDeg > wantedDeg + AT_LIMIT_MM;
    const { x, y, arbor } = movement.arbors[display.arbor];
    const lost = `${lostDeg.toFixed(2)}° (${(lostDeg / divisionDeg).toFixed(1)} divisions)`;
    const finding: Finding = {
      code: "lost-motion", severity: isOver ? "tight" : "free", between: [display.id],
      at: { x, y, z: arbor.head },
      says: isOver
        ? `The ${display.name} hangs back ${lost} when the input is reversed, ${movement.practice.lostMotion} divisions are allowed`
        : `The ${display.name} hangs back ${lost} when the input is reversed`,
      remedies: [],
    };
    return [finding];
  });
}
