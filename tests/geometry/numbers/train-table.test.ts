import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../../geometry/instrument.ts";
import { trainTable, yearsToOneDivision } from "../../../geometry/numbers/train-table.ts";
import { ratio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";

const example = (name: string): Instrument =>
  JSON.parse(readFileSync(resolve(import.meta.dirname, `../../../public/instruments/${name}.instrument.json`), "utf8")) as Instrument;

describe("the train as it is", () => {
  const movement = workOut(example("estuary-dial"));
  const table = trainTable(movement);

  it("[NUM10] multiplies up to the exact rate of every display's arbor", () => {
    for (const train of table) {
      expect(train.steps).not.toBeNull();
      const product = (train.steps ?? []).reduce((r, s) => r.mul(s.driver === null || s.driven === null ? ratio(1)
        : ratio(s.inside ? s.driver : -s.driver, s.driven)), ratio(1));
      expect(product.equals(train.rate ?? ratio(0))).toBe(true);
    }
  });

  it("[NUM10] goes over couplings turn for turn, and starts where another display's arbor is passed", () => {
    const tide = table.find((t) => t.id === "tide"), moon = table.find((t) => t.id === "moon");
    expect(moon?.steps?.map((s) => s.driver)).toEqual([22, 19, 19, 22, null]);
    expect(tide?.leadsFrom).toEqual({ arbor: "E", after: 4 });
    expect(tide?.steps?.slice(0, 4).every((s) => s.serves.includes("moon") && s.serves.includes("tide"))).toBe(true);
  });

  it("[NUM11] gives sense from both sides, and the error that makes the drift", () => {
    for (const train of table) {
      for (const step of train.steps ?? []) expect(step.dialSide).not.toBe(step.backSide);
      if (train.error === null || train.days === null || train.wanted === null) continue;
      expect(Math.abs(train.error - (train.wanted / train.days - 1))).toBeLessThan(1e-15 * 10);
    }
    expect(yearsToOneDivision(0, 12)).toBeNull();
    expect(yearsToOneDivision(-0.0011, 59)).toBeCloseTo(5547, 0);
  });

  it("[NUM10] says which carrier comes into a train that is no plain product", () => {
    const carried = trainTable(workOut(example("small-tellurian"))).filter((t) => t.steps === null);
    expect(carried.length).toBeGreaterThan(0);
    for (const train of carried) expect(train.says).toMatch(/carried by A/);
  });
});
