// What holds between the parts of a file: ids used once, references that lead somewhere, engagements of teeth on two
// arbors, nothing riding in a circle. Works on whatever could be understood, so that these faults are listed with the rest.
import { MOST_PARTS, PART_KINDS } from "./definition.ts";
import { TAKEN } from "./shape.ts";
import type { Sort } from "./shape.ts";
import { own, say } from "./check.ts";
import type { Notes } from "./check.ts";
import { anyOf, figure, found, withArticle } from "./words.ts";

/** Where a part is; no kind where the file gives none that exists. */
interface Where { readonly kind: string | undefined; readonly arbor: number; readonly arborId: unknown }

const TOOTHED: readonly string[] = ["wheel", "pinion", "lantern"];

export function checkWhole(file: unknown, notes: Notes): void {
  const parts = partsOf(file);
  const count = listOf(file, "arbors").reduce<number>((n, arbor) => n + listOf(arbor, "parts").length, 0);
  if (count > MOST_PARTS) say(notes, "arbors", `${figure(count)} parts`, `at most ${figure(MOST_PARTS)} parts`);
  checkIds(file, notes);
  checkReferences(notes);
  checkEngagements(file, parts, notes);
  checkCouplings(file, parts, notes);
  checkRides(file, notes);
}

function checkIds(file: unknown, notes: Notes): void {
  const first = new Map<string, string>();
  const take = (id: string, path: string) => {
    const taken = TAKEN.includes(id) ? `${id} is taken` : first.has(id) ? `${id} is already ${first.get(id)}` : "";
    if (taken !== "") say(notes, path, found(id), `an id of its own; ${taken}`);
    else first.set(id, path.replace(/\.id$/, ""));
  };
  for (const { id, path } of notes.ids) take(id, path);
  listOf(file, "engagements").forEach((engagement, i) => {
    const [driver, driven] = [own(engagement, "driver"), own(engagement, "driven")];
    if (own(engagement, "id") === undefined && typeof driver === "string" && typeof driven === "string")
      take(`${driver}-${driven}`, `engagements[${i}]`);
  });
}

function checkReferences(notes: Notes): void {
  const sorts = new Map<string, Sort[]>();
  for (const { id, sort } of notes.ids) sorts.set(id, [...(sorts.get(id) ?? []), sort]);
  for (const { id, to, path } of notes.references) {
    const there = sorts.get(id) ?? [];
    if (there.includes(to)) continue;
    const called = found(id).slice(1, -1);
    const instead = there[0] === undefined ? `nothing is called ${called}` : `${called} is ${withArticle(there[0])}`;
    say(notes, path, found(id), `the id of ${withArticle(to)}; ${instead}`);
  }
}

function checkEngagements(file: unknown, parts: ReadonlyMap<unknown, Where>, notes: Notes): void {
  listOf(file, "engagements").forEach((engagement, i) => {
    for (const end of ["driver", "driven"]) {
      const id = own(engagement, end);
      const kind = parts.get(id)?.kind;
      if (kind !== undefined && !TOOTHED.includes(kind))
        say(notes, `engagements[${i}].${end}`, JSON.stringify(id), `a part with teeth; ${String(id)} is ${withArticle(kind)}`);
    }
    checkTwoArbors(engagement, `engagements[${i}]`, parts, notes);
  });
}

function checkTwoArbors(pair: unknown, path: string, parts: ReadonlyMap<unknown, Where>, notes: Notes): void {
  const ids = [own(pair, "driver"), own(pair, "driven")];
  const [one, other] = ids.map((id) => parts.get(id));
  if (one && other && one.arbor === other.arbor)
    say(notes, path, ids.map((id) => JSON.stringify(id)).join(" and "), `parts on two arbors; both are on ${String(one.arborId)}`);
}

function checkCouplings(file: unknown, parts: ReadonlyMap<unknown, Where>, notes: Notes): void {
  listOf(file, "couplings").forEach((coupling, i) => {
    const path = `couplings[${i}]`;
    const kindAt = (end: string) => parts.get(own(coupling, end))?.kind;
    const must = (end: string, kinds: readonly string[]) => {
      const kind = kindAt(end);
      if (kind !== undefined && !kinds.includes(kind))
        say(notes, `${path}.${end}`, JSON.stringify(own(coupling, end)), `the id of ${anyOf(kinds.map(withArticle))}; it is ${withArticle(kind)}`);
    };
    if (own(coupling, "kind") === "pin and slot") {
      must("driver", ["pin", "slot"]);
      must("driven", kindAt("driver") === "pin" ? ["slot"] : kindAt("driver") === "slot" ? ["pin"] : ["pin", "slot"]);
      checkTwoArbors(coupling, path, parts, notes);
    }
    if (own(coupling, "kind") === "click") {
      must("ratchet", ["ratchet"]);
      must("pawl", ["arm"]);
      const pawl = parts.get(own(coupling, "pawl"));
      if (pawl?.kind === "arm" && pawl.arborId !== own(coupling, "on"))
        say(notes, `${path}.pawl`, JSON.stringify(own(coupling, "pawl")), `an arm on ${String(own(coupling, "on"))}; it is on ${String(pawl.arborId)}`);
    }
    const between = listOf(coupling, "between");
    if (between.length === 2 && typeof between[0] === "string" && between[0] === between[1])
      say(notes, `${path}.between`, between.map((id) => JSON.stringify(id)).join(" and "), "two arbors");
  });
}

/** Follows what rides on what; each circle is told once, at the last of its arbors in the file. */
function checkRides(file: unknown, notes: Notes): void {
  const arbors = listOf(file, "arbors");
  const index = new Map<unknown, number>();
  arbors.forEach((arbor, i) => { if (!index.has(own(arbor, "id"))) index.set(own(arbor, "id"), i); });
  const next = arbors.map((arbor) => index.get(own(own(arbor, "rides"), "on")));
  const round = new Array<number>(arbors.length).fill(-1);
  for (let start = 0; start < arbors.length; start++) {
    let at: number | undefined = start;
    while (at !== undefined && round[at] === -1) {
      round[at] = start;
      at = next[at];
    }
    if (at === undefined || round[at] !== start) continue;
    const circle = [at];
    for (let i = next[at]; i !== undefined && i !== at; i = next[i]) circle.push(i);
    tellCircle(circle.map((i) => ({ i, id: String(own(arbors[i], "id")) })), notes);
  }
}

function tellCircle(circle: readonly { readonly i: number; readonly id: string }[], notes: Notes): void {
  const last = circle.reduce((a, b) => (b.i > a.i ? b : a));
  const from = [...circle.slice(circle.indexOf(last) + 1), ...circle.slice(0, circle.indexOf(last) + 1)];
  const steps = from.map(({ id }, k) => `${id}${k === 0 ? " rides" : ""} on ${from[(k + 1) % from.length]?.id}`);
  const shown = steps.length <= 6 ? steps : [...steps.slice(0, 5), "…", ...steps.slice(-1)];
  const says = shown.length === 1 ? "an arbor other than itself" : `no circle: ${shown.slice(0, -1).join(", ")}, and ${shown[shown.length - 1]}`;
  say(notes, `arbors[${last.i}].rides.on`, JSON.stringify(from[0]?.id), says);
}

function partsOf(file: unknown): ReadonlyMap<unknown, Where> {
  const parts = new Map<unknown, Where>();
  listOf(file, "arbors").forEach((arbor, i) => {
    for (const part of listOf(arbor, "parts")) {
      const id = own(part, "id");
      const kind = PART_KINDS.find((k) => k === own(part, "kind"));
      if (typeof id === "string" && !parts.has(id)) parts.set(id, { kind, arbor: i, arborId: own(arbor, "id") });
    }
  });
  return parts;
}

function listOf(value: unknown, name: string): readonly unknown[] {
  const list = own(value, name);
  return Array.isArray(list) ? list : [];
}
