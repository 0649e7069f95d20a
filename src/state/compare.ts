// Two versions of one instrument held against each other: what moved, what else changed, what came and went, and which
// findings were gained and cured. Things are the same where their ids are; pure.
import type { Finding, Instrument, Movement, Sheet } from "../../geometry/index.ts";
import { findingKey } from "./actions.ts";

export interface Version {
  readonly movement: Movement;
  readonly sheet: Sheet;
}
export interface Moved {
  readonly arbor: string;
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
  readonly byMm: number;
}
export interface Changed {
  /** Id of the thing; "" for the instrument as a whole. */
  readonly of: string;
  /** The field as it stands in the file: `z`, `pivots.foot.diameter`. */
  readonly field: string;
  /** As text, so that any value can be shown; null: it was not there. */
  readonly from: string | null;
  readonly to: string | null;
}
export interface Comparison {
  readonly moved: readonly Moved[];
  readonly changed: readonly Changed[];
  readonly added: readonly string[];
  readonly taken: readonly string[];
  readonly gained: readonly Finding[];
  readonly cured: readonly Finding[];
  /** The same finding, graver or less grave than before. */
  readonly graver: readonly Finding[];
  readonly eased: readonly Finding[];
}

/** Nearer than this nothing was moved (mm): the finest place that is kept in a file. */
const SAME_PLACE_MM = 1e-4;

export function compare(before: Version, after: Version): Comparison {
  const [old, now] = [thingsOf(before.movement.instrument), thingsOf(after.movement.instrument)];
  const shared = [...now.keys()].filter((id) => old.has(id));
  return {
    moved: movedArbors(before.movement, after.movement),
    changed: shared.flatMap((id) => changedFields(id, old.get(id)!, now.get(id)!)),
    added: [...now.keys()].filter((id) => !old.has(id)),
    taken: [...old.keys()].filter((id) => !now.has(id)),
    ...findingsApart(before.sheet.findings, after.sheet.findings),
  };
}

export const isAlike = (c: Comparison): boolean =>
  [c.moved, c.changed, c.added, c.taken, c.gained, c.cured, c.graver, c.eased].every((list) => list.length === 0);

/** Arbors by where they are worked out to stand, so that one that followed another is told too. */
function movedArbors(before: Movement, after: Movement): Moved[] {
  const stood = new Map(before.arbors.map((a) => [a.id, a]));
  return after.arbors.flatMap(({ id, x, y }) => {
    const from = stood.get(id);
    const byMm = from ? Math.hypot(x - from.x, y - from.y) : 0;
    return from && byMm >= SAME_PLACE_MM ? [{ arbor: id, from: { x: from.x, y: from.y }, to: { x, y }, byMm }] : [];
  });
}

type Fields = ReadonlyMap<string, string>;

/** Everything in the file that has an id of its own, by it, with its fields; what is left is the instrument's own, under "". */
function thingsOf(instrument: Instrument): Map<string, Fields> {
  const things = new Map<string, Fields>();
  const put = (id: string, thing: object, without: readonly string[]) => things.set(id, fieldsOf(thing, ["id", ...without]));
  const { frame, arbors, engagements, displays, dials, ...rest } = instrument;
  put("", rest, ["endshake", "dayBook"]);
  for (const one of [...frame.plates, ...frame.pillars, ...(displays ?? []), ...(dials ?? [])]) put(one.id, one, []);
  if (frame.case) put("case", frame.case, []);
  for (const e of engagements) put(e.id ?? `${e.driver}-${e.driven}`, e, []);
  for (const arbor of arbors) {
    put(arbor.id, arbor, ["x", "y", "parts"]);
    for (const part of arbor.parts) put(part.id, part, []);
  }
  return things;
}

function fieldsOf(thing: object, without: readonly string[]): Fields {
  const fields = new Map<string, string>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value === "object" && value !== null && !Array.isArray(value)) {
      for (const [key, inner] of Object.entries(value)) if (path !== "" || !without.includes(key)) walk(inner, path === "" ? key : `${path}.${key}`);
    } else if (value !== undefined) fields.set(path, typeof value === "string" ? value : JSON.stringify(value));
  };
  walk(thing, "");
  return fields;
}

const changedFields = (of: string, before: Fields, after: Fields): Changed[] =>
  [...new Set([...before.keys(), ...after.keys()])].filter((field) => before.get(field) !== after.get(field))
    .map((field) => ({ of, field, from: before.get(field) ?? null, to: after.get(field) ?? null }));

const GRAVITY = { free: 0, tight: 1, foul: 2 } as const;

function findingsApart(before: readonly Finding[], after: readonly Finding[]): Pick<Comparison, "gained" | "cured" | "graver" | "eased"> {
  const [old, now] = [new Map(before.map((f) => [findingKey(f), f])), new Map(after.map((f) => [findingKey(f), f]))];
  const changeOf = (f: Finding) => GRAVITY[f.severity] - GRAVITY[old.get(findingKey(f))?.severity ?? f.severity];
  return {
    gained: after.filter((f) => !old.has(findingKey(f))),
    cured: before.filter((f) => !now.has(findingKey(f))),
    graver: after.filter((f) => changeOf(f) > 0),
    eased: after.filter((f) => changeOf(f) < 0),
  };
}
