// The structural difference of two plain JSON values, and its application. History holds these, never whole documents.
// A change is set or removed at a path; a value that did not change keeps its identity when a change is applied.

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

export interface Change {
  readonly path: readonly (string | number)[];
  /** What stood there; absent: nothing did. */
  readonly from?: Json;
  /** What stands there now; absent: nothing does. */
  readonly to?: Json;
}

/** The changes that turn one value into another; lists are compared place by place, so a tail is set or removed. */
export function difference(from: unknown, to: unknown): readonly Change[] {
  const changes: Change[] = [];
  collect(from as Json, to as Json, [], changes);
  return changes;
}

/** The same changes the other way, last first. */
export const reversedChanges = (changes: readonly Change[]): readonly Change[] =>
  [...changes].reverse().map(({ path, from, to }) => ({
    path, ...(to === undefined ? {} : { from: to }), ...(from === undefined ? {} : { to: from }),
  }));

/** A new value with the changes made; everything untouched is shared with the old one. */
export const applyChanges = <T>(value: T, changes: readonly Change[]): T =>
  changes.reduce<Json | undefined>((v, change) => changed(v, change.path, change.to), value as Json) as T;

function collect(from: Json | undefined, to: Json | undefined, path: readonly (string | number)[], out: Change[]): void {
  if (Object.is(from, to)) return;
  if (Array.isArray(from) && Array.isArray(to)) {
    const shared = Math.min(from.length, to.length);
    for (let i = 0; i < shared; i++) collect(from[i], to[i], [...path, i], out);
    for (let i = shared; i < to.length; i++) out.push({ path: [...path, i], to: to[i] });
    for (let i = from.length - 1; i >= shared; i--) out.push({ path: [...path, i], from: from[i] });
  } else if (isRecord(from) && isRecord(to)) {
    for (const key of new Set([...Object.keys(from), ...Object.keys(to)])) collect(own(from, key), own(to, key), [...path, key], out);
  } else {
    out.push({ path, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
  }
}

function changed(value: Json | undefined, path: readonly (string | number)[], to: Json | undefined): Json | undefined {
  if (path.length === 0) return to;
  const [key, ...rest] = path;
  if (Array.isArray(value)) {
    const at = Number(key);
    const next = changed(value[at], rest, to);
    return [...value.slice(0, at), ...(next === undefined ? [] : [next]), ...value.slice(at + 1)];
  }
  if (!isRecord(value)) throw new Error(`a change at ${path.join(".")} needs a record or a list, and there is none`);
  const next = changed(own(value, String(key)), rest, to);
  const entries = Object.entries(value).filter(([k]) => k !== key || next !== undefined)
    .map(([k, v]): [string, Json] => [k, k === key ? (next as Json) : v]);
  if (next !== undefined && !Object.hasOwn(value, String(key))) entries.push([String(key), next]);
  return Object.fromEntries(entries);
}

const isRecord = (v: Json | undefined): v is { readonly [key: string]: Json } =>
  typeof v === "object" && v !== null && !Array.isArray(v);

const own = (v: { readonly [key: string]: Json }, key: string): Json | undefined => (Object.hasOwn(v, key) ? v[key] : undefined);
