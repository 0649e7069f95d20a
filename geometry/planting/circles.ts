// Where circles meet. The least total function of its kind: circles that do not meet give the place half way between them.
export interface Place { readonly x: number; readonly y: number }

/** The two points (one, where they touch or never meet) common to two circles of different centres. Lengths in mm. */
export function circlesMet(a: Place, radiusA: number, b: Place, radiusB: number): Place[] {
  const dx = b.x - a.x, dy = b.y - a.y, apart = Math.hypot(dx, dy);
  if (apart === 0) return [{ x: a.x + radiusA, y: a.y }];
  const ux = dx / apart, uy = dy / apart;
  const along = (apart * apart + radiusA * radiusA - radiusB * radiusB) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, (radiusA - along) * (radiusA + along)));
  if (aside > 0) {
    return [1, -1].map((side) => ({ x: a.x + along * ux - side * aside * uy, y: a.y + along * uy + side * aside * ux }));
  }
  const half = halfWay(apart, radiusA, radiusB);
  return [{ x: a.x + half * ux, y: a.y + half * uy }];
}

/** On the circle, the point nearest to a place; of the centre itself, the point on +x. */
export function onCircle(centre: Place, radius: number, near: Place): Place {
  const dx = near.x - centre.x, dy = near.y - centre.y, apart = Math.hypot(dx, dy);
  return apart === 0 ? { x: centre.x + radius, y: centre.y } : { x: centre.x + (dx * radius) / apart, y: centre.y + (dy * radius) / apart };
}

export const atAngle = (centre: Place, radius: number, rad: number): Place =>
  ({ x: centre.x + radius * Math.cos(rad), y: centre.y + radius * Math.sin(rad) });

/** From the first centre towards the second (below 0: away from it), half way across the gap between the circles. */
function halfWay(apart: number, radiusA: number, radiusB: number): number {
  if (apart >= radiusA + radiusB) return (radiusA + apart - radiusB) / 2;
  return radiusA > radiusB ? (radiusA + apart + radiusB) / 2 : (apart - radiusB - radiusA) / 2;
}
