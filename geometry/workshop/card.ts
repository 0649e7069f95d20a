// The dividing card that lies beside the head: one setting for a count, where the crank stands at every tenth tooth, and
// the check on the tooth opposite.
import type { Division } from "../instrument.ts";
import { type CompoundSetting, type DifferentialSetting, divide, type Head, ORDINARY_HEAD, type PlainSetting } from "../numbers/dividing.ts";

export interface Card {
  readonly count: number;
  readonly ratio: number;
  /** The maker's own head, or the ordinary one where none is named. */
  readonly own: boolean;
  readonly way: "plain" | "compound" | "differential" | "none";
  readonly setting: PlainSetting | CompoundSetting | DifferentialSetting | null;
  /** Another plain circle that gives it. */
  readonly or: PlainSetting | null;
  readonly checks: readonly Check[];
  /** Tooth opposite the last; half a tooth between two where the count is odd. */
  readonly opposite: number;
}

/** Where the crank stands after a tooth. Of compound settings, the holes on both circles, all that were counted. */
export interface Check { readonly tooth: number; readonly turns: number; readonly holes: readonly number[] }

export function headOf(division: Division | undefined): Head {
  if (division === undefined) return ORDINARY_HEAD;
  const { ratio, circles, gears = [] } = division;
  const plates = circles.every((c) => typeof c === "number") ? [circles as readonly number[]] : (circles as readonly (readonly number[])[]);
  return { ratio, plates, gears };
}

export function cardOf(count: number, division: Division | undefined): Card {
  const head = headOf(division), { plain, compound, differential } = divide(count, head);
  const setting = plain[0] ?? compound[0] ?? differential[0] ?? null;
  const way = plain.length > 0 ? "plain" : compound.length > 0 ? "compound" : differential.length > 0 ? "differential" : "none";
  return {
    count, ratio: head.ratio, own: division !== undefined, way, setting, or: plain[1] ?? null,
    checks: setting === null ? [] : checkTeeth(count).map((tooth) => checkOf(tooth, setting)), opposite: count / 2,
  };
}

/** Every tenth tooth, the one opposite the last, and the last. */
function checkTeeth(count: number): number[] {
  const teeth = new Set([count]);
  for (let tooth = 10; tooth < count; tooth += 10) teeth.add(tooth);
  if (count % 2 === 0) teeth.add(count / 2);
  return [...teeth].sort((a, b) => a - b);
}

function checkOf(tooth: number, setting: PlainSetting | CompoundSetting): Check {
  if ("a" in setting) return { tooth, turns: tooth * setting.turns, holes: [tooth * setting.a.holes, tooth * setting.b.holes] };
  const holes = tooth * (setting.turns * setting.circle + setting.holes);
  return { tooth, turns: Math.floor(holes / setting.circle), holes: [holes % setting.circle] };
}
