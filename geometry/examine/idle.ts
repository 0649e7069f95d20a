// `idle`: an arbor, not fixed, that nothing drives. What is bound is not idle.
import type { Finding } from "../finding.ts";
import type { Movement } from "../movement.ts";
import { arborName, capital } from "./words.ts";

export const idleFindings = (movement: Movement): Finding[] => movement.arbors.flatMap((worked) => {
  const { arbor, bound, rate, x, y } = worked;
  if (arbor.fixed === true || bound) return [];
  const isIdle = rate === null;
  const finding: Finding = {
    code: "idle", severity: isIdle ? "tight" : "free", between: [arbor.id],
    at: { x, y, z: (arbor.foot + arbor.head) / 2 },
    says: `${capital(arborName(arbor))} is ${isIdle ? "driven by nothing" : "driven"}`, remedies: [],
  };
  return [finding];
});
