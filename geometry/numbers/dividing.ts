// Dividing: how a count is had from a head of a given ratio, its hole circles and its change gears. Exact arithmetic.
// Source: plain, compound and differential indexing as in Machinery's Handbook (from memory); the identities are proved in tests.
import { ratio, type Ratio } from "../numeric/ratio.ts";

export interface Head {
  /** Turns of the crank for one turn of the work, a whole number. */
  readonly ratio: number;
  /** Hole circles, one list a plate. Compound indexing needs two circles of one plate. */
  readonly plates: readonly (readonly number[])[];
  /** Change gears owned; a gear owned twice stands twice. */
  readonly gears: readonly number[];
}

/** The ordinary head: 40 to 1, the three common plates and the common change gears (common practice). */
export const ORDINARY_HEAD: Head = {
  ratio: 40,
  plates: [[15, 16, 17, 18, 19, 20], [21, 23, 27, 29, 31, 33], [37, 39, 41, 43, 47, 49]],
  gears: [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100],
};

export interface PlainSetting { readonly circle: number; readonly turns: number; readonly holes: number }
export interface CompoundSetting {
  readonly turns: number;
  readonly a: { readonly circle: number; readonly holes: number };
  readonly b: { readonly circle: number; readonly holes: number };
}
export interface DifferentialSetting extends PlainSetting {
  /** The count that the crank is set for. */
  readonly settingFor: number;
  /** Turns of the plate for one turn of the work; + when the plate moves with the crank. */
  readonly ratio: Ratio;
  /** Two gears a, b with a/b = |ratio|, or four with (a/b)(c/d) = |ratio|. */
  readonly gears: readonly number[];
}
export interface Dividing {
  readonly plain: readonly PlainSetting[];
  readonly compound: readonly CompoundSetting[];
  readonly differential: readonly DifferentialSetting[];
}

/** Every way the head gives `count`; empty lists where there is none. Compound is asked only where plain has none. */
export function divide(count: number, head: Head): Dividing {
  const plain = plainSettings(count, head);
  return {
    plain,
    compound: plain.length ? [] : compoundSettings(count, head),
    differential: differentialSettings(count, head),
  };
}

/** Whether the head gives `count` in any of the three ways. */
export const canDivide = (count: number, head: Head): boolean =>
  plainSettings(count, head).length > 0 || compoundSettings(count, head).length > 0 || differentialSettings(count, head).length > 0;

/** On which circles a division of ratio/count turns falls on a hole. Whole turns: every circle, 0 holes. */
export function plainSettings(count: number, head: Head): PlainSetting[] {
  return circlesOf(head).flatMap((circle) => {
    const holes = head.ratio * circle;
    if (holes % count !== 0) return [];
    const all = holes / count;
    return [{ circle, turns: Math.floor(all / circle), holes: all % circle }];
  });
}

/** Every turns + a/A + b/B that is exactly ratio/count, on two circles of one plate; holes signed, turns never negative. */
export function compoundSettings(count: number, head: Head): CompoundSetting[] {
  const found: CompoundSetting[] = [];
  const seen = new Set<string>();
  for (const plate of head.plates) {
    const circles = distinct(plate);
    for (let i = 0; i < circles.length; i++) for (let j = i + 1; j < circles.length; j++) {
      const key = `${circles[i]} ${circles[j]}`;
      if (seen.has(key)) continue;
      seen.add(key);
      found.push(...onTwoCircles(count, head.ratio, circles[i], circles[j]));
    }
  }
  return found.sort((p, q) => effort(p) - effort(q) || p.a.circle - q.a.circle || p.b.circle - q.b.circle || q.a.holes - p.a.holes);
}

/** Settings for counts within a tenth (10 at least) whose difference two or four change gears make good. */
export function differentialSettings(count: number, head: Head): DifferentialSetting[] {
  if (head.gears.length < 2) return [];
  const span = Math.max(10, Math.floor(count / 10));
  const found: DifferentialSetting[] = [];
  for (let settingFor = Math.max(1, count - span); settingFor <= count + span; settingFor++) {
    if (settingFor === count) continue;
    const plain = plainSettings(settingFor, head);
    if (plain.length === 0) continue;
    const plateTurns = ratio(BigInt(head.ratio) * BigInt(settingFor - count), BigInt(settingFor));
    const gears = gearsFor(plateTurns, head.gears);
    if (gears) for (const setting of plain) found.push({ settingFor, ...setting, ratio: plateTurns, gears });
  }
  return found.sort((p, q) => p.gears.length - q.gears.length || Math.abs(p.settingFor - count) - Math.abs(q.settingFor - count)
    || p.settingFor - q.settingFor || p.circle - q.circle);
}

/** Two gears, or else four, for |r|; smallest first; null where the owned gears give none. */
export function gearsFor(r: Ratio, owned: readonly number[]): number[] | null {
  const sizes = distinct(owned);
  const n = Number(r.n), d = Number(r.d);
  if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d)) return null;
  const has = (...gears: number[]): boolean => gears.every((g) => count(gears, g) <= count(owned, g));
  for (const a of sizes) for (const b of sizes) if (a * d === b * n && has(a, b)) return [a, b];
  for (const a of sizes) for (const c of sizes) {
    if (c < a) continue;
    for (const b of sizes) {
      const rest = a * c * d, need = b * n;
      if (rest % need !== 0) continue;
      const e = rest / need;
      if (sizes.includes(e) && has(a, b, c, e)) return [a, b, c, e];
    }
  }
  return null;
}

function onTwoCircles(count: number, headRatio: number, A: number, B: number): CompoundSetting[] {
  const found: CompoundSetting[] = [];
  const scale = headRatio * A * B;
  if (scale % count !== 0) return found; // A·B must make the division a whole number of their common parts
  const parts = scale / count;
  for (let h = 1; h < A; h++) {
    const rest = parts - h * B;
    if (((rest % A) + A) % A !== 0) continue;
    const k = (((rest / A) % B) + B) % B;
    if (k === 0) continue;
    for (const holesA of [h, h - A]) for (const holesB of [k, k - B]) {
      const turns = (parts - holesA * B - holesB * A) / (A * B);
      if (turns >= 0) found.push({ turns, a: { circle: A, holes: holesA }, b: { circle: B, holes: holesB } });
    }
  }
  return found;
}

const effort = (s: CompoundSetting): number => s.turns + Math.abs(s.a.holes) / s.a.circle + Math.abs(s.b.holes) / s.b.circle;
const circlesOf = (head: Head): number[] => distinct(head.plates.flat());
const distinct = (values: readonly number[]): number[] => [...new Set(values)].sort((a, b) => a - b);
const count = (values: readonly number[], v: number): number => values.reduce((n, x) => n + (x === v ? 1 : 0), 0);
