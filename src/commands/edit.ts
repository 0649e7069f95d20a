// The changes that hold for everything in an instrument, whatever it is: setting a field, adding, copying, renaming and
// taking away. They follow the definition of the file, and its reader judges each: what it would refuse is not done.
import { type Instrument, workOut } from "../../geometry/index.ts";
import { idsIn, notesOn, type Path, shapeAt, valueAt, withIds, withoutThose } from "../document/index.ts";
import { type Command, keptMm, type Outcome } from "./command.ts";

/** Sets what stands at a path; undefined takes it away. What encloses it is made where it is not there yet. */
export const setField: Command<{ readonly path: Path; readonly to: unknown }> = {
  name: "Set a field",
  run(instrument, { path, to: given }) {
    // A file knows no −0.
    const to = given === 0 ? 0 : given;
    return judged(setWith(instrument, path, to), `${pathInWords(instrument, path)}${to === undefined ? " by default" : saysOf(to)}`);
  },
};

/** Puts a new thing at the end of a list, which is made where it is not there yet. */
export const addThing: Command<{ readonly list: Path; readonly thing: unknown }> = {
  name: "Add a thing",
  run(instrument, { list, thing }) {
    const there = valueAt(instrument, list);
    return judged(withAt(instrument, list, [...(Array.isArray(there) ? there : []), thing]), `${thingInWords(thing, list)} added`);
  },
};

/** A copy beside the thing, with ids of its own; what lies in it refers to what was copied with it. */
export const copyThing: Command<{ readonly path: Path }> = {
  name: "Copy a thing",
  run(instrument, { path }) {
    const list = path.slice(0, -1), at = Number(path.at(-1)), items = valueAt(instrument, list), thing = valueAt(instrument, path);
    if (!Array.isArray(items) || thing === undefined) return { refused: "There is nothing to copy." };
    const shape = shapeAt(instrument, path), names = freshNames(instrument, idsIn(thing, shape));
    const copy = withIds(thing, (id) => names.get(id) ?? id, shape);
    return judged(withAt(instrument, list, [...items.slice(0, at + 1), copy, ...items.slice(at + 1)]), `${thingInWords(thing, list)} copied`);
  },
};

/** Takes a thing out of its list, with everything that cannot be without it. */
export const takeAway: Command<{ readonly path: Path }> = {
  name: "Take away",
  run(instrument, { path }) {
    const thing = valueAt(instrument, path);
    if (thing === undefined) return { refused: "There is nothing to take away." };
    let left: unknown = withAt(instrument, path, undefined), before: unknown = instrument;
    while (left !== undefined) {
      const still = new Set(idsIn(left)), gone = new Set(idsIn(before).filter((id) => !still.has(id)));
      if (gone.size === 0) break;
      before = left;
      left = withoutThose(left, (id) => gone.has(id));
    }
    if (left === undefined) return { refused: "The input would turn nothing: choose another arbor for it first." };
    const also = lengthOf(instrument.engagements) - lengthOf((left as Instrument).engagements) - (path[0] === "engagements" ? 1 : 0);
    return judged(left as Instrument, `${thingInWords(thing, path.slice(0, -1))} taken away${also > 0 ? `, and ${also === 1 ? "one engagement" : `${also} engagements`}` : ""}`);
  },
};

/** Gives a thing another id, and everything that refers to it. */
export const rename: Command<{ readonly from: string; readonly to: string }> = {
  name: "Rename",
  run(instrument, { from, to }) {
    if (!idsIn(instrument).includes(from)) return { refused: `There is nothing called ${from}.` };
    return judged(withIds(instrument, (id) => (id === from ? to : id)), `${from} renamed ${to}`);
  },
};

/** Puts a part on another arbor. */
export const putOn: Command<{ readonly part: string; readonly arbor: string }> = {
  name: "Put on another arbor",
  run(instrument, { part: id, arbor }) {
    const part = instrument.arbors.flatMap((a) => a.parts).find((p) => p.id === id);
    if (!part || !instrument.arbors.some((a) => a.id === arbor)) return { refused: `There is no ${part ? `arbor called ${arbor}` : `part called ${id}`}.` };
    const arbors = instrument.arbors.map((a) => ({ ...a, parts: [...a.parts.filter((p) => p.id !== id), ...(a.id === arbor ? [part] : [])] }));
    return judged({ ...instrument, arbors }, `${id} put on ${arbor}`);
  },
};

/** What came of a search, in place of the instrument it was asked about. */
export const takeFound: Command<{ readonly asked: Instrument; readonly found: Instrument; readonly says: string }> = {
  name: "Take what was found",
  run: (instrument, { asked, found, says }) => (instrument === asked ? judged(found, says)
    : { refused: "The instrument has changed since; search again." }),
};

/** Only what the reader would accept is done. */
export function judged(next: Instrument, says: string): Outcome {
  const [fault] = notesOn(next).faults;
  return fault === undefined ? { instrument: next, says } : { refused: `${fault.path || "The file"}: ${fault.found}; expected ${fault.expected}.` };
}

/** What the reader would expect, were this to stand at a path; null where it would accept it. */
export const faultWith = (instrument: Instrument, path: Path, to: unknown): string | null => notesOn(setWith(instrument, path, to)).faults[0]?.expected ?? null;

/** Of two fields that stand together the other goes with the one, or comes with it: of an arbor, where it stands now. */
function setWith(instrument: Instrument, path: Path, to: unknown): Instrument {
  const next = withAt(instrument, path, to), whole = path.slice(0, -1), shape = shapeAt(instrument, whole);
  const pair = shape?.is === "fields" ? shape.together : undefined;
  const other = pair?.find((name) => name !== path.at(-1));
  if (!pair || other === undefined || !pair.includes(String(path.at(-1)))) return next;
  if (to === undefined) return withAt(next, [...whole, other], undefined);
  if (valueAt(instrument, [...whole, other]) !== undefined) return next;
  const stands = whole[0] === "arbors" ? workOut(instrument).arbors[Number(whole[1])] : undefined;
  return withAt(next, [...whole, other], stands && (other === "x" || other === "y") ? keptMm(stands[other]) : 0);
}

/** The value with another at a path; an object in which nothing is left goes too. */
export function withAt<T>(value: T, path: Path, to: unknown): T {
  return setAt(value, path, to) as T;
}

function setAt(value: unknown, [key, ...rest]: Path, to: unknown): unknown {
  if (key === undefined) return to;
  if (typeof key === "number") {
    const items = Array.isArray(value) ? (value as unknown[]) : [];
    const next = setAt(items[key], rest, to);
    return [...items.slice(0, key), ...(next === undefined ? [] : [next]), ...items.slice(key + 1)];
  }
  const fields = typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
  const next = setAt(Object.hasOwn(fields, key) ? fields[key] : undefined, rest, to);
  const entries = Object.entries(fields).filter(([name]) => name !== key || next !== undefined).map(([name, v]) => [name, name === key ? next : v] as const);
  const all = next === undefined || Object.hasOwn(fields, key) ? entries : [...entries, [key, next] as const];
  return all.length === 0 && next === undefined ? undefined : Object.fromEntries(all);
}

/** "outsideDiameter" as it is spoken. */
export const fieldInWords = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

/** The nearest thing with an id, and the field of it. */
function pathInWords(instrument: Instrument, path: Path): string {
  let id = "", from = 0;
  path.forEach((_, i) => {
    const there = valueAt(instrument, [...path.slice(0, i + 1), "id"]);
    if (typeof there === "string") { id = there; from = i + 1; }
  });
  const fields = path.slice(from).filter((key) => typeof key === "string").map(fieldInWords).join(" ");
  return [id, fields].filter(Boolean).join(" ");
}

const saysOf = (to: unknown): string => (typeof to === "number" ? ` ${Math.round(to * 1e4) / 1e4}` : typeof to === "boolean" ? (to ? ": yes" : ": no")
  : typeof to === "string" && to.length <= 24 ? ` ${to}` : "");

function thingInWords(thing: unknown, list: Path): string {
  const id = valueAt(thing, ["id"]);
  if (typeof id === "string") return id;
  const [driver, driven] = [valueAt(thing, ["driver"]), valueAt(thing, ["driven"])];
  if (typeof driver === "string" && typeof driven === "string") return `${driver} and ${driven} in gear`;
  return fieldInWords(String(list.at(-1))).replace(/s$/, "");
}

const lengthOf = (list: readonly unknown[] | undefined): number => list?.length ?? 0;

/** New names for ids: an arbor the next letter, a part its arbor's with its own number, anything else the next number. */
export function freshNames(instrument: Instrument, ids: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set([...idsIn(instrument), "case", "input"]);
  const names = new Map<string, string>();
  const give = (id: string, name: string) => { names.set(id, name); taken.add(name); };
  for (const id of ids) {
    const [first] = ids, whole = first === undefined ? undefined : names.get(first);
    const after = first !== undefined && id !== first && id.startsWith(first) ? `${whole}${id.slice(first.length)}` : null;
    if (after !== null && !taken.has(after)) give(id, after);
    else if (/^[A-Z]$/.test(id)) give(id, nextLetter(taken));
    else give(id, nextNumber(id.replace(/\d+$/, ""), taken));
  }
  return names;
}

/** The next free letter, then A2, B2 … I, O and X are easily misread. */
export function nextLetter(taken: ReadonlySet<string>): string {
  for (let round = 1; ; round++)
    for (const letter of "ABCDEFGHJKLMNPQRSTUVWYZ") {
      const name = round === 1 ? letter : `${letter}.${round}`;
      if (!taken.has(name)) return name;
    }
}

export function nextNumber(stem: string, taken: ReadonlySet<string>): string {
  const short = stem.slice(0, 26);
  for (let n = 1; ; n++) if (!taken.has(`${short}${n}`)) return `${short}${n}`;
}
