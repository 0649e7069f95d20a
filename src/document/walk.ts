// Going through an instrument by its definition: the shape of what stands at a path, every id and reference put through
// a change of names, and what is left when things that others refer to are gone.
import { isFields, own } from "./check.ts";
import { INSTRUMENT } from "./definition.ts";
import type { FieldsShape, Shape } from "./shape.ts";

export type Path = readonly (string | number)[];

/** The fields of an object by its shape, the kind that stands in it allowed for. */
export function fieldsOf(value: unknown, shape: Shape | undefined): FieldsShape | undefined {
  if (shape?.is === "fields") return shape;
  const kind = own(value, "kind");
  return shape?.is === "kinds" && typeof kind === "string" && Object.hasOwn(shape.kinds, kind) ? shape.kinds[kind] : undefined;
}

/** The shape of what stands in a list. */
export function itemShape(value: readonly unknown[], shape: Shape | undefined): Shape | undefined {
  if (shape?.is === "list" || shape?.is === "pair") return shape.of;
  return shape?.is === "lists" && !Array.isArray(value[0]) ? shape.of : undefined;
}

/** What stands at a path; undefined where nothing does. */
export const valueAt = (root: unknown, path: Path): unknown => path.reduce<unknown>(
  (value, key) => (typeof key === "number" ? (Array.isArray(value) ? value[key] : undefined) : own(value, key)), root);

/** What may stand at a path of an instrument; undefined where the definition knows nothing of it. */
export function shapeAt(root: unknown, path: Path): Shape | undefined {
  let shape: Shape | undefined = INSTRUMENT, value: unknown = root;
  for (const key of path) {
    shape = typeof key === "number" ? itemShape(Array.isArray(value) ? value : [], shape) : fieldsOf(value, shape)?.fields[key]?.shape;
    value = valueAt(value, [key]);
  }
  return shape;
}

/** The value with every id and every reference in it renamed. */
export function withIds<T>(value: T, renamed: (id: string) => string, shape: Shape | undefined = INSTRUMENT): T {
  const walk = (v: unknown, s: Shape | undefined): unknown => {
    if (s?.is === "id" || s?.is === "reference") return typeof v === "string" ? renamed(v) : v;
    if (Array.isArray(v)) return v.map((item) => walk(item, itemShape(v, s)));
    const fields = fieldsOf(v, s)?.fields;
    if (!fields || !isFields(v)) return v;
    return Object.fromEntries(Object.entries(v).map(([name, inside]) => [name, walk(inside, fieldShape(fields, name))]));
  };
  return walk(value, shape) as T;
}

/** Every id that stands in the value. */
export function idsIn(value: unknown, shape: Shape | undefined = INSTRUMENT): string[] {
  if (shape?.is === "id") return typeof value === "string" ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((item) => idsIn(item, itemShape(value, shape)));
  const fields = fieldsOf(value, shape)?.fields;
  return fields && isFields(value) ? Object.entries(value).flatMap(([name, v]) => idsIn(v, fieldShape(fields, name))) : [];
}

/** The value without anything that refers to what is gone, or that cannot be without what so went; undefined: nothing is left of it. */
export function withoutThose(value: unknown, isGone: (id: string) => boolean, shape: Shape | undefined = INSTRUMENT): unknown {
  if (shape?.is === "reference") return typeof value === "string" && isGone(value) ? undefined : value;
  if (Array.isArray(value)) {
    const left = value.map((item) => withoutThose(item, isGone, itemShape(value, shape)));
    const some = left.filter((item) => item !== undefined);
    return shape?.is === "pair" && some.length < value.length ? undefined : some;
  }
  const fields = fieldsOf(value, shape)?.fields;
  if (!fields || !isFields(value)) return value;
  const left = Object.entries(value).map(([name, v]) => [name, withoutThose(v, isGone, fieldShape(fields, name))] as const);
  if (left.some(([name, v]) => v === undefined && value[name] !== undefined && Object.hasOwn(fields, name) && fields[name]?.when === "always")) return undefined;
  return Object.fromEntries(left.filter(([, v]) => v !== undefined));
}

const fieldShape = (fields: FieldsShape["fields"], name: string): Shape | undefined => (Object.hasOwn(fields, name) ? fields[name]?.shape : undefined);
