// How high a part sits on its arbor.
import { type Command, isLengthMm, keptMm, withPart } from "./command.ts";

/** Moves one part along its arbor; `z` is the height of its lower face. */
export const raisePart: Command<{ readonly part: string; readonly z: number }> = {
  name: "Raise or lower a part",
  run(instrument, { part: id, z }) {
    const part = instrument.arbors.flatMap((a) => a.parts).find((p) => p.id === id);
    if (!part) return { refused: `There is no part called ${id}.` };
    if (!isLengthMm(z)) return { refused: "A height is a length within 10,000 mm." };
    return { instrument: withPart(instrument, id, (p) => ({ ...p, z: keptMm(z) })), says: `${id} ${z < part.z ? "lowered" : "raised"}` };
  },
};
