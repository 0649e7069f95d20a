// `bind`: engagements that contradict one another, the input or a fixed wheel, so that none can turn.
import type { Finding } from "../finding.ts";
import type { Bind, Movement } from "../movement.ts";

const REASON: Record<Bind["because"], string> = {
  ring: "close a ring whose ratios the two ways round disagree",
  input: "contradict the input",
  fixed: "contradict a fixed wheel",
  train: "contradict one another",
  distance: "hold axes that change their distance",
};

export function bindFindings(movement: Movement): Finding[] {
  return movement.binds.map((bind): Finding => {
    const first = movement.engagements.find((e) => bind.engagements.includes(e.id));
    const at = first === undefined ? undefined : movement.arbors[first.drivenArbor];
    return {
      code: "bind", severity: "foul", between: bind.engagements,
      ...(first === undefined || at === undefined ? {} : { at: { x: at.x, y: at.y, z: first.driven.z + first.driven.thickness / 2 } }),
      says: `${listed(bind.engagements)} ${REASON[bind.because]}: ${listed(bind.arbors) || "they"} cannot turn`, remedies: [],
    };
  });
}

function listed(ids: readonly string[]): string {
  return ids.length < 2 ? ids.join("") : `${ids.slice(0, -1).join(", ")} and ${ids[ids.length - 1]}`;
}
