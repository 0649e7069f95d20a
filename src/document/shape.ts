// A small language for saying what a file may hold. One definition written in it is read in three ways: to check a
// file, to write one in a steady order, and to publish a JSON Schema. A schema library was measured first: its smallest
// form alone takes 8 kB (gzip) of what the first picture may weigh, and compiles functions as it runs, which the page's
// content-security policy forbids.

/** What an id can stand for. */
export type Sort = "arbor" | "part" | "plate" | "pillar" | "engagement" | "display" | "dial";

export interface NumberShape {
  readonly is: "number";
  readonly least: number;
  readonly most: number;
  /** `least` itself is not allowed. */
  readonly above: boolean;
  readonly whole: boolean;
  /** As said to a maker: "mm", "degrees", "" for a bare number. */
  readonly unit: string;
}
export interface FieldsShape {
  readonly is: "fields";
  readonly fields: Readonly<Record<string, Field>>;
  /** Two fields that stand together or not at all. */
  readonly together?: readonly [string, string];
  /** The first of two numbers is greater than the second. */
  readonly above?: readonly [string, string];
  /** Where the first field is true, the second must stand. */
  readonly needs?: readonly [string, string];
  /** Exactly one of these fields stands. */
  readonly oneOf?: readonly string[];
}
export interface KindsShape {
  readonly is: "kinds";
  /** By the word that stands in the field `kind`. */
  readonly kinds: Readonly<Record<string, FieldsShape>>;
}
export type Shape =
  | NumberShape
  | FieldsShape
  | KindsShape
  | { readonly is: "text" }
  | { readonly is: "flag" }
  | { readonly is: "word"; readonly words: readonly string[] }
  | { readonly is: "format"; readonly number: number }
  | { readonly is: "id"; readonly of: Sort }
  | { readonly is: "reference"; readonly to: Sort }
  | { readonly is: "list"; readonly of: Shape; readonly least: number; readonly most: number }
  | { readonly is: "pair"; readonly of: Shape; readonly ascending: boolean }
  /** A list, or a list of lists. */
  | { readonly is: "lists"; readonly of: NumberShape; readonly most: number };

export interface Needed { readonly shape: Shape; readonly when: "always" }
export interface Optional { readonly shape: Shape; readonly when: "may be absent" }
/** A list that may be left out where it would be empty; reading puts the empty list in. */
export interface OrEmpty { readonly shape: Shape; readonly when: "empty if absent" }
export type Field = Needed | Optional | OrEmpty;

/** The fields of a type: every one of them, each optional where the type says so. */
export type FieldsOf<T> = {
  readonly [K in keyof T]-?: Record<never, never> extends Pick<T, K> ? Optional : Needed | OrEmpty;
};

export const needed = (shape: Shape): Needed => ({ shape, when: "always" });
export const optional = (shape: Shape): Optional => ({ shape, when: "may be absent" });
export const orEmpty = (shape: Shape): OrEmpty => ({ shape, when: "empty if absent" });

export const number = (least: number, most: number, unit = ""): NumberShape =>
  ({ is: "number", least, most, above: false, whole: false, unit });
export const above = (least: number, most: number, unit = ""): NumberShape =>
  ({ is: "number", least, most, above: true, whole: false, unit });
export const whole = (least: number, most: number): NumberShape =>
  ({ is: "number", least, most, above: false, whole: true, unit: "" });
export const word = (...words: string[]): Shape => ({ is: "word", words });
export const list = (of: Shape, most: number, least = 0): Shape => ({ is: "list", of, least, most });
export const pair = (of: Shape, ascending = false): Shape => ({ is: "pair", of, ascending });
export const idOf = (of: Sort): Shape => ({ is: "id", of });
export const reference = (to: Sort): Shape => ({ is: "reference", to });
export const fields = <T>(each: FieldsOf<T>, rules: Omit<FieldsShape, "is" | "fields"> = {}): FieldsShape =>
  ({ is: "fields", fields: each, ...rules });

export const TEXT: Shape = { is: "text" };
export const FLAG: Shape = { is: "flag" };

/** 1 to 32 ASCII letters, digits, `-`, `_` or `.`, the first a letter or a digit. */
export const ID_PATTERN = "^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$";
/** Ids that stand for something in every instrument. */
export const TAKEN: readonly string[] = ["case", "input"];
