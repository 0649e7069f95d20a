// Angles: degrees at the border (suffix Deg), radians inside formulas (suffix Rad).

export const TAU = 2 * Math.PI;
export const toRad = (deg: number): number => (deg * Math.PI) / 180;
export const toDeg = (rad: number): number => (rad * 180) / Math.PI;
/** The same direction in [0, 2π). */
export const wrapRad = (rad: number): number => {
  const w = rad % TAU;
  return w < 0 ? w + TAU : w;
};
/** The same direction in [−π, π). */
export const wrapSignedRad = (rad: number): number => wrapRad(rad + Math.PI) - Math.PI;
