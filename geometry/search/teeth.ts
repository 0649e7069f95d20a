// Changes to uncut teeth that could be a way out: cut short or thinner, shifted so that a pair works at the distance that
// its holes have, alike to their mates, or of other counts. Lengths in mm.
import { mm } from "../examine/engaged.ts";
import { partName } from "../examine/words.ts";
import { countOf, isToothed, type Instrument, type Part, type ToothedPart } from "../instrument.ts";
import type { Movement, WorkedEngagement } from "../movement.ts";
import { risingRoot } from "../numeric/root.ts";
import { dragArbor } from "../planting/drag.ts";
import { withPlaces } from "../planting/places.ts";
import { workingDistance } from "../teeth/forms.ts";
import { workOut } from "../workout.ts";
import { isMade, withEngagement, withPart, type Change } from "./changes.ts";

/** Most that a tip is cut short, in modules: more leaves too little contact in any form. */
const MOST_TOPPING = 0.4;
/** Farthest that a profile is shifted, in modules, and how near the shift is brought to its distance. */
const MOST_SHIFT = 0.8, SHIFT_ENOUGH = 1e-6;
/** Modules by which teeth are thinned to give them play. */
const THINNINGS = [0.05, 0.1];

/** Tips cut short by so much. */
export function topped(movement: Movement, part: Part, byMm: number): Change[] {
  const teeth = movement.teeth.get(part.id);
  if (teeth === undefined || !isUncut(part) || part.kind === "lantern" || byMm <= 0) return [];
  const topping = Math.ceil(((part.topping ?? 0) + byMm / teeth.module) * 1000 - 1e-6) / 1000;
  if (topping > MOST_TOPPING) return [];
  return [cut(movement, part, `Cut the tips of ${partName(part)} ${mm(byMm)} short`, { topping })];
}

/** Ways for a pair whose depth is wrong where it stands. */
export function depthed(movement: Movement, e: WorkedEngagement): Change[] {
  return [...thinned(movement, e), ...shifted(movement, e), ...[e.driver, e.driven].flatMap((p) => topped(movement, p, 0.1 * (movement.teeth.get(p.id)?.module ?? 1)))];
}

function thinned(movement: Movement, e: WorkedEngagement): Change[] {
  return [e.driver, e.driven].flatMap((part) => {
    const teeth = movement.teeth.get(part.id);
    if (teeth === undefined || !isUncut(part) || part.kind === "lantern") return [];
    return THINNINGS.map((by) => cut(movement, part, `Cut the teeth of ${partName(part)} ${mm(by * teeth.module)} thinner`, { thinning: teeth.thinning + by }));
  });
}

/** The shift of one of the two with which they work at the distance as it stands. */
function shifted(movement: Movement, e: WorkedEngagement): Change[] {
  const driver = movement.teeth.get(e.driver.id), driven = movement.teeth.get(e.driven.id);
  if (driver === undefined || driven === undefined) return [];
  return [{ part: e.driver, own: driver, mate: driven }, { part: e.driven, own: driven, mate: driver }].flatMap(({ part, own, mate }) => {
    if (!isUncut(part) || part.kind === "lantern" || own.form !== "involute" || own.internal || mate.internal) return [];
    const off = (shift: number) => (workingDistance({ ...own, shift }, mate) ?? -Infinity) + (e.engagement.ease ?? 0) - e.distance;
    const shift = Math.round(risingRoot(off, -MOST_SHIFT, MOST_SHIFT, SHIFT_ENOUGH) * 1e4) / 1e4;
    if (Math.abs(off(shift)) > own.module / 1000 || shift === own.shift) return [];
    return [cut(movement, part, `Cut ${partName(part)} with a shift of ${shift} modules`, { shift })];
  });
}

/** The ease with which a pair's computed distance is the one given. */
export function eased({ instrument }: Movement, e: WorkedEngagement, distance: number): Change[] {
  if (e.computed === null) return [];
  const ease = Math.round(((e.engagement.ease ?? 0) + distance - e.computed) * 1e6) / 1e6;
  return [{ says: `Ease ${e.id} by ${mm(ease)}`, instrument: withEngagement(instrument, e.engagement, { ease }), remade: [{ id: e.id, work: "drawing" }] }];
}

/** The one made alike to the other in module, form and pressure angle. */
export function alike(movement: Movement, e: WorkedEngagement): Change[] {
  return [[e.driver, e.driven], [e.driven, e.driver]].flatMap(([part, mate]) => {
    const teeth = movement.teeth.get(mate.id);
    if (teeth === undefined || !isUncut(part) || part.kind === "lantern") return [];
    const { module, form, pressureAngleDeg } = teeth;
    return [inPlace(e, cut(movement, part, `Cut ${partName(part)} like ${partName(mate)}`, { module, form, pressureAngle: pressureAngleDeg }))];
  });
}

/** Other counts on both of a pair: one tooth more or fewer, or more or fewer in proportion; holes not yet made follow into gear. */
export function recounted(movement: Movement, e: WorkedEngagement): Change[] {
  if (!isUncut(e.driver) || !isUncut(e.driven)) return [];
  const a = countOf(e.driver), b = countOf(e.driven), common = gcd(a, b);
  const steps: [number, number][] = [[1, 1], [-1, -1], [1, -1], [-1, 1], [a / common, b / common], [-a / common, -b / common]];
  return steps.filter(([x, y], i) => steps.findIndex((s) => s[0] === x && s[1] === y) === i && a + x >= LEAST_COUNT && b + y >= LEAST_COUNT).map(([x, y]) => {
    const instrument = withCount(withCount(movement.instrument, e.driver, a + x), e.driven, b + y);
    const says = `Give ${partName(e.driver)} ${a + x} and ${partName(e.driven)} ${b + y} teeth`;
    return inPlace(e, { says, instrument, remade: [{ id: e.driver.id, work: "count" }, { id: e.driven.id, work: "count" }] });
  });
}

/** Fewer are no wheel. */
const LEAST_COUNT = 6;

const isUncut = (part: Part): part is ToothedPart => isToothed(part) && !isMade(part);

const cut = ({ instrument }: Movement, part: ToothedPart, says: string, change: object): Change =>
  ({ says, instrument: withPart(instrument, part.id, change), remade: [{ id: part.id, work: "cutting" }] });

function withCount(instrument: Instrument, part: ToothedPart, count: number): Instrument {
  return withPart(instrument, part.id, part.kind === "wheel" ? { teeth: count } : part.kind === "pinion" ? { leaves: count } : { trundles: count });
}

/** The changed pair brought into gear again, if one of its arbors may be moved; the hole is then drilled elsewhere. */
function inPlace(e: WorkedEngagement, change: Change): Change {
  const changed = workOut(change.instrument);
  for (const index of [e.drivenArbor, e.driverArbor]) {
    const { id, x, y } = changed.arbors[index];
    const { places } = dragArbor(changed, id, { x, y }, "in gear");
    if (places.size === 0) continue;
    const moved = [...places.keys()];
    return {
      says: `${change.says}, ${moved.join(", ")} following into gear`, instrument: withPlaces(change.instrument, places),
      remade: [...change.remade, ...moved.map((m) => ({ id: m, work: "hole" as const }))],
    };
  }
  return change;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
