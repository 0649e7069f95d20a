import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import type { Instrument } from "../../../geometry/instrument.ts";
import { trainTable, yearsToOneDivision } from "../../../geometry/numbers/train-table.ts";
import { ONE, ratio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, gear, instrument, studOn, wheel } from "../train/made.ts";

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

describe("a train on an arm", () => {
  const at = { x: 0, y: 0 }, display = (arbor: string) => ({ id: "d", name: "shown", arbor });
  const fixed = (id: string, parts: Parameters<typeof arbor>[1]) => arbor(id, parts, { ...at, fixed: true });
  const willis = (made: Instrument) => trainTable(workOut(made)).find((t) => t.willis !== null)?.willis ?? null;
  const told = (made: Instrument) => willis(made)?.rows.map((r) => [r.arbor, r.against.toFraction(), r.rate.toFraction()]);

  // Source: H. T. Brown, Five Hundred and Seven Mechanical Movements, no. 504; Willis's rule in MacCord, Scientific American Supplement, 1884.
  it("[NUM20] Ferguson's paradox is written from the fixed 20 over the idler to 21, 20 and 19", () => {
    const paradox = (n: number) => instrument([fixed("F", [wheel("f", 20)]), arbor("C", [], at), arbor("I", [wheel("i", 20)], studOn("C", 20)), arbor("L", [wheel("l", n)], studOn("C", 40))],
      [gear("f", "i"), gear("i", "l")], { input: "C", displays: [display("L")] });
    expect(told(paradox(21))).toEqual([["F", "-1", "0"], ["I", "1", "2"], ["L", "-20/21", "1/21"]]);
    expect(told(paradox(20))?.at(-1)).toEqual(["L", "-1", "0"]);
    expect(told(paradox(19))?.at(-1)).toEqual(["L", "-20/19", "-1/19"]);
    expect(willis(paradox(21))).toMatchObject({ arm: "C", arms: false, then: [] });
    expect(willis(paradox(21))?.rows[0]).toMatchObject({ fixed: true, by: null });
  });

  // Source: stock-gear handbook table 13-1: sun 16, planet 16, ring 48 fixed, sun driving: the arm makes a quarter of a turn.
  it("[NUM20] where the arm is sought it comes of the two ends, and plain steps follow", () => {
    const made = instrument([
      arbor("S", [wheel("s", 16)], at), arbor("C", [wheel("c", 30)], at), arbor("P", [wheel("p", 16)], studOn("C", 16)), fixed("R", [wheel("r", 48, { internal: true })]),
      arbor("X", [wheel("x", 60)], { x: 45, y: 0 }),
    ], [gear("s", "p"), gear("p", "r"), gear("c", "x")], { input: "S", displays: [display("X")] });
    const table = willis(made);
    expect(table).toMatchObject({ arm: "C", arms: true });
    expect(table?.armRate.toFraction()).toBe("1/4");
    expect(table?.value.abs().inverse().toFraction()).toMatch(/^(3|1\/3)$/);
    expect(table?.then.map((s) => [s.arbor, s.rate.toFraction()])).toEqual([["X", "-1/8"]]);
    const [first, last] = [table?.rows[0], table?.rows.at(-1)];
    if (!table || !first || !last) throw new Error("it has rows");
    expect(last.rate.sub(table.value.mul(first.rate)).div(ONE.sub(table.value)).equals(table.armRate)).toBe(true);
  });

  it("[NUM20] holds for every carried display of the tellurian, row by row", () => {
    const tables = trainTable(workOut(example("small-tellurian"))).filter((t) => t.steps === null);
    expect(tables.length).toBe(3);
    for (const { willis: table, arbor: shown } of tables) {
      if (table === null) throw new Error("it is written out");
      expect(table.rows.at(-1)?.arbor).toBe(shown);
      table.rows.forEach((row, i) => {
        expect(row.against.add(table.armRate).equals(row.rate)).toBe(true);
        const before = table.rows[i - 1];
        if (before) expect(row.against.equals(row.by === null ? before.against : before.against.mul(ratio(row.by.inside ? row.by.driver : -row.by.driver, row.by.driven)))).toBe(true);
        else expect(row.fixed && row.rate.equals(ratio(0))).toBe(true);
      });
      expect(table.rows[0]?.against.mul(table.value).equals(table.rows.at(-1)?.against ?? ratio(0))).toBe(true);
    }
    expect(trainTable(workOut(example("estuary-dial"))).every((t) => t.willis === null)).toBe(true);
  });
});
