// The words of a refusal: what stands there, and what was expected. Plain enough to be read beside the file.
import type { NumberShape, Shape } from "./shape.ts";

const LONGEST = 60;

/** What stands in a file, as short as it can be said. */
export function found(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "number") return Number.isFinite(value) ? String(value) : "a number too great to hold";
  if (Array.isArray(value)) return value.length <= 4 && value.every((v) => typeof v === "number")
    ? `[${value.map(found).join(", ")}]` : `a list of ${figure(value.length)}`;
  if (typeof value === "object" && value !== null) return "an object";
  const text = JSON.stringify(value);
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}…"`;
}

/** What was expected of it; `value` lets the answer meet the slip. */
export function expected(shape: Shape, value: unknown): string {
  switch (shape.is) {
    case "number": return expectedNumber(shape, value);
    case "text": return "text";
    case "flag": return "true or false";
    case "word": return anyOf(shape.words);
    case "format": return typeof value === "number" && Number.isFinite(value) && value > shape.number
      ? `format ${shape.number}; format ${value} is newer than this program` : `${shape.number}, the number of the format`;
    case "id": return "an id: 1 to 32 letters, digits, - _ or ., the first a letter or a digit";
    case "reference": return `the id of ${withArticle(shape.to)}`;
    case "list": return Array.isArray(value) ? countOfItems(shape.least, shape.most, value.length) : "a list";
    case "pair": return "a list of two";
    case "lists": return Array.isArray(value) ? `at most ${figure(shape.most)}` : "a list, or a list of lists";
    case "fields":
    case "kinds": return "an object";
  }
}

function expectedNumber(shape: NumberShape, value: unknown): string {
  const unit = shape.unit === "" ? "" : ` ${shape.unit}`;
  if (shape.whole) return `a whole number from ${figure(shape.least)} to ${figure(shape.most)}`;
  if (typeof value === "number")
    return shape.above ? `more than ${figure(shape.least)}, at most ${figure(shape.most)}${unit}` : `from ${figure(shape.least)} to ${figure(shape.most)}${unit}`;
  const meant = typeof value === "string" ? value.trim().replace(",", ".") : "";
  const such = /^[+-]?\d+(\.\d+)?$/.test(meant) ? `, such as ${Number(meant)}` : "";
  return `a number${unit === "" ? "" : ` in${unit}`}${such}`;
}

export const withArticle = (noun: string): string => `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;

export const anyOf = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words[words.length - 1]}`;

const countOfItems = (least: number, most: number, n: number): string =>
  n > most ? `at most ${figure(most)}` : `at least ${figure(least)}`;

/** A number as it is written in words: thousands parted, a real minus sign. */
export function figure(n: number): string {
  const digits = String(Math.abs(n));
  return (n < 0 ? "−" : "") + (/^\d+$/.test(digits) ? digits.replace(/\B(?=(\d{3})+$)/g, ",") : digits);
}
