// Dividing that comes near but not true, dividing by angles, and the checks a maker runs while cutting. Exact ratios for
// what the head does; degrees only where a reader is told how far out it comes.
import { ratio, toNumber, type Ratio } from "../numeric/ratio.ts";
import type { Head, PlainSetting } from "./dividing.ts";

export interface NearSetting extends PlainSetting {
  /** Turns of the work by which each division is too long (+) or too short. */
  readonly each: Ratio;
  /** Degrees by which the last space is too short (+ each division long) or too long. */
  readonly closesDeg: number;
  readonly says: string;
}

/** The nearest whole holes on every circle for a count, best first; those that are true have an error of 0. */
export function nearSettings(count: number, head: Head): NearSetting[] {
  const circles = [...new Set(head.plates.flat())].sort((a, b) => a - b);
  return circles.map((circle): NearSetting => {
    const all = Math.max(1, Math.round((head.ratio * circle) / count));
    const each = ratio(all, circle * head.ratio).sub(ratio(1, count));
    const closesDeg = 360 * toNumber(each.mul(ratio(count)));
    return { circle, turns: Math.floor(all / circle), holes: all % circle, each, closesDeg, says: nearSays(count, closesDeg) };
  }).sort((a, b) => Math.abs(a.closesDeg) - Math.abs(b.closesDeg) || a.circle - b.circle);
}

/** How far out it comes, as one would say it at the bench. */
function nearSays(count: number, closesDeg: number): string {
  if (closesDeg === 0) return "true";
  const spaces = Math.abs(closesDeg) / (360 / count);
  const last = closesDeg > 0 ? "short" : "long";
  const closes = count + (closesDeg > 0 ? -1 : 1) * Math.round(spaces);
  if (spaces >= 0.5) return `comes out as ${closes}, not ${count}`;
  return `each division ${figure(Math.abs(closesDeg) / count)}° too ${closesDeg > 0 ? "long" : "short"}; the last space ${figure(Math.abs(closesDeg))}° ${last}, ${figure(100 * spaces)} % of a space`;
}

export interface AngleSetting extends PlainSetting {
  /** Degrees given less degrees wanted. */
  readonly errorDeg: number;
}

/** Turns and holes for an angle (degrees, exact), every circle, true ones first and then the nearest. */
export function angleSettings(angleDeg: Ratio, head: Head): AngleSetting[] {
  const circles = [...new Set(head.plates.flat())].sort((a, b) => a - b);
  return circles.map((circle): AngleSetting => {
    const holes = angleDeg.mul(ratio(head.ratio * circle, 360));
    const all = Math.max(0, Number(roundedOf(holes)));
    return {
      circle, turns: Math.floor(all / circle), holes: all % circle,
      errorDeg: toNumber(ratio(all * 360, head.ratio * circle).sub(angleDeg)),
    };
  }).sort((a, b) => Math.abs(a.errorDeg) - Math.abs(b.errorDeg) || a.circle - b.circle);
}

export interface RunningCheck {
  readonly tooth: number;
  /** Whole turns of the crank since the first space was cut, and the hole of the circle, counted from the first. */
  readonly turns: number;
  readonly hole: number;
  /** Of the work from the first space, degrees; falls short of 360 at the count itself only if the setting is not true. */
  readonly degrees: number;
}

/** Where every tenth tooth must stand, and the last: a card to tick off while cutting. */
export function runningCheck(count: number, setting: PlainSetting, headRatio: number, every = 10): RunningCheck[] {
  const step = setting.turns * setting.circle + setting.holes;
  const teeth = [...Array.from({ length: Math.max(0, Math.ceil(count / every) - 1) }, (_, i) => (i + 1) * every), count];
  return teeth.map((tooth) => {
    const holes = tooth * step;
    return { tooth, turns: Math.floor(holes / setting.circle), hole: holes % setting.circle, degrees: (360 * holes) / (setting.circle * headRatio) };
  });
}

export interface OppositeCheck {
  /** Spaces from the first. */
  readonly after: number;
  readonly turns: number;
  readonly hole: number;
  /** What stands right across from the first space. */
  readonly faces: "a space" | "a tooth";
  readonly says: string;
}

/** The opposite-tooth check: after half the count the cutter must stand right across the wheel from where it began. */
export function oppositeCheck(count: number, setting: PlainSetting): OppositeCheck {
  const step = setting.turns * setting.circle + setting.holes;
  const after = Math.floor(count / 2), holes = after * step;
  const even = count % 2 === 0;
  return {
    after, turns: Math.floor(holes / setting.circle), hole: holes % setting.circle, faces: even ? "a space" : "a tooth",
    says: even ? `After ${after} spaces the cutter stands right across from the first space; a straight-edge through both passes the centre.`
      : `${count} is odd: after ${after} spaces the middle of a tooth stands right across from the first space.`,
  };
}

const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(2));

function roundedOf(r: Ratio): bigint {
  const twice = 2n * r.n + r.d;
  return r.s < 0n ? 0n : twice / (2n * r.d);
}
