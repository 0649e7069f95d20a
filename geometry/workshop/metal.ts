// What things are made of, and what they weigh. Densities in g/cm³. Source: brass CZ121 8.47 (its makers' public data),
// the others from memory of engineers' tables.
import type { Part, PartKind } from "../instrument.ts";

export const DENSITY_SOURCE = "brass CZ121: makers' data; others from memory";

const DENSITIES: readonly (readonly [RegExp, number])[] = [
  [/steel|iron/, 7.85], [/brass/, 8.47], [/bronze|gunmetal/, 8.8], [/copper/, 8.93], [/silver/, 10.4], [/alumini?um/, 2.7], [/nickel/, 8.5],
];

const USUAL: Readonly<Record<PartKind, string>> = {
  wheel: "brass", pinion: "steel", lantern: "brass", collet: "brass", pointer: "blued steel", disc: "brass", pin: "steel", slot: "brass", arm: "brass",
  ratchet: "steel", square: "steel",
};

/** The file's own word, else what such a part is usually made of (common practice). */
export const materialOf = (part: Part): string => part.material ?? USUAL[part.kind];

/** The metal that a material is made of, whatever is done to its surface: what stock is bought. */
export const stockOf = (material: string): string =>
  /steel/.test(material) ? "silver steel" : /brass/.test(material) ? "brass CZ120 or CZ121" : material;

/** g/cm³, or null for what is not in the table. */
export const densityOf = (material: string): number | null => DENSITIES.find(([name]) => name.test(material.toLowerCase()))?.[1] ?? null;

/** Grams of so many mm³; null where the density is not known. */
export function massG(volumeMmCu: number, material: string): number | null {
  const density = densityOf(material);
  return density === null ? null : (density * volumeMmCu) / 1000;
}
