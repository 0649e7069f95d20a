import { describe, expect, it } from "vitest";
import { pinFindings } from "../../../geometry/examine/pin.ts";
import type { Instrument } from "../../../geometry/instrument.ts";
import { workOut } from "../../../geometry/workout.ts";

interface Sizes { apart?: number; radius?: number; diameter?: number; middle?: number; length?: number; width?: number; pinZ?: number; sideshake?: number; slotDrives?: boolean }
function pinInSlot({ apart = 1.1, radius = 9.6, diameter = 1, middle = 9.6, length = 5, width = 1.05, pinZ = 10, sideshake = 0, slotDrives = false }: Sizes = {}) {
  const instrument: Instrument = {
    endshake: 1, name: "uneven", frame: { plates: [], pillars: [] }, practice: { endshake: 0.2, sideshake, faceGap: 0.5 },
    arbors: [
      { id: "A", x: 0, y: 0, diameter: 2, foot: 0, head: 20, parts: [{ id: "pin", kind: "pin", z: pinZ, thickness: 3, radius, angle: 0, diameter }] },
      { id: "B", x: apart, y: 0, diameter: 2, foot: 0, head: 20, parts: [{ id: "slot", kind: "slot", z: 11, thickness: 1, diameter: 26, radius: middle, angle: 0, length, width }] },
    ],
    engagements: [], couplings: [{ kind: "pin and slot", driver: slotDrives ? "slot" : "pin", driven: slotDrives ? "pin" : "slot" }], input: { arbor: slotDrives ? "B" : "A", days: 1, sense: "clockwise" },
  };
  const [found] = pinFindings(workOut(instrument));
  if (!found) throw new Error("a pin finding was expected");
  return found;
}

describe("a pin in its slot", () => {
  it("[PIN1] length beyond twice the throw and the pin is shared by both ends; half the sideshakes is lost", () => {
    // 5 = 2 × 1.1 + 1 + 1.8: 0.9 to spare at each end.
    expect(pinInSlot().severity).toBe("free");
    expect(Math.abs((pinInSlot({ length: 4.4 }).gap ?? 0) - 0.6)).toBeLessThan(1e-9);
    expect(Math.abs((pinInSlot({ length: 4.4, sideshake: 0.1 }).worst ?? 0) - 0.5)).toBeLessThan(1e-9);
    expect(pinInSlot({ length: 4 }).severity).toBe("tight");
    expect(pinInSlot({ length: 3.2 }).severity).toBe("foul");
    expect(pinInSlot({ length: 4, slotDrives: true })).toEqual(pinInSlot({ length: 4 }));
    expect(pinInSlot({ length: 4, middle: 9 }).says).toMatch(/outer end/);
    expect(pinInSlot({ length: 4, middle: 10.4 }).says).toMatch(/inner end/);
  });
  it("[PIN2] a pin wider than the slot is a foul", () => {
    expect(pinInSlot({ width: 1 }).severity).toBe("free");
    expect(pinInSlot({ width: 0.99 }).severity).toBe("foul");
  });
  it("[PIN3] in height it must overlap the slot at the worst of both endshakes, by faceGap to be free", () => {
    // The slot is 11 to 12, the pin reaches up to pinZ + 3; each arbor moves 0.1 either way.
    expect(pinInSlot({ pinZ: 8.8 }).severity).toBe("free");
    expect(Math.abs((pinInSlot({ pinZ: 8.5 }).worst ?? 0) - 0.3)).toBeLessThan(1e-9);
    expect(pinInSlot({ pinZ: 8.5 }).severity).toBe("tight");
    expect(pinInSlot({ pinZ: 8.2 }).severity).toBe("foul");
  });
  it("[PIN1] a pin whose circle does not enclose the slot's axis swings between the same two distances", () => {
    const swings = pinInSlot({ apart: 12, radius: 4, middle: 12, length: 11 });
    expect(Math.abs((swings.gap ?? 0) - 1)).toBeLessThan(1e-9);
  });
});
