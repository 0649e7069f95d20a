// Outlines for those who cut by wire or laser: every part and plate that is one flat figure, at full size in mm about its
// own axis. Layer CUT is the path of the tool's middle, out of the metal by half the kerf; WIDE is the part as it shall
// be; CHAIN its axis and pitch circle.
import { meshOf, type Mesh, type Movement, pitchRadius, thingsOf, type ThingKind } from "../../../geometry/index.ts";
import { circleDxf, dxfOf, lineDxf, polylineDxf, textDxf } from "./dxf.ts";
import { faceLoops } from "./faces.ts";
import { movedOut } from "./kerf.ts";

/** mm: no farther from the true curves than this. */
const CHORD_MM = 0.002;
const FLAT: readonly ThingKind[] = ["wheel", "pinion", "ratchet", "disc", "slot", "arm", "pointer", "plate"];

export const isCut = (kind: ThingKind): boolean => FLAT.includes(kind);

export const cutIds = (movement: Movement): string[] => thingsOf(movement).filter((t) => isCut(t.kind)).map((t) => t.id);

/** The figure of a part, or null where an id names nothing that is flat. */
export function cutLoops(movement: Movement, id: string): Float64Array[] | null {
  const mesh: Mesh | null = meshOf(movement, id, { chordMm: CHORD_MM });
  return mesh && faceLoops(mesh);
}

export function cuttingDxf(movement: Movement, id: string, kerfMm: number, words: readonly string[]): string | null {
  const loops = cutLoops(movement, id);
  if (!loops) return null;
  const xs = loops.flatMap((l) => [...l].filter((_, i) => i % 2 === 0)), ys = loops.flatMap((l) => [...l].filter((_, i) => i % 2 === 1));
  const most = (of: readonly number[], sign: 1 | -1): number => sign * of.reduce((m, v) => Math.max(m, sign * v), 0);
  const [left, right, bottom, top] = [most(xs, -1), most(xs, 1), most(ys, -1), most(ys, 1)];
  const paths = loops.map((loop) => movedOut(loop, kerfMm / 2)).filter((p) => p !== null);
  const teeth = movement.teeth.get(id), said = [`${id}: mm, full size, kerf ${kerfMm} mm`, ...words].filter((w) => w !== "");
  return dxfOf([
    ...paths.map((path) => polylineDxf("CUT", path, true)),
    ...loops.map((loop) => polylineDxf("WIDE", loop, true)),
    ...(teeth ? [circleDxf("CHAIN", 0, 0, pitchRadius(teeth))] : []),
    lineDxf("CHAIN", left - 2, 0, right + 2, 0), lineDxf("CHAIN", 0, bottom - 2, 0, top + 2),
    ...said.map((w, i) => textDxf("NOTE", left, bottom - 6 - 4 * i, 2.5, w)),
  ].join(""), { left, right, bottom, top }, said);
}
