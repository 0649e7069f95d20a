// Writes an instrument file: fields in the order of the definition, then those that were not understood, as they came.
// Two spaces a level; whatever fits on one line and holds no list of several objects stands on one.
import type { Instrument } from "../../geometry/index.ts";
import { isFields } from "./check.ts";
import { INSTRUMENT } from "./definition.ts";
import type { Shape } from "./shape.ts";
import { fieldsOf, itemShape } from "./walk.ts";

const WIDTH = 120;

export const writeInstrument = (instrument: Instrument): string => `${write(instrument, INSTRUMENT, "")}\n`;

/** Any JSON in the same layout, its fields in their own order. */
export const layOut = (value: unknown): string => `${write(value, undefined, "")}\n`;

function write(value: unknown, shape: Shape | undefined, indent: string): string {
  const flat = onOneLine(value, shape);
  if (flat !== null && indent.length + flat.length <= WIDTH) return flat;
  const deeper = `${indent}  `;
  if (Array.isArray(value))
    return `[\n${value.map((item) => deeper + write(item, itemShape(value, shape), deeper)).join(",\n")}\n${indent}]`;
  if (!isFields(value)) return JSON.stringify(value);
  const lines = inOrder(value, shape).map(([name, v, s]) => `${deeper}${JSON.stringify(name)}: ${write(v, s, deeper)}`);
  return `{\n${lines.join(",\n")}\n${indent}}`;
}

/** The value on one line; null where it holds a list of several objects, which read better one below the other. */
function onOneLine(value: unknown, shape: Shape | undefined): string | null {
  if (Array.isArray(value)) {
    if (value.length > 1 && value.some((item) => isFields(item))) return null;
    const items = value.map((item) => onOneLine(item, itemShape(value, shape)));
    return items.includes(null) ? null : `[${items.join(", ")}]`;
  }
  if (!isFields(value)) return JSON.stringify(value);
  const items: string[] = [];
  for (const [name, v, s] of inOrder(value, shape)) {
    const item = onOneLine(v, s);
    if (item === null) return null;
    items.push(`${JSON.stringify(name)}: ${item}`);
  }
  return items.length === 0 ? "{}" : `{ ${items.join(", ")} }`;
}

function inOrder(value: Readonly<Record<string, unknown>>, shape: Shape | undefined): [string, unknown, Shape | undefined][] {
  const fields = fieldsOf(value, shape)?.fields ?? {};
  const known = Object.keys(fields).filter((name) => Object.hasOwn(value, name));
  const unknown = Object.keys(value).filter((name) => !Object.hasOwn(fields, name));
  return [...known, ...unknown]
    .filter((name) => value[name] !== undefined)
    .map((name) => [name, value[name], Object.hasOwn(fields, name) ? fields[name]?.shape : undefined]);
}
