// Which arbors turn about one axis, and what carries each axis round. Arbors that stand in line are one axis; two studs
// are in line only on one carrier. A carrier that is fixed in the frame carries nothing round.
import type { Instrument } from "../instrument.ts";
import { SAME_AXIS_MM } from "../numeric/tolerance.ts";
import type { Layout } from "../train/layout.ts";
import type { Axes } from "../train/meshes.ts";
import type { Place } from "./circles.ts";

export function axesOf(instrument: Instrument, layout: Layout, places: readonly Place[]): Axes {
  const homes = layout.carrier.map((_, i) => homeAbove(instrument, layout, i));
  const order = places.map((_, i) => i).sort((i, j) => (homes[i] ?? -1) - (homes[j] ?? -1) || places[i].x - places[j].x || i - j);
  const axisOf = new Array<number>(order.length).fill(-1);
  const homeOf: (number | null)[] = [];
  order.forEach((i, at) => {
    if (axisOf[i] >= 0) return;
    axisOf[i] = homeOf.length;
    for (let next = at + 1; next < order.length; next++) {
      const j = order[next];
      if (homes[j] !== homes[i] || places[j].x - places[i].x > SAME_AXIS_MM) break;
      if (axisOf[j] < 0 && Math.abs(places[j].y - places[i].y) <= SAME_AXIS_MM) axisOf[j] = axisOf[i];
    }
    homeOf.push(homes[i]);
  });
  return { axisOf, homeOf };
}

function homeAbove(instrument: Instrument, layout: Layout, arbor: number): number | null {
  const home = layout.carrier[arbor];
  if (home === null || instrument.arbors[home].fixed !== true) return home;
  return homeAbove(instrument, layout, home) === null ? null : home;
}
