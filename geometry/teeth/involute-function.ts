// The involute function inv a = tan a − a (radians) and its inverse.

/** inv a; a in radians, 0 ≤ a < π/2. By its series where the difference would lose figures. */
export function inv(aRad: number): number {
  if (Math.abs(aRad) > 0.02) return Math.tan(aRad) - aRad;
  const sq = aRad * aRad;
  return aRad * sq * (1 / 3 + sq * (2 / 15 + sq * (17 / 315)));
}

/** The angle in [0, π/2) whose involute function is `value`; null below 0. */
export function inverseInv(value: number): number | null {
  if (!(value >= 0)) return null;
  if (value === 0) return 0;
  // A start above the root, from which Newton falls without crossing it: inv is convex.
  let a = Math.min(Math.cbrt(3 * value), Math.atan(value + Math.PI / 2));
  for (let i = 0; i < 60; i++) {
    const tan = Math.tan(a);
    const step = (inv(a) - value) / (tan * tan);
    a -= step;
    if (Math.abs(step) <= 1e-16 * a) break;
  }
  return a;
}
