// Everything in an instrument as a list to choose from: what each is called, where it stands in the file, and which id
// chooses it in every other view.
import { countOf, type Instrument, isToothed, type Part } from "../../../geometry/index.ts";
import type { Path } from "../../document/index.ts";

export interface Entry {
  readonly path: Path;
  /** Its id, set bold; empty where it has none. */
  readonly id: string;
  readonly says: string;
  /** How far it is set in: 1 where it stands on the one before. */
  readonly deep: 0 | 1;
}
export interface Section {
  readonly title: string;
  /** The list that is added to; null: nothing is. */
  readonly list: Path | null;
  readonly entries: readonly Entry[];
}

export function sectionsOf(instrument: Instrument): readonly Section[] {
  const { frame, arbors, engagements, couplings = [], displays = [], dials = [], cutters = [] } = instrument;
  const each = <T>(of: readonly T[], list: Path, id: (one: T) => string, says: (one: T) => string): Entry[] =>
    of.map((one, i) => ({ path: [...list, i], id: id(one), says: says(one), deep: 0 }));
  const alone = (field: string, says: string): Entry => ({ path: field === "" ? [] : [field], id: "", says, deep: 0 });
  return [
    {
      title: "Instrument", list: null,
      entries: [alone("", "Name and notes"), alone("input", "Input"), alone("practice", "Practice"), alone("gearing", "Gearing"), alone("division", "Division")],
    },
    { title: "Plates", list: ["frame", "plates"], entries: each(frame.plates, ["frame", "plates"], (p) => p.id, (p) => p.name ?? "") },
    { title: "Pillars", list: ["frame", "pillars"], entries: each(frame.pillars, ["frame", "pillars"], (p) => p.id, () => "") },
    { title: "Case", list: null, entries: [{ path: ["frame", "case"], id: "", says: frame.case ? "A bowl or drum" : "None", deep: 0 }] },
    {
      title: "Arbors", list: ["arbors"],
      entries: arbors.flatMap((a, i): Entry[] => [
        { path: ["arbors", i], id: a.id, says: a.name ?? (a.rides ? `rides on ${a.rides.on}` : a.fixed ? "a post" : ""), deep: 0 },
        ...a.parts.map((p, k): Entry => ({ path: ["arbors", i, "parts", k], id: p.id, says: partInWords(p), deep: 1 })),
      ]),
    },
    { title: "In gear", list: ["engagements"], entries: each(engagements, ["engagements"], (e) => `${e.driver}–${e.driven}`, () => "") },
    { title: "Couplings", list: ["couplings"], entries: each(couplings, ["couplings"], () => "", (c) => c.kind) },
    { title: "Displays", list: ["displays"], entries: each(displays, ["displays"], (d) => d.id, (d) => d.name) },
    { title: "Dials", list: ["dials"], entries: each(dials, ["dials"], (d) => d.id, (d) => d.name ?? "") },
    { title: "Cutters", list: ["cutters"], entries: each(cutters, ["cutters"], () => "", (c) => `${c.form}, module ${c.module}`) },
  ];
}

export const partInWords = (part: Part): string => `${part.kind}${isToothed(part) ? ` ${countOf(part)}` : ""}`;

/** The path of the thing that is chosen by this id; null where it has none. */
export function pathOf(instrument: Instrument, id: string): Path | null {
  if (id === "case") return ["frame", "case"];
  for (const { entries } of sectionsOf(instrument)) for (const entry of entries) if (entry.id === id && entry.path[0] !== "engagements") return entry.path;
  return null;
}

/** What the paths of things that other views know are called there; null for the rest. */
export const chosenBy = ({ path, id }: Entry): string | null => (path[0] === "arbors" || path[0] === "frame" ? id || "case" : null);

export const samePath = (a: Path, b: Path): boolean => a.length === b.length && a.every((key, i) => key === b[i]);
