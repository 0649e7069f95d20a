// Which cutter a wheel wants, and whether its maker owns it. Source: the set of eight involute form cutters in
// J. Rose, Modern Machine-Shop Practice (1887), there numbered from the rack down; sets by module are numbered from the
// fewest teeth up (common practice). Clock cutters: one for all wheels of a module, one for each count of leaves (common practice).
import type { Cutter } from "../instrument.ts";
import type { Teeth } from "../teeth/teeth.ts";

export interface Band {
  readonly from: number;
  /** Infinity: to the rack. */
  readonly to: number;
  /** Number in a set by module, and in one by diametral pitch. */
  readonly byModule: number;
  readonly byPitch: number;
}

const FROM = [12, 14, 17, 21, 26, 35, 55, 135];

/** The band of the set of eight that serves a count; null under 12 teeth, for which there is none. */
export function bandOf(count: number): Band | null {
  const at = FROM.filter((from) => count >= from).length - 1;
  return at < 0 ? null : { from: FROM[at], to: (FROM[at + 1] ?? Infinity) - 1, byModule: at + 1, byPitch: FROM.length - at };
}

export interface Wanted {
  /** In words: what the cutter is. */
  readonly says: string;
  readonly band: Band | null;
  /** The owned cutter that serves, or null. */
  readonly owned: Cutter | null;
}

export function cutterFor(teeth: Teeth, owned: readonly Cutter[]): Wanted {
  const band = teeth.form === "involute" && !teeth.internal ? bandOf(teeth.count) : null;
  return { says: wantedSays(teeth, band), band, owned: owned.find((c) => serves(c, teeth)) ?? null };
}

function wantedSays(teeth: Teeth, band: Band | null): string {
  if (teeth.form === "lantern") return "none: drilled for trundles";
  if (teeth.internal) return "shaped or slotted, no disc cutter";
  if (teeth.form === "cycloidal") return teeth.role === "wheel" ? "clock wheel cutter, all counts" : `clock pinion cutter, ${teeth.count} leaves`;
  if (teeth.form === "straight") return "straight-sided, or by file";
  if (band === null) return "under the set: generate or fly-cut";
  return `No. ${band.byModule}, for ${band.from} ${band.to === Infinity ? "up" : `to ${band.to}`}`;
}

function serves(cutter: Cutter, teeth: Teeth): boolean {
  return teeth.form !== "lantern" && cutter.form === teeth.form && cutter.module === teeth.module
    && (cutter.pressureAngle === undefined || teeth.form === "cycloidal" || cutter.pressureAngle === teeth.pressureAngleDeg)
    && teeth.count >= (cutter.from ?? 0) && teeth.count <= (cutter.to ?? Infinity);
}
