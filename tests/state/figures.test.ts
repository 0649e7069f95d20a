import { describe, expect, it } from "vitest";
import { fixed, length, signed, typedNumber } from "../../src/state/figures.ts";

describe("figures", () => {
  it("have a real minus, and a nought has none", () => {
    expect(fixed(-0.42, 2)).toBe("−0.42");
    expect(fixed(-0.001, 2)).toBe("0.00");
    expect([signed(0.5, 1), signed(-0.5, 1), signed(0, 1)]).toEqual(["+0.5", "−0.5", "0.0"]);
  });

  it("are millimetres to the hundredth for gaps, the thousandth for distances, or inches (25.4 mm by definition)", () => {
    expect(length(21.6, "mm", "distance")).toBe("21.600");
    expect(length(-0.42, "mm")).toBe("−0.42");
    expect(length(25.4, "inch")).toBe("1.0000");
  });

  it("are read as typed, with a comma or a real minus, or not at all", () => {
    expect(typedNumber(" −2,5 ")).toBe(-2.5);
    expect(typedNumber("1e3")).toBeNull();
    expect(typedNumber("")).toBeNull();
  });
});
