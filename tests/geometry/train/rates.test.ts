// Rates of simple trains, epicyclics, locked rings and couplings. Where a figure is published its source stands beside it.
import { describe, expect, it } from "vitest";
import type { Coupling, Instrument } from "../../../geometry/instrument.ts";
import { writeRatio } from "../../../geometry/numeric/ratio.ts";
import { workOut } from "../../../geometry/workout.ts";
import { arbor, gear, instrument, pin, pipeOn, ratchet, slot, studOn, wheel } from "./made.ts";

const rates = (of: Instrument): Record<string, string | null> =>
  Object.fromEntries(workOut(of).arbors.map((a) => [a.id, a.rate === null ? (a.bound ? "bound" : null) : writeRatio(a.rate)]));
const binds = (of: Instrument) => workOut(of).binds.map((b) => ({ engagements: b.engagements, because: b.because }));

const post = (id: string, parts: Parameters<typeof arbor>[1] = []) => arbor(id, parts, { x: 0, y: 0, fixed: true });
const at = { x: 0, y: 0 };

describe("rates of plain trains", () => {
  it("[TRAIN1] an outside pair turns the other way round, an annulus the same way, and the input turns once", () => {
    const plain = instrument([arbor("A", [wheel("a", 40)]), arbor("B", [wheel("b", 45)]), arbor("R", [wheel("r", 90, { internal: true })])], [gear("a", "b"), gear("b", "r")]);
    expect(rates(plain)).toEqual({ A: "1", B: "-8/9", R: "-4/9" });
  });

  it("[TRAIN1] which of a pair is called the driver does not matter, and the input may be anywhere", () => {
    const arbors = [arbor("A", [wheel("a", 40)]), arbor("B", [wheel("b", 45)])];
    expect(rates(instrument(arbors, [gear("b", "a")]))).toEqual({ A: "1", B: "-8/9" });
    expect(rates(instrument(arbors, [gear("a", "b")], { input: "B" }))).toEqual({ A: "-9/8", B: "1" });
  });

  it("[TRAIN2] a pipe turns free of what it rides on, and what nothing drives has no rate and is not bound", () => {
    const loose = instrument([arbor("A", []), arbor("P", [wheel("p", 20)], pipeOn("A")), arbor("Q", [wheel("q", 30)])], [gear("p", "q")]);
    expect(rates(loose)).toEqual({ A: "1", P: null, Q: null });
  });

  it("[TRAIN3] a fixed arbor stands at 0 whatever it rides on, and on the frame what meshes with a fixed wheel stands still", () => {
    const still = instrument([arbor("A", []), post("F", [wheel("f", 20)]), arbor("W", [wheel("w", 20)]), arbor("V", [wheel("v", 20)])], [gear("f", "w"), gear("w", "v"), gear("v", "f")]);
    expect(rates(still)).toEqual({ A: "1", F: "0", W: "0", V: "0" });
    expect(binds(still)).toEqual([]);
    const carried = instrument([arbor("C", [], at), arbor("S", [wheel("s", 10)], { ...studOn("C", 20), fixed: true })], []);
    expect(rates(carried)).toEqual({ C: "1", S: "0" });
  });
});

describe("published and textbook epicyclics", () => {
  const sun = (more = {}) => arbor("S", [wheel("s", 16)], { ...at, ...more });
  const planet = arbor("P", [wheel("p", 16)], studOn("C", 16));
  const ring = (more = {}) => arbor("R", [wheel("r", 48, { internal: true })], { ...at, ...more });
  const gears = [gear("s", "p"), gear("p", "r")];

  it("[TRAIN4] planetary 16, 16, 48 with the ring fixed: the carrier turns at a quarter of the sun (SDP/SI handbook T-117, table 13-1)", () => {
    expect(rates(instrument([sun(), arbor("C", [], at), planet, ring({ fixed: true })], gears, { input: "S" })).C).toBe("1/4");
  });

  it("[TRAIN4] solar, the sun fixed: the carrier turns at three quarters of the ring (same handbook, from memory)", () => {
    expect(rates(instrument([sun({ fixed: true }), arbor("C", [], at), planet, ring()], gears, { input: "R" })).C).toBe("3/4");
  });

  it("[TRAIN4] star, the carrier fixed: the ring turns at minus a third of the sun (same handbook, from memory)", () => {
    const star = instrument([sun(), arbor("C", [], { ...at, fixed: true }), planet, ring()], gears, { input: "S" });
    expect(rates(star).R).toBe("-1/3");
    expect(workOut(star).engagements.map((e) => e.carrier)).toEqual([null, null]);
  });

  it("[TRAIN4] Willis's formula (n − a)/(m − a) = e holds in the frame of the arm (MacCord, Scientific American Supplement 1884, quoting Willis)", () => {
    const made = workOut(instrument([sun(), arbor("C", [], at), planet, ring({ fixed: true })], gears, { input: "S" }));
    const [m, a, , n] = made.arbors.map((w) => w.rate);
    expect(n!.sub(a!).div(m!.sub(a!)).toFraction()).toBe("-1/3");
    expect(made.engagements.map((e) => e.carrier)).toEqual([1, 1]);
  });

  it("[TRAIN4] Ferguson's paradox: 20 fixed, an idler, loose wheels of 21, 20 and 19 turn +1/21, 0 and −1/19 (H. T. Brown, Five Hundred and Seven Mechanical Movements, no. 504)", () => {
    const paradox = instrument([
      post("F", [wheel("f", 20)]), arbor("C", [], at), arbor("I", [wheel("i", 20), wheel("j", 20)], studOn("C", 20)),
      ...[21, 20, 19].map((n) => arbor(`L${n}`, [wheel(`l${n}`, n)], studOn("C", 40))),
    ], [gear("f", "i"), ...[21, 20, 19].map((n) => gear("j", `l${n}`))], { input: "C" });
    expect(rates(paradox)).toMatchObject({ L21: "1/21", L20: "0", L19: "-1/19" });
    expect(binds(paradox)).toEqual([]);
  });

  it("[TRAIN4] a differential of two equal sides turns its carrier at their mean (textbook, from memory)", () => {
    // Two suns of 20, two planets in mesh with one another and each with its own sun: the flat form of a differential.
    const side = (p: number, q: number) => instrument([
      arbor("M", [wheel("m1", 10 * p), wheel("m2", 10 * Math.abs(q))], { x: 200, y: 0 }),
      arbor("S", [wheel("s", 20), wheel("s1", 10)], at), arbor("T", [wheel("t", 20), wheel("t1", 10, { internal: q < 0 })], at),
      arbor("C", [], at), arbor("P", [wheel("p", 20), wheel("pq", 20)], studOn("C", 20)), arbor("Q", [wheel("q", 20), wheel("qp", 20)], studOn("C", 20, 60)),
    ], [gear("m1", "s1"), gear("m2", "t1"), gear("s", "p"), gear("pq", "qp"), gear("q", "t")], { input: "M" });
    expect(rates(side(1, 1)).C).toBe("-1");
    expect(rates(side(1, -1)).C).toBe("0");
    expect(rates(side(10, 4)).C).toBe("-7");
  });

  it("[TRAIN4] wheels on one carrier but about different studs turn against it; a wheel of the carrier itself locks its planet to it", () => {
    const locked = instrument([arbor("C", [wheel("c", 30)], at), arbor("P", [wheel("p", 10)], studOn("C", 20))], [gear("c", "p")], { input: "C" });
    expect(rates(locked)).toEqual({ C: "1", P: "1" });
    expect(binds(locked)).toEqual([]);
  });

  it("[TRAIN5] arbors that stand in line are one axis, riding or not, and a planet may be carried on a carried stud", () => {
    const nested = instrument([
      post("F", [wheel("f", 30)]), arbor("C", [], at), arbor("P", [wheel("p", 15)], studOn("C", 22.5)),
      arbor("N", [wheel("n", 10)], pipeOn("P")), arbor("K", [wheel("k", 10)], studOn("P", 10, 90)),
    ], [gear("f", "p"), gear("n", "k")], { input: "C" });
    expect(rates(nested)).toEqual({ F: "0", C: "1", P: "3", N: null, K: null });
    expect(workOut(nested).engagements.map((e) => [e.carrier, e.steadyDistance])).toEqual([[1, true], [2, true]]);
  });
});

describe("what binds", () => {
  it("[TRAIN6] three outside wheels in a ring lock one another, and what hangs on them is bound too", () => {
    const locked = instrument([arbor("A", [wheel("a", 20)]), arbor("B", [wheel("b", 30)]), arbor("C", [wheel("c", 25)]), arbor("D", [wheel("d", 12)]), arbor("E", [])], [gear("a", "b"), gear("b", "c"), gear("c", "a"), gear("c", "d")]);
    expect(rates(locked)).toEqual({ A: "bound", B: "bound", C: "bound", D: "bound", E: null });
    expect(binds(locked)).toEqual([{ engagements: ["a-b", "b-c", "c-a"], because: "ring" }]);
  });

  it("[TRAIN6] a ring whose two ways round agree turns", () => {
    const agrees = instrument([arbor("A", [wheel("a", 20), wheel("a2", 40)]), arbor("B", [wheel("b", 30), wheel("b2", 60)])], [gear("a", "b"), gear("a2", "b2")]);
    expect(rates(agrees)).toEqual({ A: "1", B: "-2/3" });
    expect(binds(agrees)).toEqual([]);
  });

  it("[TRAIN6] the shortest ring is the one named", () => {
    const wide = instrument(
      ["A", "B", "C", "D", "E"].map((id) => arbor(id, [wheel(`${id}1`, 20), wheel(`${id}2`, 24)])),
      [gear("A1", "B1"), gear("B1", "C1"), gear("C1", "D1"), gear("D1", "E1"), gear("E1", "A1"), gear("C2", "E1", { id: "short" })],
    );
    expect(binds(wide)[0]).toEqual({ engagements: ["C1-D1", "D1-E1", "short"], because: "ring" });
  });

  it("[TRAIN7] the carrier of a locked ring of planets still turns, and so does a sun in mesh with them, as one block", () => {
    const block = instrument([
      arbor("C", [], at), arbor("S", [wheel("s", 20)], at), ...[0, 120, 240].map((a, i) => arbor(`P${i}`, [wheel(`p${i}`, 20)], studOn("C", 20, a))),
    ], [gear("p0", "p1"), gear("p1", "p2"), gear("p2", "p0"), gear("s", "p0")], { input: "C" });
    expect(rates(block)).toEqual({ C: "1", S: "1", P0: "bound", P1: "bound", P2: "bound" });
    expect(binds(block)).toEqual([{ engagements: ["p0-p1", "p1-p2", "p2-p0"], because: "ring" }]);
  });

  it("[TRAIN7] the free side of a differential whose other side is locked keeps its own rate", () => {
    const half = instrument([
      arbor("C", [], at), arbor("S", [wheel("s", 20), wheel("s2", 30)], at), arbor("T", [wheel("t", 20)], at),
      arbor("P", [wheel("p", 20), wheel("pq", 20)], studOn("C", 20)), arbor("Q", [wheel("q", 20), wheel("qp", 20)], studOn("C", 20, 60)),
      arbor("X", [wheel("x", 20), wheel("x2", 20)]),
    ], [gear("s", "p"), gear("pq", "qp"), gear("q", "t"), gear("s", "x"), gear("s2", "x2")], { input: "C" });
    expect(rates(half)).toMatchObject({ C: "1", T: "2", S: "bound", X: "bound" });
  });

  it("[TRAIN8] on a carrier all fixed wheels are one: a planet in mesh with two of different counts holds its carrier", () => {
    const held = instrument([
      post("F", [wheel("f", 20)]), post("G", [wheel("g", 30)]), arbor("C", [], at), arbor("P", [wheel("p", 20), wheel("q", 20)], studOn("C", 20)),
    ], [gear("f", "p"), gear("g", "q")], { input: "C" });
    expect(rates(held)).toEqual({ F: "0", G: "0", C: "bound", P: "bound" });
    expect(binds(held)).toEqual([{ engagements: ["f-p", "g-q"], because: "fixed" }]);
  });

  it("[TRAIN9] a train from the input to a fixed wheel is named from end to end, and nothing of it turns", () => {
    const stuck = instrument([arbor("A", [wheel("a", 20)]), arbor("B", [wheel("b", 20)]), post("F", [wheel("f", 20)]), arbor("D", [wheel("d", 20)])], [gear("a", "b"), gear("b", "f"), gear("a", "d")]);
    expect(rates(stuck)).toEqual({ A: "bound", B: "bound", F: "0", D: "bound" });
    expect(binds(stuck)).toEqual([{ engagements: ["a-b", "b-f"], because: "fixed" }]);
  });

  it("[TRAIN9] trains that contradict one another through a carrier are named without what only leads to them", () => {
    const contrary = instrument([
      arbor("A", [wheel("a", 20)], { x: -90, y: 0 }), arbor("M", [wheel("m", 20), wheel("m1", 20), wheel("m2", 30), wheel("m3", 40)], { x: 90, y: 0 }),
      arbor("S", [wheel("s", 20), wheel("s1", 20)], at), arbor("C", [wheel("c1", 20)], at), arbor("P", [wheel("p", 20)], studOn("C", 20)),
      arbor("R", [wheel("r", 60, { internal: true }), wheel("r1", 20)], at),
    ], [gear("a", "m"), gear("m1", "s1"), gear("m2", "c1"), gear("m3", "r1"), gear("s", "p"), gear("p", "r")], { input: "A" });
    expect(binds(contrary)).toEqual([{ engagements: ["m1-s1", "m2-c1", "m3-r1", "s-p", "p-r"], because: "train" }]);
    expect(new Set(Object.values(rates(contrary)))).toEqual(new Set(["bound"]));
  });

  it("[TRAIN9] an input that is fixed contradicts what it is in mesh with", () => {
    const stuck = instrument([post("F", [wheel("f", 20)]), arbor("B", [wheel("b", 20)])], [gear("f", "b")]);
    expect(binds(stuck)).toEqual([{ engagements: ["f-b"], because: "input" }]);
    expect(rates(stuck)).toEqual({ F: "0", B: "0" });
    expect(binds(instrument([post("F", [])], []))).toEqual([]);
  });

  it("[TRAIN10] a pair whose axes change their distance binds, unless the carrier does not turn", () => {
    const aside = (drive: boolean) => instrument([
      arbor("A", [wheel("a", 20)], { x: -40, y: 0 }), arbor("C", drive ? [wheel("c", 20)] : [], at), arbor("P", [wheel("p", 20)], studOn("C", 20)), arbor("W", [wheel("w", 20)], { x: 40, y: 0 }),
      arbor("V", [wheel("v", 20)], { x: 60, y: 0 }),
    ], [...(drive ? [gear("a", "c")] : []), gear("p", "w"), gear("w", "v")]);
    expect(rates(aside(true))).toEqual({ A: "1", C: "-1", P: "bound", W: "bound", V: "bound" });
    expect(binds(aside(true))).toEqual([{ engagements: ["p-w"], because: "distance" }]);
    expect(workOut(aside(true)).engagements.map((e) => e.steadyDistance)).toEqual([true, false, true]);
    expect(binds(aside(false))).toEqual([]);
    expect(rates({ ...aside(false), input: { arbor: "P", days: 1, sense: "clockwise" } })).toMatchObject({ P: "1", W: "-1", V: "1", C: null });
  });
});

describe("couplings", () => {
  const two = (coupling: Coupling, more = {}) => instrument([
    arbor("A", [wheel("a", 20), ratchet("ra")], at), arbor("B", [wheel("b", 30), ratchet("rb")], { ...pipeOn("A") }),
    arbor("D", [wheel("d", 15)]),
  ], [gear("b", "d")], { couplings: [coupling], ...more });

  it("[TRAIN11] friction takes along what nothing else drives, either way, and then the wheels in mesh with it", () => {
    expect(rates(two({ kind: "friction", between: ["A", "B"] }))).toEqual({ A: "1", B: "1", D: "-2" });
    expect(rates(two({ kind: "friction", between: ["B", "A"] }, { input: "D" }))).toEqual({ A: "-1/2", B: "-1/2", D: "1" });
  });

  it("[TRAIN11] a coupling between two driven arbors gives nothing and binds nothing", () => {
    const both = instrument([arbor("A", [wheel("a", 20)], at), arbor("M", [wheel("m", 40), wheel("n", 20)]), arbor("B", [wheel("b", 30)], pipeOn("A"))], [gear("a", "m"), gear("n", "b")], { couplings: [{ kind: "friction", between: ["A", "B"] }] });
    expect(rates(both)).toEqual({ A: "1", M: "-1/2", B: "1/3" });
    expect(binds(both)).toEqual([]);
  });

  it("[TRAIN12] a click takes the ratchet along where it would else turn the held way, and lets it pass the other way", () => {
    const click = (passes: "clockwise" | "anticlockwise", sense: "clockwise" | "anticlockwise") =>
      rates(two({ kind: "click", ratchet: "rb", on: "A", passes }, { sense }));
    // The click goes round clockwise: against it a standing ratchet goes anticlockwise, which is held if only clockwise passes.
    expect(click("clockwise", "clockwise").B).toBe("1");
    expect(click("anticlockwise", "clockwise").B).toBeNull();
    expect(click("clockwise", "anticlockwise").B).toBeNull();
    expect(click("anticlockwise", "anticlockwise").B).toBe("1");
  });

  it("[TRAIN12] a ratchet takes the click's arbor along where it turns the held way", () => {
    const click = (passes: "clockwise" | "anticlockwise") => rates(two({ kind: "click", ratchet: "ra", on: "B", passes })).B;
    expect(click("anticlockwise")).toBe("1");
    expect(click("clockwise")).toBeNull();
  });

  it("[TRAIN12] a click on the frame drives nothing, and one on a carried stud holds for its carrier", () => {
    const frame = instrument([arbor("A", []), post("F"), arbor("R", [ratchet("r")], at)], [], { couplings: [{ kind: "click", ratchet: "r", on: "F", passes: "clockwise" }] });
    expect(rates(frame).R).toBeNull();
    const stud = instrument([arbor("A", [], at), arbor("K", [], studOn("A", 15)), arbor("R", [ratchet("r")], pipeOn("A"))], [], { couplings: [{ kind: "click", ratchet: "r", on: "K", passes: "clockwise" }] });
    expect(rates(stud).R).toBe("1");
  });

  const pinned = (radius: number, apart: number, more = {}) => instrument([
    arbor("A", [pin("n", radius)], at), arbor("B", [slot("s"), wheel("b", 20)], { x: apart, y: 0 }), arbor("D", [wheel("d", 40)]),
  ], [gear("b", "d")], { couplings: [{ kind: "pin and slot", driver: "n", driven: "s" }], ...more });

  it("[TRAIN13] a pin whose circle encloses the slot's axis gives its own rate as the mean, one that does not only swings it", () => {
    expect(rates(pinned(10, 1))).toEqual({ A: "1", B: "1", D: "-1/2" });
    expect(rates(pinned(10, 12))).toEqual({ A: "1", B: "0", D: "0" });
    // Whichever of the two drives.
    const fromSlot = { input: "B", couplings: [{ kind: "pin and slot", driver: "s", driven: "n" }] };
    expect(rates(pinned(10, 1, fromSlot))).toEqual({ A: "1", B: "1", D: "-1/2" });
  });

  it("[TRAIN13] a pin and slot on one carrier counts against the carrier, and binds where its axes part", () => {
    const carried = (slotOn: object) => instrument([
      arbor("C", [], at), arbor("A", [pin("n", 10), wheel("a", 20)], studOn("C", 20)), post("F", [wheel("f", 20)]), arbor("B", [slot("s")], slotOn),
    ], [gear("f", "a")], { input: "C", couplings: [{ kind: "pin and slot", driver: "n", driven: "s" }] });
    expect(rates(carried(studOn("C", 21)))).toMatchObject({ A: "2", B: "2" });
    expect(rates(carried(studOn("C", 60)))).toMatchObject({ A: "2", B: "1" });
    const parted = carried({ x: 21, y: 0 });
    expect(rates(parted).B).toBe("bound");
    expect(binds(parted)).toEqual([{ engagements: ["n-s"], because: "distance" }]);
  });

  it("[TRAIN13] a pin and slot binds where its axes part, also where a coupling after it takes along what parts them", () => {
    const late = instrument([arbor("A", [pin("n", 10)], { x: -30, y: 0 }), post("F"), arbor("K", [], pipeOn("F")), arbor("B", [slot("s"), wheel("b", 20)], studOn("K", 28)), arbor("D", [wheel("d", 40)], pipeOn("F"))],
      [gear("b", "d")], { couplings: [{ kind: "pin and slot", driver: "n", driven: "s" }, { kind: "friction", between: ["A", "K"] }] });
    expect(rates(late)).toMatchObject({ A: "1", K: "1", B: "bound", D: "bound" });
    expect(binds(late)).toEqual([{ engagements: ["n-s"], because: "distance" }]);
  });
});
