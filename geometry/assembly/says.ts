// The words of a step of putting together, as a maker would say them over the bench: short, in the order of the hands.
import { arborName, capital, partName } from "../bodies/words.ts";
import type { Thing } from "../bodies/thing.ts";
import type { Plate } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { SEATED_MM } from "../numeric/tolerance.ts";
import type { Before } from "./before.ts";
import type { Lean, Step } from "./step.ts";
import type { Unit } from "./units.ts";

export interface Context {
  readonly movement: Movement;
  readonly base: Thing | null;
  readonly members: readonly Unit[];
  /** What goes in before it, with the two things that say so. */
  readonly arrows: readonly Before[];
  readonly isIn: (id: string) => boolean;
  readonly lean: Lean | null;
}

/** What a pivot should permit with one plate off. Source: D. de Carle, from memory. */
const MOST_LEAN_DEG = 5;

/** Named at most: more would not be read. */
const NAMED = 2;

export function saysOf(context: Context): Pick<Step, "title" | "says"> {
  const { members, movement } = context, [first] = members;
  if (first.kind === "plate") return plateSays(context, plateOf(movement, first.id));
  if (first.kind === "part") return partSays(context, first);
  const names = members.map((u) => u.kind === "part" ? partName(partOf(movement, u.id))
    : u.kind === "plate" ? plateName(plateOf(movement, u.id)) : arborName(movement.arbors[u.arbor].arbor));
  const ways = members.flatMap((u) => u.kind === "arbor" ? [wayIn(context, u, members.length > 1)] : []);
  const together = members.length === 1 ? [] : [togetherSays(context)];
  return { title: capital(names.join(" with ")), says: [...together, ...ways].filter((w) => w !== "").join("; ") };
}

/** A run of pointers at the end is one step: they are set as well as put on. */
export function pointersTogether(movement: Movement, steps: readonly Step[]): Step[] {
  let from = steps.length;
  while (from > 0 && steps[from - 1].ids.every((id) => isPointer(movement, id))) from--;
  const run = steps.slice(from);
  if (run.length < 2) return [...steps];
  const shown = run.flatMap((s) => s.ids).map((id) => pointerName(movement, id));
  return [...steps.slice(0, from), {
    ...run[run.length - 1], kind: run.every((s) => s.kind === "parts") ? "parts" : "arbors", ids: run.flatMap((s) => s.ids), title: "Pointers",
    says: `${shown.join(", ")}; set as the table says`, lift: Math.max(...run.map((s) => s.lift)), lean: null,
  }];
}

/** Down over what it rides on, over what lies beneath, in gear with what is in, or only into its plate. */
function wayIn({ movement, base, arrows, isIn }: Context, unit: Unit, named: boolean): string {
  const { arbor } = movement.arbors[unit.arbor];
  const own = (b: Before) => unit.things.some((t) => t.id === b.over);
  const under = [...new Set(arrows.filter(own).map((b) => b.under))].filter((id) => movement.partIndex.has(id));
  const mates = matesIn(movement, unit, isIn);
  const gear = mates.length === 1 ? [`${mates[0].own} in gear with ${mates[0].mate}`] : mates.length > 1 ? [`into ${list(mates.map((m) => m.mate))} at once`] : [];
  const rides = arbor.rides && ridesSays(arbor.rides.on, arbor.rides.radius, isIn(arbor.rides.on) || named);
  const over = rides === undefined && under.length > 0 ? [`over ${list(under.slice(0, NAMED))}`] : [];
  const seat = rides !== undefined ? [rides] : over.length > 0 ? [] : [seatIn(movement, unit, base, mates.length > 0)];
  const locks = locked(movement, unit, isIn);
  const way = [...[...seat, ...over].filter((w) => w !== ""), ...gear, ...locks].join("; ");
  return named && way !== "" ? `${unit.id} ${way}` : way;
}

const ridesSays = (on: string, radius: number, isThere: boolean): string =>
  !isThere ? `laid in its place, so that ${on} can come down through it` : radius === 0 ? `down over ${on}` : `on to ${on}`;

/** "into the back plate, B1 down": so that it is not put in upside down. */
function seatIn(movement: Movement, unit: Unit, base: Thing | null, geared: boolean): string {
  const { arbor } = movement.arbors[unit.arbor];
  if (unit.behind) return "from behind";
  const plate = movement.instrument.frame.plates.find((p) => p.id === arbor.pivots?.foot?.plate);
  const lowest = arbor.parts.filter((p) => unit.things.some((t) => t.id === p.id) && (plate === undefined || p.z > plate.z)).sort((a, b) => a.z - b.z)[0];
  const into = plate ? `into ${plateName(plate)}` : arbor.fixed === true ? "fixed in its place" : base === null ? "" : "from the dial side";
  return lowest === undefined || geared || into === "" ? into : `${into}, ${lowest.id} down`;
}

function matesIn(movement: Movement, unit: Unit, isIn: (id: string) => boolean): { own: string; mate: string }[] {
  return movement.engagements.flatMap((e) => {
    const own = e.driverArbor === unit.arbor ? e.driver.id : e.drivenArbor === unit.arbor ? e.driven.id : null;
    const mate = own === e.driver.id ? e.driven.id : e.driver.id;
    return own !== null && isIn(mate) ? [{ own, mate }] : [];
  });
}

function togetherSays({ lean, members }: Context): string {
  const together = members.length === 2 ? "both brought down together" : "all brought down together";
  if (lean === null) return together;
  const far = `${lean.degrees.toFixed(lean.degrees < 10 ? 1 : 0)}°`;
  return lean.degrees > MOST_LEAN_DEG ? `${together}: ${far} of lean is more than ${lean.arbor} bears` : `${together}, or ${lean.arbor} last, leaned ${far}`;
}

function plateSays({ movement, members, isIn, arrows }: Context, plate: Plate): Pick<Step, "title" | "says"> {
  const { behind } = members[0];
  const caught = movement.arbors.filter((a) => isIn(a.id) && (behind ? a.arbor.pivots?.foot?.plate : a.arbor.pivots?.head?.plate) === plate.id);
  const pillars = movement.instrument.frame.pillars.filter((p) => Math.abs(behind ? p.from - plate.z - plate.thickness : p.to - plate.z) < SEATED_MM).length;
  const through = arrows.filter((b) => b.over === plate.id && reachesThrough(movement, b.under, plate)).map((b) => b.under);
  const most = caught.map((a) => ({ id: a.id, mm: headWanders(movement, a.id) })).sort((a, b) => b.mm - a.mm)[0];
  return {
    title: capital(plateName(plate).replace(/^the /, "")),
    says: [
      caught.length === 0 ? "" : caught.length === 1 ? `one pivot to catch, ${caught[0].id}` : `${count(caught.length)} pivots to catch at once`,
      through.length > 0 ? `down over ${list(through.slice(0, NAMED))}` : "",
      pillars > 0 ? `on ${count(pillars)} ${pillars === 1 ? "pillar" : "pillars"}` : "",
      most !== undefined && caught.length > 1 ? `${most.id} leans most, its head up to ${most.mm.toFixed(1)} mm out` : "",
    ].filter((w) => w !== "").join("; "),
  };
}

/** mm by which a head can stand out of place while only its foot is in a hole: c/t a unit of height. */
function headWanders(movement: Movement, id: string): number {
  const worked = movement.arbors[movement.arborIndex.get(id) ?? 0], { arbor } = worked, foot = arbor.pivots?.foot;
  const plate = movement.instrument.frame.plates.find((p) => p.id === foot?.plate);
  if (foot === undefined || plate === undefined) return 0;
  const depth = Math.min(foot.length, plate.thickness);
  return depth > 0 ? (worked.ownSideshake / depth) * (arbor.head - arbor.foot - depth) : 0;
}

function partSays({ movement, members, arrows }: Context, unit: Unit): Pick<Step, "title" | "says"> {
  const part = partOf(movement, unit.id), { id } = movement.arbors[unit.arbor];
  const by = part.join ? `, held by ${part.join.by === "square" ? "its square" : `a ${part.join.by}`}` : "";
  const held = arrows.filter((b) => movement.arborIndex.has(b.under) && b.under !== id && isPipe(movement, b.under)).map((b) => b.under);
  const locks = held.length > 0 ? `; holds ${list(held)} in` : "";
  const names = members.map((u) => partName(partOf(movement, u.id)));
  return { title: capital(names.join(" with ")), says: `on to ${id}${by}${locks}` };
}

/** What a part of it stands over on its own axis, so that it cannot come off first. */
function locked(movement: Movement, unit: Unit, isIn: (id: string) => boolean): string[] {
  const held = movement.arbors.filter((a) => a.arbor.rides?.on === unit.id && a.arbor.rides.radius === 0 && isIn(a.id)).map((a) => a.id);
  return held.length > 0 ? [`holds ${list(held)} in`] : [];
}

function isPointer(movement: Movement, id: string): boolean {
  const at = movement.partIndex.get(id), arbor = movement.arbors[movement.arborIndex.get(id) ?? -1]?.arbor;
  if (at) return movement.arbors[at.arbor].arbor.parts[at.part].kind === "pointer";
  return arbor !== undefined && arbor.parts.some((p) => p.kind === "pointer") && arbor.parts.every((p) => p.kind === "pointer" || p.kind === "collet");
}

function pointerName(movement: Movement, id: string): string {
  const arbor = movement.partIndex.get(id)?.arbor ?? movement.arborIndex.get(id);
  const display = movement.displays.find((d) => d.arbor === arbor);
  return display ? display.name.charAt(0).toLowerCase() + display.name.slice(1) : id;
}

function reachesThrough(movement: Movement, id: string, plate: Plate): boolean {
  const arbor = movement.arbors[movement.arborIndex.get(id) ?? -1]?.arbor;
  return arbor?.rides?.radius === 0 && arbor.foot < plate.z && arbor.head > plate.z + plate.thickness;
}

const isPipe = (movement: Movement, id: string): boolean => movement.arbors[movement.arborIndex.get(id) ?? -1]?.arbor.rides?.radius === 0;
const plateOf = (movement: Movement, id: string): Plate => {
  const plate = movement.instrument.frame.plates.find((p) => p.id === id);
  if (plate === undefined) throw new Error(`there is no plate ${id}`);
  return plate;
};
const partOf = (movement: Movement, id: string) => {
  const at = movement.partIndex.get(id);
  if (at === undefined) throw new Error(`there is no part ${id}`);
  return movement.arbors[at.arbor].arbor.parts[at.part];
};
/** "the back plate" */
const plateName = ({ id, name }: Plate): string => `the ${name ? name.charAt(0).toLowerCase() + name.slice(1) : `plate ${id}`}`;
const list = (ids: readonly string[]): string => (ids.length < 2 ? ids.join("") : `${ids.slice(0, -1).join(", ")} and ${ids[ids.length - 1]}`);
const WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
const count = (n: number): string => WORDS[n] ?? String(n);
