// Holds a value against its shape: every fault, every field that is not understood, every id and every reference, each
// with its path. It goes on after a fault, so that a maker hears of all of them at once.
import { expected, found } from "./words.ts";
import { ID_PATTERN } from "./shape.ts";
import type { FieldsShape, KindsShape, Shape, Sort } from "./shape.ts";

export interface Fault { readonly path: string; readonly found: string; readonly expected: string }
export interface Named { readonly id: string; readonly sort: Sort; readonly path: string }
export interface Referred { readonly id: string; readonly to: Sort; readonly path: string }

export interface Notes {
  readonly faults: Fault[];
  readonly unknown: string[];
  readonly ids: Named[];
  readonly references: Referred[];
  /** Faults found after the list was full. */
  more: number;
}

/** A file of nothing but faults must not fill the memory with them. */
const MOST_FAULTS = 10_000;

export function say(notes: Notes, path: string, found: string, expected: string): void {
  if (notes.faults.length < MOST_FAULTS) notes.faults.push({ path, found, expected });
  else notes.more++;
}

type Fields = Readonly<Record<string, unknown>>;

const ID = new RegExp(ID_PATTERN);

export const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A field of an object that came from a file: its own, never one that every object has. */
export const own = (value: unknown, name: string): unknown =>
  isFields(value) && Object.hasOwn(value, name) ? value[name] : undefined;

export const below = (path: string, name: string): string =>
  /^[A-Za-z_$][\w$]*$/.test(name) ? (path === "" ? name : `${path}.${name}`) : `${path}[${JSON.stringify(name)}]`;

export function check(value: unknown, shape: Shape, path: string, notes: Notes): void {
  switch (shape.is) {
    case "fields": return checkFields(value, shape, path, notes);
    case "kinds": return checkKinds(value, shape, path, notes);
    case "list":
    case "pair":
    case "lists": return checkList(value, shape, path, notes);
    case "id":
      if (!(typeof value === "string" && ID.test(value))) return fault(value, shape, path, notes);
      notes.ids.push({ id: value, sort: shape.of, path });
      return;
    case "reference":
      if (typeof value !== "string") return fault(value, shape, path, notes);
      notes.references.push({ id: value, to: shape.to, path });
      return;
    default:
      if (!fits(value, shape)) fault(value, shape, path, notes);
  }
}

function fits(value: unknown, shape: Shape): boolean {
  switch (shape.is) {
    case "text": return typeof value === "string";
    case "flag": return typeof value === "boolean";
    case "word": return typeof value === "string" && shape.words.includes(value);
    case "format": return value === shape.number;
    case "number":
      return typeof value === "number" && value >= shape.least && value <= shape.most
        && !(shape.above && value === shape.least) && !(shape.whole && !Number.isInteger(value));
    default: return false;
  }
}

function checkFields(value: unknown, shape: FieldsShape, path: string, notes: Notes): void {
  if (!isFields(value)) return fault(value, shape, path, notes);
  for (const [name, field] of Object.entries(shape.fields)) {
    const at = below(path, name);
    if (Object.hasOwn(value, name)) check(value[name], field.shape, at, notes);
    else if (field.when === "always") fault(undefined, field.shape, at, notes);
  }
  for (const name of Object.keys(value)) {
    if (Object.hasOwn(shape.fields, name)) continue;
    notes.unknown.push(below(path, name));
    checkUnknown(value[name], below(path, name), notes);
  }
  checkRules(value, shape, path, notes);
}

function checkKinds(value: unknown, shape: KindsShape, path: string, notes: Notes): void {
  if (!isFields(value)) return fault(value, shape, path, notes);
  const kind = own(value, "kind");
  if (typeof kind === "string" && Object.hasOwn(shape.kinds, kind))
    return checkFields(value, shape.kinds[kind] as FieldsShape, path, notes);
  fault(kind, { is: "word", words: Object.keys(shape.kinds) }, below(path, "kind"), notes);
  const id = Object.values(shape.kinds)[0]?.fields["id"];
  if (id) check(own(value, "id"), id.shape, below(path, "id"), notes);
}

function checkList(value: unknown, shape: Extract<Shape, { is: "list" | "pair" | "lists" }>, path: string, notes: Notes): void {
  const [least, most] = shape.is === "pair" ? [2, 2] : shape.is === "list" ? [shape.least, shape.most] : [0, shape.most];
  if (!Array.isArray(value) || value.length < least || value.length > most) return fault(value, shape, path, notes);
  const of: Shape = shape.is === "lists" && Array.isArray(value[0]) ? { is: "list", of: shape.of, least: 0, most } : shape.of;
  value.forEach((item, i) => check(item, of, `${path}[${i}]`, notes));
  if (shape.is === "pair" && shape.ascending && typeof value[0] === "number" && value[0] > value[1])
    say(notes, path, found(value), "the lesser first");
}

/** What is said between fields of one object. */
function checkRules(value: Fields, shape: FieldsShape, path: string, notes: Notes): void {
  const { together, above, needs, oneOf } = shape;
  const stands = (name: string) => own(value, name) !== undefined;
  if (together && stands(together[0]) !== stands(together[1])) {
    const [one, other] = stands(together[0]) ? together : [together[1], together[0]];
    say(notes, path, `${one} without ${other}`, `both ${together.join(" and ")}, or neither`);
  }
  if (above) {
    const [upper, lower] = above.map((name) => own(value, name));
    if (typeof upper === "number" && typeof lower === "number" && upper <= lower)
      say(notes, below(path, above[0]), found(upper), `above ${above[1]}, which is at ${found(lower)}`);
  }
  if (needs && own(value, needs[0]) === true && !stands(needs[1]))
    say(notes, below(path, needs[1]), "nothing", expected(shape.fields[needs[1]]?.shape as Shape, undefined));
  if (oneOf && oneOf.filter(stands).length !== 1)
    say(notes, path, oneOf.filter(stands).join(" and ") || found(value), `one of ${oneOf.join(", ")}`);
}

/** What is not understood is kept, and so must at least be able to be written back: every number finite. */
function checkUnknown(value: unknown, path: string, notes: Notes): void {
  if (typeof value === "number" && !Number.isFinite(value)) say(notes, path, found(value), "a finite number");
  else if (Array.isArray(value)) value.forEach((item, i) => checkUnknown(item, `${path}[${i}]`, notes));
  else if (isFields(value)) for (const name of Object.keys(value)) checkUnknown(value[name], below(path, name), notes);
}

function fault(value: unknown, shape: Shape, path: string, notes: Notes): void {
  say(notes, path, found(value), expected(shape, value));
}
