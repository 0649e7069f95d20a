import { describe, expect, it } from "vitest";
import { examine, toNumber, workOut } from "../../geometry/index.ts";
import { freshInstrument } from "../../src/commands/fresh.ts";
import { instrumentOfTrain, plantTrain, readStages } from "../../src/commands/train.ts";

describe("a train in one line", () => {
  it("is read as makers write it, and what is not one is said", () => {
    expect(readStages("42/17 × 41/19")).toEqual({ stages: [{ driver: 42, follower: 17 }, { driver: 41, follower: 19 }] });
    expect(readStages("42:17 x 41÷19 * 20/60")).toMatchObject({ stages: { length: 3 } });
    expect(readStages("42/17 × pinion")).toEqual({ fault: "a driver over a follower in place of “pinion”, such as 42/17" });
    expect(readStages("2/17")).toEqual({ fault: "counts from 3 to 2,000; 2 is none" });
    expect(readStages(" ")).toHaveProperty("fault");
  });

  it("becomes arbors, wheels and pinions in gear at their distances, turning at the product of its fractions", () => {
    const fresh = freshInstrument(150);
    const outcome = plantTrain.run(fresh, { stages: [{ driver: 42, follower: 17 }, { driver: 41, follower: 19 }, { driver: 12, follower: 48 }], from: "A" });
    if ("refused" in outcome) throw new Error(outcome.refused);
    const movement = workOut(outcome.instrument);
    expect(outcome.instrument.arbors.map((a) => [a.id, a.parts.map((p) => p.kind)])).toEqual([
      ["A", ["wheel"]], ["B", ["pinion", "wheel"]], ["C", ["pinion", "pinion"]], ["D", ["wheel"]],
    ]);
    expect(toNumber(movement.arbors[3]!.rate!)).toBeCloseTo(-(42 / 17) * (41 / 19) * (12 / 48), 12);
    for (const pair of movement.engagements) expect(pair.distance).toBeCloseTo(pair.computed!, 3);
    expect(outcome.instrument.arbors[0]).toMatchObject({ x: 0, y: 0 });
    expect(outcome.instrument.arbors[0]).not.toHaveProperty("steady");
  });

  it("takes a plate that it goes on without a foul", () => {
    const instrument = instrumentOfTrain([{ driver: 48, follower: 12 }, { driver: 45, follower: 15 }, { driver: 40, follower: 10 }], "Pier clock");
    expect(instrument.name).toBe("Pier clock");
    expect(examine(workOut(instrument)).counts.foul).toBe(0);
  });
});
