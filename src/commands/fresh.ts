// An empty beginning: a pair of round plates with four pillars and a crank arbor, so that there is something to turn.
import type { Instrument } from "../../geometry/index.ts";

/** Two plates of this diameter, 40 mm apart inside. */
export function freshInstrument(diameterMm: number): Instrument {
  const radius = 0.38 * diameterMm * Math.SQRT1_2, at = Math.round(radius * 10) / 10;
  const plate = (id: string, name: string, z: number) => ({ id, name, z, thickness: 3, outline: { circle: { diameter: diameterMm } } });
  const pillar = (id: string, x: number, y: number) => ({ id, x, y, diameter: 8, from: 0, to: 40 });
  return {
    endshake: 1,
    name: "A new instrument",
    frame: {
      plates: [plate("back", "Back plate", -3), plate("front", "Front plate", 40)],
      pillars: [pillar("P1", at, at), pillar("P2", -at, at), pillar("P3", -at, -at), pillar("P4", at, -at)],
    },
    arbors: [{
      id: "A", name: "Crank", x: 0, y: 0, diameter: 4, foot: -2.9, head: 42.9, parts: [],
      pivots: { foot: { diameter: 2, length: 3, plate: "back" }, head: { diameter: 2, length: 3, plate: "front" } },
    }],
    engagements: [],
    input: { arbor: "A", days: 1, sense: "clockwise" },
  };
}
