// How high things sit: a part on its arbor, a plate of the frame, the ends of an arbor.
import { type Command, isLengthMm, keptMm, withArbor, withPart } from "./command.ts";
import { judged } from "./edit.ts";

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

/** Moves a plate; `z` is the height of its lower face. Pillars that end at it and arbors whose pivots run in it go with it at that end. */
export const raisePlate: Command<{ readonly plate: string; readonly z: number }> = {
  name: "Raise or lower a plate",
  run(instrument, { plate: id, z }) {
    const { frame } = instrument, plate = frame.plates.find((p) => p.id === id);
    if (!plate) return { refused: `There is no plate called ${id}.` };
    if (!isLengthMm(z)) return { refused: "A height is a length within 10,000 mm." };
    const by = z - plate.z, moved = (at: number) => keptMm(at + by);
    const ends = (at: number) => at === plate.z || at === plate.z + plate.thickness;
    return judged({
      ...instrument,
      frame: {
        ...frame,
        plates: frame.plates.map((p) => (p.id === id ? { ...p, z: keptMm(z) } : p)),
        pillars: frame.pillars.map((p) => (ends(p.from) || ends(p.to) ? { ...p, from: ends(p.from) ? moved(p.from) : p.from, to: ends(p.to) ? moved(p.to) : p.to } : p)),
      },
      arbors: instrument.arbors.map((a) => {
        const foot = a.pivots?.foot?.plate === id, head = a.pivots?.head?.plate === id;
        return foot || head ? { ...a, foot: foot ? moved(a.foot) : a.foot, head: head ? moved(a.head) : a.head } : a;
      }),
    }, `${id} ${by < 0 ? "lowered" : "raised"}`);
  },
};

/** Moves one end of an arbor, with its shoulder; the pivot is as long as it was. */
export const setEnd: Command<{ readonly arbor: string; readonly end: "foot" | "head"; readonly z: number }> = {
  name: "Move a shoulder",
  run(instrument, { arbor, end, z }) {
    if (!instrument.arbors.some((a) => a.id === arbor)) return { refused: `There is no arbor called ${arbor}.` };
    if (!isLengthMm(z)) return { refused: "A height is a length within 10,000 mm." };
    return judged(withArbor(instrument, arbor, (a) => ({ ...a, [end]: keptMm(z) })), `${arbor} ${end} moved`);
  },
};
