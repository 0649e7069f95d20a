import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { typedFigure } from "../../src/commands/typed.ts";

const value = (text: string, of: "length" | "angle" | "number" = "length", bareMm = 1) => {
  const typed = typedFigure(text, of, bareMm);
  return "value" in typed ? typed.value : null;
};
const fault = (text: string, of: "length" | "angle" | "number" = "length") => {
  const typed = typedFigure(text, of);
  return "fault" in typed ? typed.fault : null;
};

describe("a typed figure", () => {
  it("is a number, with a comma or a real minus, or a sum of figures", () => {
    expect(value("2.5*16/2")).toBe(20);
    expect(value("−2,5 + 3")).toBe(0.5);
    expect(value("2 × (3 − 1) ÷ 4")).toBe(1);
    expect(value("-(2+3)*-2")).toBe(10);
    expect(value("1 - 2 - 3")).toBe(-4);
    expect(value("12 / 3 / 2")).toBe(2);
  });

  it("takes units: an inch is 25.4 mm by definition, and a bare number has the unit of its field", () => {
    expect(value("1 in")).toBe(25.4);
    expect(value('1/4"')).toBeNull();
    expect(value('(1/4)"')).toBe(6.35);
    expect(value("1in + 2")).toBeCloseTo(27.4, 12);
    expect(value("1", "length", 25.4)).toBe(25.4);
    expect(value("1 + 1 mm", "length", 25.4)).toBe(26.4);
    expect(value("3*2mm", "length", 25.4)).toBe(6);
    expect(value("90°", "angle")).toBe(90);
    expect(value("6mm/2mm", "number")).toBeNull();
  });

  it("says what would be understood, and never runs what is typed", () => {
    expect(fault("2 mm * 3 mm")).toBe("a length, not lengths multiplied");
    expect(fault("")).toBe("a figure");
    expect(fault("7 ells")).toBe("a unit that is known; ells is none");
    expect(fault("1 mm", "number")).toBe("no unit here");
    expect(fault("1/0")).toBe("a figure that can be held; nothing is parted by nought");
    for (const text of ["alert(1)", "constructor", "__proto__", "2 3", "(", "1e3", "2**", "((((", ")("]) expect(value(text)).toBeNull();
    expect(value("(".repeat(500) + "1" + ")".repeat(500))).toBeNull();
  });

  it("gives for random sums what arithmetic gives", () => {
    const sum: fc.Arbitrary<{ text: string; is: number }> = fc.letrec<{ sum: { text: string; is: number } }>((tie) => ({
      sum: fc.oneof({ maxDepth: 4 },
        fc.integer({ min: 1, max: 99 }).map((n) => ({ text: String(n), is: n })),
        fc.tuple(tie("sum"), fc.constantFrom("+", "-", "*", "/"), tie("sum")).map(([a, sign, b]) => ({
          text: `(${a.text})${sign}(${b.text})`,
          is: sign === "+" ? a.is + b.is : sign === "-" ? a.is - b.is : sign === "*" ? a.is * b.is : a.is / b.is,
        }))),
    })).sum;
    fc.assert(fc.property(sum, ({ text, is }) => {
      const typed = value(text, "number");
      if (Number.isFinite(is) && typed !== null) expect(typed).toBeCloseTo(is, 6);
      else expect(Number.isFinite(is) && text.length < 60).toBe(false);
    }), { seed: 20260120, numRuns: 300 });
  });
});
