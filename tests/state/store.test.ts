import { describe, expect, it } from "vitest";
import { examine, withPlaces, workOut } from "../../geometry/index.ts";
import { plantArbor } from "../../src/commands/planting.ts";
import { createActions, findingKey } from "../../src/state/actions.ts";
import { isSaved } from "../../src/state/history.ts";
import { LIFE } from "../../src/state/state.ts";
import { createStateStore, EMPTY, type Store } from "../../src/state/store.ts";
import { createWorker } from "../../src/state/worked.ts";
import { type Examined, examineWhole, examineWorked, type Examining } from "../../src/workers/examining.ts";
import { latestOnly } from "../../src/workers/latest.ts";
import { SLIPWAY } from "../fixtures/slipway.ts";

const settled = () => new Promise<void>((done) => { setImmediate(done); });

/** A store whose far examiner answers when the test says so, and whose clock says how long each examination takes. */
async function bench(tookMs = 0) {
  const asked: { question: Examining; give: (answer: Examined) => void }[] = [];
  const far = latestOnly<Examining, Examined>({ ask: (question) => new Promise((give) => { asked.push({ question, give }); }) });
  let now = 0;
  const store = createStateStore(createWorker({ near: Promise.resolve(examineWorked), far }, () => (now += tookMs)));
  const actions = createActions(store);
  const file = structuredClone(SLIPWAY);
  await settled();
  actions.open(file, "slipway.instrument.json");
  return { store, actions, asked, file };
}
const arborAt = (store: Store, id: string) => store.getState().worked?.movement.arbors.find((a) => a.id === id);
const backlash = (store: Store) => store.getState().worked?.sheet.engagements[0]?.backlash;

describe("the state", () => {
  it("says of each of its fields how long it lives", () => {
    expect(Object.keys(LIFE).sort()).toEqual(Object.keys(EMPTY).sort());
  });

  it("works the movement and its sheet out whenever the instrument changes, exactly as from the file", async () => {
    const { store, actions } = await bench();
    actions.run(plantArbor, { arbor: "B", x: 30.1, y: 0 });
    const { instrument, worked } = store.getState();
    expect(worked?.sheet).toEqual(examine(workOut(instrument!), { all: false }));
    expect(arborAt(store, "B")?.x).toBe(30.1);
  });

  it("says a refused command in words and changes nothing", async () => {
    const { store, actions, file } = await bench();
    expect(actions.run(plantArbor, { arbor: "Z", x: 0, y: 0 })).toBe(false);
    expect(store.getState().saying).toBe("There is no arbor called Z.");
    expect(store.getState().instrument).toBe(file);
    expect(store.getState().history.past).toEqual([]);
  });

  it("is saved as opened, not saved after a step, and saved again after it is undone", async () => {
    const { store, actions } = await bench();
    const saved = () => isSaved(store.getState().history);
    expect(saved()).toBe(true);
    actions.run(plantArbor, { arbor: "B", x: 31, y: 0 });
    expect(saved()).toBe(false);
    actions.undo();
    expect(saved()).toBe(true);
    expect(store.getState().instrument).toEqual(SLIPWAY);
  });

  it("keeps what is open when another file is refused", async () => {
    const { store, actions, file } = await bench();
    actions.refuse("broken.instrument.json", [{ path: "name", found: "nothing", expected: "a text" }]);
    expect(store.getState().instrument).toBe(file);
    actions.closeRefusal();
    expect(store.getState().refusal).toBeNull();
  });
});

describe("before the examiner has come", () => {
  it("the movement stands, nothing is said of it, and all is said once he has", async () => {
    let come: (examine: typeof examineWorked) => void = () => {};
    const far = latestOnly<Examining, Examined>({ ask: () => Promise.reject(new Error("not asked")) });
    const store = createStateStore(createWorker({ near: new Promise((give) => { come = give; }), far }, () => 0));
    const file = structuredClone(SLIPWAY);
    createActions(store).open(file, null);
    expect(store.getState().worked).toMatchObject({ examined: "to come", sheet: { findings: [] } });
    expect(arborAt(store, "B")?.x).toBe(30);
    come(examineWorked);
    await settled();
    expect(store.getState().worked?.examined).toBe("now");
    expect(store.getState().worked?.sheet).toEqual(examine(workOut(file), { all: false }));
  });
});

describe("a drag", () => {
  it("changes distance, backlash and counts while it moves, and nothing of the instrument until it is kept", async () => {
    const { store, actions, file } = await bench();
    actions.set({ way: "trying the depth" });
    const before = backlash(store);
    actions.takeUp("B");
    actions.moveTo({ x: 30.2, y: 0 });
    expect(store.getState().worked?.movement.engagements[0]?.distance).toBeCloseTo(30.2, 3);
    expect(backlash(store)).toBeGreaterThan(before ?? 0);
    expect(store.getState().instrument).toBe(file);
  });

  it("gives at every step what working everything out from the file with those places gives", async () => {
    const { store, actions } = await bench();
    actions.takeUp("B");
    for (const y of [1, 2, -3]) {
      actions.moveTo({ x: 29, y });
      const { drag, worked } = store.getState();
      expect(worked?.sheet).toEqual(examine(workOut(withPlaces(SLIPWAY, drag!.places)), { all: false }));
    }
  });

  it("is one step with a name once kept, however many moves it took", async () => {
    const { store, actions } = await bench();
    actions.takeUp("B");
    for (let i = 1; i <= 20; i++) actions.moveTo({ x: 30, y: i / 10 });
    actions.keep();
    expect(store.getState().history.past.map((s) => s.says)).toEqual(["B moved"]);
    actions.undo();
    expect(store.getState().instrument).toEqual(SLIPWAY);
    actions.redo();
    expect(arborAt(store, "B")?.y).not.toBe(0);
  });

  it("leaves no trace once put back", async () => {
    const { store, actions } = await bench();
    const before = store.getState().worked?.sheet;
    actions.takeUp("B");
    actions.moveTo({ x: 30, y: 3 });
    actions.putBack();
    expect(store.getState().worked?.sheet).toEqual(before);
    expect(store.getState().history.past).toEqual([]);
  });

  it("in gear keeps the arbor's distances", async () => {
    const { store, actions } = await bench();
    actions.takeUp("B");
    actions.moveTo({ x: 27, y: 9 });
    expect(store.getState().worked?.movement.engagements[0]?.distance).toBeCloseTo(30, 3);
  });

  it("is refused in words for an arbor whose place is not the maker's to choose", async () => {
    const { store, actions } = await bench();
    actions.open({ ...SLIPWAY, arbors: SLIPWAY.arbors.map((a) => (a.id === "B" ? { ...a, measured: { x: 30, y: 0 } } : a)) }, null);
    actions.takeUp("B");
    expect(store.getState().drag).toBeNull();
    expect(store.getState().saying).toBe("The hole of B is drilled and measured; it stands where it came.");
  });
});

describe("an examination that takes longer than half a frame", () => {
  it("goes elsewhere: the sheet before stands, marked, until the answer comes", async () => {
    const { store, actions, asked } = await bench(20);
    const before = store.getState().worked?.sheet;
    actions.run(plantArbor, { arbor: "B", x: 30.4, y: 0 });
    expect(store.getState().worked).toMatchObject({ examined: "behind", sheet: before });
    expect(arborAt(store, "B")?.x).toBe(30.4);
    asked[0]?.give(examineWhole(asked[0].question));
    await settled();
    expect(store.getState().worked?.examined).toBe("now");
    expect(store.getState().worked?.sheet).toEqual(examine(workOut(store.getState().instrument!), { all: false }));
  });
});

describe("a cure", () => {
  it("that the examiner offers cures the finding in one step that can be undone", async () => {
    const { store, actions } = await bench();
    actions.open({ ...SLIPWAY, frame: { ...SLIPWAY.frame, pillars: [{ id: "P1", x: 44, y: 12, diameter: 8, from: 0, to: 30 }] } }, null);
    const found = store.getState().worked?.sheet.findings.find((f) => f.code === "gap" && f.severity === "foul" && f.remedies.length > 0);
    expect(found).toBeDefined();
    actions.chooseFinding(found!);
    actions.cure(found!.remedies[0]!);
    const after = store.getState();
    expect(after.history.past.length).toBe(1);
    expect(after.worked?.sheet.findings.filter((f) => findingKey(f) === findingKey(found!) && f.severity === "foul")).toEqual([]);
  });
});
