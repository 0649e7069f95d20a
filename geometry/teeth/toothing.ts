// Every toothed part of an instrument with its defaults filled in, and what its mates make of it.
import {
  countOf, gearingOf, isToothed, type Gearing, type Instrument, type Lantern, type ToothedPart,
} from "../instrument.ts";
import { theoreticalAddendum } from "./addendum.ts";
import type { Teeth } from "./teeth.ts";

/** By part id. */
export function teethOf(instrument: Instrument): ReadonlyMap<string, Teeth> {
  const parts = new Map<string, ToothedPart>();
  for (const arbor of instrument.arbors) for (const part of arbor.parts) if (isToothed(part)) parts.set(part.id, part);
  const mates = matesOf(instrument, parts);
  const gearing = gearingOf(instrument);
  const factors = new Map<string, Factor>();
  for (const part of parts.values())
    if (part.kind === "wheel") factors.set(part.id, wheelFactor(part.teeth, mates.get(part.id) ?? []));
  const teeth = new Map<string, Teeth>();
  for (const part of parts.values()) {
    const own = mates.get(part.id) ?? [];
    const factor = part.kind === "pinion" ? pinionFactor(own, factors) : (factors.get(part.id) ?? NO_FACTOR);
    teeth.set(part.id, filledIn(part, gearing, factor, part.kind === "wheel" ? lanternOf(own) : null));
  }
  return teeth;
}

type Factor = Pick<Teeth, "addendumFactor" | "mateCount">;
const NO_FACTOR: Factor = { addendumFactor: null, mateCount: null };

function filledIn(part: ToothedPart, gearing: Gearing, factor: Factor, lanternMate: Teeth["lanternMate"]): Teeth {
  const module = part.module ?? gearing.module;
  const role = part.kind === "wheel" ? "wheel" : "pinion";
  if (part.kind === "lantern")
    return {
      form: "lantern", role, count: part.trundles, module, pressureAngleDeg: gearing.pressureAngle, shift: 0, thinning: 0,
      topping: 0, internal: false, trundleDiameter: part.trundleDiameter, addendumFactor: null, mateCount: null,
      lanternMate: null, measuredTipRadius: null,
    };
  const form = part.form ?? gearing.form;
  const clock = form === "cycloidal";
  return {
    form, role, count: countOf(part), module,
    pressureAngleDeg: part.pressureAngle ?? gearing.pressureAngle,
    shift: part.shift ?? 0,
    // Clock teeth have their own freedom: the default is not for them.
    thinning: part.thinning ?? (clock ? 0 : gearing.thinning),
    topping: part.topping ?? 0,
    ...(part.dedendum === undefined ? {} : { dedendum: part.dedendum }),
    internal: part.internal ?? false,
    trundleDiameter: 0,
    addendumFactor: clock ? factor.addendumFactor : null,
    mateCount: clock ? factor.mateCount : null,
    lanternMate: clock ? lanternMate : null,
    measuredTipRadius: part.measured?.tipDiameter === undefined ? null : part.measured.tipDiameter / 2,
  };
}

function matesOf(instrument: Instrument, parts: ReadonlyMap<string, ToothedPart>): Map<string, ToothedPart[]> {
  const mates = new Map<string, ToothedPart[]>();
  const add = (of: string, mate: ToothedPart | undefined) => {
    if (mate === undefined) return;
    const list = mates.get(of);
    if (list === undefined) mates.set(of, [mate]);
    else list.push(mate);
  };
  for (const { driver, driven } of instrument.engagements) {
    add(driver, parts.get(driven));
    add(driven, parts.get(driver));
  }
  return mates;
}

/** The factor grows with the leaves, so the greatest belongs to the pinion of most leaves. */
function wheelFactor(teeth: number, mates: readonly ToothedPart[]): Factor {
  const leaves = Math.max(0, ...mates.map((m) => (m.kind === "pinion" ? m.leaves : 0)));
  return leaves === 0 ? NO_FACTOR : { addendumFactor: theoreticalAddendum(teeth, leaves), mateCount: leaves };
}

function pinionFactor(mates: readonly ToothedPart[], factors: ReadonlyMap<string, Factor>): Factor {
  const wheels = mates.filter((m) => m.kind === "wheel");
  if (wheels.length === 0) return NO_FACTOR;
  return {
    addendumFactor: Math.max(...wheels.map((w) => factors.get(w.id)?.addendumFactor ?? 0)),
    mateCount: Math.min(...wheels.map((w) => w.teeth)),
  };
}

function lanternOf(mates: readonly ToothedPart[]): Teeth["lanternMate"] {
  if (mates.some((m) => m.kind === "pinion")) return null;
  const lanterns = mates.filter((m): m is Lantern => m.kind === "lantern");
  if (lanterns.length === 0) return null;
  const most = lanterns.reduce((a, b) => (b.trundles > a.trundles ? b : a));
  return { trundleDiameter: most.trundleDiameter, count: most.trundles };
}
