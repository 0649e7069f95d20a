import { describe, expect, it } from "vitest";
import { plantArbor } from "../../src/commands/planting.ts";
import { aNumber, anAngle, between, ifDone, lengthIn } from "../../src/sheets/reading.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

describe("what is typed into a field", () => {
  it("is a sum in the maker's units, of lengths, degrees or bare figures", () => {
    expect(lengthIn("mm")("2.5*16/2")).toEqual({ value: 20 });
    expect(lengthIn("inch")("1 + 1 mm")).toEqual({ value: 26.4 });
    expect(anAngle("90 deg / 2")).toEqual({ value: 45 });
    expect(aNumber("3 mm")).toEqual({ fault: "no unit here" });
  });

  it("is within what is wanted, its ends too", () => {
    const read = between(aNumber, 0, 85, "from 0 to 85");
    expect([read("0"), read("85"), read("85.1"), read("−1"), read("")]).toEqual([
      { value: 0 }, { value: 85 }, { fault: "from 0 to 85" }, { fault: "from 0 to 85" }, { fault: "a figure" },
    ]);
  });

  it("is refused in the words of the command that would not do it", () => {
    const read = ifDone(lengthIn("mm"), SLIPWAY, plantArbor, (x) => ({ arbor: "B", x, y: 0 }));
    expect(read("20 + 1")).toEqual({ value: 21 });
    expect(read("10000 * 2")).toEqual({ refused: "A place is two lengths within 10,000 mm." });
    expect(read("ells")).toHaveProperty("fault");
  });
});
