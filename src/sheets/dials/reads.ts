// What a pointer reads, in the words of its dial: hours and minutes, days, a day's name, or divisions.
import { type FaceRing, type Movement, wayOf, type Face } from "../../../geometry/index.ts";
import { fixed } from "../../state/figures.ts";

const LONG_DAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];

/** The ring that a display is read on, or null. */
export const ringOf = (faces: readonly Face[], display: number): FaceRing | null =>
  faces.flatMap((f) => f.rings).find((r) => r.display === display) ?? null;

/** `part` is the part of a turn from the dial's 0. */
export function readsAs(movement: Movement, display: number, part: number, short = false): string {
  const { divisions, wanted } = movement.displays[display] ?? { divisions: 360, wanted: null };
  const value = part * divisions;
  if (divisions === 7 && wanted === 7) return (LONG_DAYS[Math.floor(value + 1e-6) % 7] ?? "").slice(0, short ? 3 : undefined);
  if (divisions === 24 && wanted === 1) return clockTime(value, 24);
  if (divisions === 24 || divisions === 12) return hours(value, divisions);
  if (wanted !== null && Math.abs(wanted - divisions) < 1) return short ? fixed(value, 2) : `${fixed(value, 1)} days`;
  return short ? fixed(value, 2) : `${fixed(value, 2)} of ${fixed(divisions, divisions % 1 === 0 ? 0 : 1)}`;
}

function minutesOf(value: number, divisions: number): [number, number] {
  const all = Math.round(value * 60) % (divisions * 60);
  return [Math.floor(all / 60), all % 60];
}

const clockTime = (value: number, divisions: number): string => minutesOf(value, divisions).map((n) => String(n).padStart(2, "0")).join(":");

/** Twelve stands where 0 does. */
function hours(value: number, divisions: number): string {
  const [h, m] = minutesOf(value, divisions);
  return `${h === 0 ? divisions : h} h ${String(m).padStart(2, "0")}`;
}

/** Which way round its figures run, for the sheet. */
export const numberedWay = (movement: Movement, display: number): string => (wayOf(movement, display) === 1 ? "clockwise" : "anticlockwise");
