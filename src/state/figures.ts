// How figures are written for the maker: decimals by what is measured, a real minus sign, millimetres or inches.
import type { Units } from "./state.ts";

const MM_PER_INCH = 25.4;
/** mm that a bare figure stands for. */
export const mmOf = (units: Units): number => (units === "mm" ? 1 : MM_PER_INCH);
/** Gaps to a hundredth, distances to a thousandth of a millimetre, shakes and backlash alike; inches to a ten-thousandth. */
const DECIMALS = { gap: 2, distance: 3 } as const;

export function length(mm: number, units: Units, kind: keyof typeof DECIMALS = "gap"): string {
  return units === "mm" ? fixed(mm, DECIMALS[kind]) : fixed(mm / MM_PER_INCH, 4);
}

export const unitName = (units: Units): string => (units === "mm" ? "mm" : "in");

/** A decimal comma and a real minus sign are understood. Null: not a number. */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(/^−/, "-").replace(/[\s\u2009\u202f]/g, "").replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** So many decimals, a real minus sign, never a minus zero. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return text.startsWith("-") ? (Number(text) === 0 ? text.slice(1) : `−${text.slice(1)}`) : text;
}

/** With a plus or a real minus before it. */
export const signed = (value: number, decimals: number): string => {
  const text = fixed(value, decimals);
  return text.startsWith("−") || Number(text) === 0 ? text : `+${text}`;
};
