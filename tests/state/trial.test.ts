import { describe, expect, it } from "vitest";
import { raisePart, raisePlate, setEnd } from "../../src/commands/heights.ts";
import { createActions } from "../../src/state/actions.ts";
import type { Bench } from "../../src/state/hooks.ts";
import { createStateStore } from "../../src/state/store.ts";
import { keepTried, putTriedBack, tryOut } from "../../src/state/trial.ts";
import { createWorker } from "../../src/state/worked.ts";
import { type Examined, examineWorked, type Examining } from "../../src/workers/examining.ts";
import { latestOnly } from "../../src/workers/latest.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

async function bench(): Promise<Bench> {
  const far = latestOnly<Examining, Examined>({ ask: () => new Promise(() => {}) });
  const store = createStateStore(createWorker({ near: Promise.resolve(examineWorked), far }, () => 0));
  const actions = createActions(store);
  await new Promise<void>((done) => { setImmediate(done); });
  actions.open(SLIPWAY, null);
  return { store, actions } as Bench;
}
const heightOf = ({ store }: Bench, id: string) => store.getState().worked?.movement.arbors.flatMap((a) => a.arbor.parts).find((p) => p.id === id)?.z;

describe("what is tried in height", () => {
  it("is worked out and shown while it is in hand, and the instrument is not touched", async () => {
    const own = await bench();
    tryOut(own, raisePart, { part: "B2", z: 20 });
    expect([heightOf(own, "B2"), own.store.getState().instrument]).toEqual([20, SLIPWAY]);
    expect(own.store.getState().history.past).toEqual([]);
    putTriedBack(own);
    expect(heightOf(own, "B2")).toBe(18);
  });

  it("is one step when it is let go, however far it went before", async () => {
    const own = await bench();
    for (const z of [18.5, 25, 19]) tryOut(own, raisePart, { part: "B2", z });
    expect(keepTried(own, raisePart, { part: "B2", z: 19 })).toBe(true);
    expect(own.store.getState().history.past.map((s) => s.says)).toEqual(["B2 raised"]);
    own.actions.undo();
    expect(own.store.getState().instrument).toEqual(SLIPWAY);
    expect(heightOf(own, "B2")).toBe(18);
  });

  it("is not shown where it would be refused, and the reason is said", async () => {
    const own = await bench();
    tryOut(own, setEnd, { arbor: "B", end: "foot", z: 40 });
    expect(own.store.getState().trial).toBeNull();
    expect(own.store.getState().saying).not.toBeNull();
    expect(keepTried(own, raisePlate, { plate: "none", z: 3 })).toBe(false);
    expect(own.store.getState().instrument).toBe(SLIPWAY);
  });

  it("takes a plate with its pillars and the pivots that run in it", async () => {
    const own = await bench();
    tryOut(own, raisePlate, { plate: "front", z: 33 });
    const { frame, arbors } = own.store.getState().trial!;
    expect([frame.plates[1]!.z, frame.pillars[0]!.to, arbors[1]!.head, arbors[1]!.foot]).toEqual([33, 33, 35, -2]);
  });
});
