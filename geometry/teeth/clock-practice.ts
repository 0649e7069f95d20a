// The figures of clock practice that no standard text at hand settles, as parameters with their defaults. In modules.
// Sources: BS 978-2:1952 (from memory), and the chart of a cutter maker whose profiles are said to follow it.
import { PRACTICAL_SHARE } from "./addendum.ts";

export interface Top {
  readonly name: "round" | "medium ogive" | "full ogive";
  readonly addendum: number;
  /** Of the arc on either side. */
  readonly radius: number;
}

export interface ClockPractice {
  /** The share of a wheel's theoretical addendum f that is cut. */
  readonly practicalShare: number;
  /** Wheels' sides above the pitch circle: the true epicycloid, or one arc of radius `factor` × f, where `of` says which f. */
  readonly wheelTip:
    | { readonly curve: "epicycloid" }
    | { readonly curve: "arc"; readonly factor: number; readonly of: "theoretical" | "practical" };
  readonly wheelDedendum: number;
  /** What a pinion's space is deeper than its wheel's tooth is high. */
  readonly pinionClearance: number;
  /** A wheel's tooth for a lantern is so thick, or thinner where the trundle would have less than this freedom. */
  readonly lanternTooth: number;
  readonly lanternFreedom: number;
  /** By the number of leaves. */
  readonly pinionTop: (leaves: number) => Top;
}

/** Published tops, for leaves a third of the pitch thick (up to 9) and two fifths (from 10). */
export const TOPS = {
  few: [
    { name: "round", addendum: 0.525, radius: 0.525 },
    { name: "medium ogive", addendum: 0.67, radius: 0.7 },
    { name: "full ogive", addendum: 0.855, radius: 1.05 },
  ],
  many: [
    { name: "round", addendum: 0.625, radius: 0.625 },
    { name: "medium ogive", addendum: 0.805, radius: 0.83 },
  ],
} as const satisfies Record<string, readonly Top[]>;

/** The most leaves that are a third of the pitch thick. */
export const FEW_LEAVES = 9;

export const CLOCK_PRACTICE: ClockPractice = {
  practicalShare: PRACTICAL_SHARE,
  wheelTip: { curve: "epicycloid" },
  wheelDedendum: Math.PI / 2,
  pinionClearance: 0.4,
  lanternTooth: Math.PI / 2,
  lanternFreedom: 0.05,
  pinionTop: (leaves) => (leaves <= FEW_LEAVES ? TOPS.few[2] : TOPS.many[1]),
};

/** The addendum arc of the British practice, 1.40 f; of which f is not settled: here the practical one. */
export const BRITISH_ARC: ClockPractice["wheelTip"] = { curve: "arc", factor: 1.4, of: "practical" };

/** One plain sentence on how a wheel's sides are drawn, the factor and its f shown. */
export function wheelTipSays({ wheelTip, practicalShare }: ClockPractice): string {
  if (wheelTip.curve === "epicycloid")
    return "Wheels' teeth are the epicycloid of their own pinion's generating circle above the pitch circle.";
  const f = wheelTip.of === "theoretical" ? "the theoretical addendum factor" : `${practicalShare} of the theoretical addendum factor`;
  return `Wheels' teeth are one arc of ${wheelTip.factor} × f modules above the pitch circle, f being ${f}.`;
}
