// The definition of an instrument file as a JSON Schema, draft 2020-12. What it cannot say (an id used once, a reference
// that leads somewhere) is said by the reader alone.
import { GEARING, PRACTICE } from "../../geometry/index.ts";
import { FORMAT, INSTRUMENT } from "./definition.ts";
import { MEANINGS } from "./meanings.ts";
import { ID_PATTERN, TAKEN } from "./shape.ts";
import type { FieldsShape, NumberShape, Shape } from "./shape.ts";

export type Schema = Readonly<Record<string, unknown>>;

export const instrumentSchema = (): Schema => ({
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "instrument.schema.json",
  title: `Endshake instrument file, format ${FORMAT}`,
  description: MEANINGS[""],
  ...schemaOf(INSTRUMENT, []),
});

function schemaOf(shape: Shape, path: readonly string[]): Schema {
  switch (shape.is) {
    case "text": return { type: "string" };
    case "flag": return { type: "boolean" };
    case "word": return { enum: shape.words };
    case "format": return { const: shape.number };
    case "number": return numberSchema(shape);
    case "id": return { type: "string", pattern: ID_PATTERN, not: { enum: TAKEN } };
    case "reference": return { type: "string" };
    case "list": return {
      type: "array", ...(shape.least > 0 ? { minItems: shape.least } : {}), maxItems: shape.most, items: schemaOf(shape.of, path),
    };
    case "pair": return { type: "array", minItems: 2, maxItems: 2, items: schemaOf(shape.of, path) };
    case "lists": {
      const flat = { type: "array", maxItems: shape.most, items: numberSchema(shape.of) };
      return { anyOf: [flat, { type: "array", maxItems: shape.most, items: flat }] };
    }
    case "fields": return fieldsSchema(shape, path);
    case "kinds": return { oneOf: Object.entries(shape.kinds).map(([kind, fields]) => fieldsSchema(fields, path, kind)) };
  }
}

const numberSchema = ({ least, most, above, whole }: NumberShape): Schema => ({
  type: whole ? "integer" : "number", [above ? "exclusiveMinimum" : "minimum"]: least, maximum: most,
});

function fieldsSchema(shape: FieldsShape, path: readonly string[], kind?: string): Schema {
  const properties = Object.entries(shape.fields).map(([name, field]): [string, Schema] => {
    const at = [...path, name];
    const inside = name === "kind" && kind !== undefined ? { const: kind } : schemaOf(field.shape, at);
    const means = meaning(at, kind);
    return [name, { ...(means === undefined ? {} : { description: means }), ...inside, ...defaultOf(at) }];
  });
  const required = Object.entries(shape.fields).filter(([, field]) => field.when === "always").map(([name]) => name);
  return {
    type: "object",
    ...(required.length > 0 ? { required } : {}),
    ...rulesOf(shape),
    properties: Object.fromEntries(properties),
  };
}

function rulesOf({ together, needs, oneOf }: FieldsShape): Schema {
  return {
    ...(together ? { dependentRequired: { [together[0]]: [together[1]], [together[1]]: [together[0]] } } : {}),
    ...(needs ? { if: { properties: { [needs[0]]: { const: true } }, required: [needs[0]] }, then: { required: [needs[1]] } } : {}),
    ...(oneOf ? { oneOf: oneOf.map((name) => ({ required: [name] })) } : {}),
  };
}

/** The words for a field; what stands under a kind comes before what every kind shares. */
export const meaning = (path: readonly string[], kind?: string): string | undefined =>
  (kind === undefined ? undefined : MEANINGS[[...path.slice(0, -1), kind, ...path.slice(-1)].join(".")]) ?? MEANINGS[path.join(".")];

function defaultOf(path: readonly string[]): Schema {
  const [group, name] = path;
  if (path.length !== 2 || name === undefined) return {};
  const defaults: Readonly<Record<string, unknown>> = group === "practice" ? { ...PRACTICE } : group === "gearing" ? { ...GEARING } : {};
  return name in defaults ? { default: defaults[name] } : {};
}
