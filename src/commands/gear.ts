// Puts two wheels in gear: the engagement, and where nothing else holds one of the two, that one brought to its distance
// and to the height of the other. What is steady, measured or in gear already stays, and the examiner says what is wrong.
import { type Arbor, type Instrument, type Part, workOut } from "../../geometry/index.ts";
import { type Command, keptMm, withArbor, withPart } from "./command.ts";
import { judged } from "./edit.ts";
import { cannotMove } from "./planting.ts";

export const putInGear: Command<{ readonly driver: string; readonly driven: string }> = {
  name: "Put in gear",
  run(instrument, { driver, driven }) {
    const engaged = judged({ ...instrument, engagements: [...instrument.engagements, { driver, driven }] }, `${driver} and ${driven} in gear`);
    if ("refused" in engaged) return engaged;
    const free = [driven, driver].find((id) => isFree(instrument, id));
    if (free === undefined) return engaged;
    const other = free === driven ? driver : driven;
    return judged(atDistance(atHeight(engaged.instrument, free, other), free, other), engaged.says);
  },
};

interface Where { readonly arbor: Arbor; readonly part: Part }

function where({ arbors }: Instrument, id: string): Where | null {
  for (const arbor of arbors) for (const part of arbor.parts) if (part.id === id) return { arbor, part };
  return null;
}

/** Nothing of its arbor is in gear yet, nothing rides on it, and its place is the maker's to choose. */
function isFree(instrument: Instrument, id: string): boolean {
  const at = where(instrument, id);
  if (!at || at.arbor.steady === true || instrument.input.arbor === at.arbor.id || cannotMove(instrument, at.arbor.id) !== null) return false;
  const own = new Set(at.arbor.parts.map((p) => p.id));
  return !instrument.engagements.some((e) => own.has(e.driver) || own.has(e.driven)) && !instrument.arbors.some((a) => a.rides?.on === at.arbor.id);
}

/** Middle over middle, unless the faces overlap already. */
function atHeight(instrument: Instrument, free: string, other: string): Instrument {
  const a = where(instrument, free)?.part, b = where(instrument, other)?.part;
  if (!a || !b || (a.z < b.z + b.thickness && b.z < a.z + a.thickness)) return instrument;
  return withPart(instrument, free, (p) => ({ ...p, z: keptMm(b.z + (b.thickness - p.thickness) / 2) }));
}

/** Along the line of centres as it stands, or along x where the two stand on one axis. */
function atDistance(instrument: Instrument, free: string, other: string): Instrument {
  const movement = workOut(instrument), pair = movement.engagements.at(-1);
  const at = [free, other].map((id) => movement.arbors[movement.partIndex.get(id)?.arbor ?? -1]);
  const [mover, stands] = at;
  if (!mover || !stands || pair?.computed == null) return instrument;
  const dx = mover.x - stands.x, dy = mover.y - stands.y, now = Math.hypot(dx, dy);
  const [ux, uy] = now > 0 ? [dx / now, dy / now] : [1, 0];
  return withArbor(instrument, mover.id, (a) => ({ ...a, x: keptMm(stands.x + ux * pair.computed!), y: keptMm(stands.y + uy * pair.computed!) }));
}
