import { describe, expect, it } from "vitest";
import { accessOf } from "../../../geometry/assembly/access.ts";
import type { Arbor, Frame, Part } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arborOf, collet, instrumentOf, noFrame } from "../../fixtures/handmade.ts";

const joined = (by: "screw" | "pin"): Part => collet("A1", 9, 2, 8, { join: { by } });
const post = (id: string, x: number, y: number, diameter: number): Arbor => arborOf(id, x, y, { diameter });
const accessIn = (arbors: Arbor[], frame: Frame = noFrame) => accessOf(workOut({ ...instrumentOf({ arbors }), frame }));

describe("a straight line for the tool", () => {
  it("[ACCESS1] one arbor beside bars as much as it and the tool are wide, and a direction outside that is free", () => {
    const [screw] = accessIn([arborOf("A", 0, 0, { parts: [joined("screw")] }), post("B", 20, 0, 10)]);
    expect(screw).toMatchObject({ tool: "screwdriver", to: "A1", free: true, inTheWay: [] });
    // asin((5 + 1.5) / 20), where the bar towards B ends.
    expect(screw?.from).toBeCloseTo((Math.asin(6.5 / 20) * 180) / Math.PI, 9);
  });
  it("[ACCESS1] a pin wants the opposite side free too", () => {
    // Two wide discs at right angles: every line through is barred from one side or the other, not so from one side alone.
    const wide = [post("B", 20, 0, 35), post("C", 0, 20, 35), post("D", -14, -14, 10)];
    expect(accessIn([arborOf("A", 0, 0, { parts: [joined("screw")] }), ...wide])[0]?.free).toBe(true);
    expect(accessIn([arborOf("A", 0, 0, { parts: [joined("pin")] }), ...wide])[0]?.free).toBe(false);
  });
  it("[ACCESS3] ringed by posts, the fewest in the way are named; what stands at another height is not", () => {
    const ring = [0, 1, 2, 3, 4, 5].map((k) => post(`P${k}`, 10 * Math.cos((k * Math.PI) / 3), 10 * Math.sin((k * Math.PI) / 3), 9.5));
    const [screw] = accessIn([arborOf("A", 0, 0, { parts: [joined("screw")] }), ...ring]);
    expect(screw).toMatchObject({ free: false, from: null });
    expect(screw?.inTheWay.length).toBe(1);
    const low = ring.map((p): Arbor => ({ ...p, head: 8 }));
    expect(accessIn([arborOf("A", 0, 0, { parts: [joined("screw")] }), ...low])[0]?.free).toBe(true);
  });
  it("[ACCESS1] the case bars every screw within its height", () => {
    const inCase: Frame = { ...noFrame, case: { insideDiameter: 80, floor: -5, rim: 30, wall: 2 } };
    expect(accessIn([arborOf("A", 0, 0, { parts: [joined("screw")] })], inCase)[0]).toMatchObject({ free: false, inTheWay: ["case"] });
  });
  it("[ACCESS2] a pivot is oiled beside what stands partly over it, not under what covers it; a pointer is turned aside", () => {
    const frame: Frame = { plates: [{ id: "front", z: 20, thickness: 2, outline: { circle: { diameter: 100 } } }], pillars: [] };
    const pivoted = arborOf("A", 0, 0, { head: 22, pivots: { head: { diameter: 1, length: 2, plate: "front" } } });
    const over = (x: number, part: Partial<Part>) => [pivoted, arborOf("B", x, 0, { foot: 24, head: 26, parts: [collet("B1", 24, 1, 30, part)] })];
    expect(accessIn([pivoted], frame)[0]).toMatchObject({ tool: "oiler", to: "A", plate: "front", free: true });
    expect(accessIn(over(15.1, {}), frame)[0]?.free).toBe(true);
    expect(accessIn(over(13, {}), frame)[0]).toMatchObject({ free: false, inTheWay: ["B1"] });
    expect(accessIn(over(13, { kind: "pointer", length: 20, tail: 4, width: 2, angle: 0 } as Partial<Part>), frame)[0]?.free).toBe(true);
  });
});
