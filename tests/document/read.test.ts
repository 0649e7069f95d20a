// Reading: whole, or refused whole with every fault. The paths, and most of the words, are the contract's.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readInstrument, writeInstrument } from "../../src/document/index.ts";
import type { Fault } from "../../src/document/index.ts";
import { fullest, leavesOf, put, smallest } from "./files.ts";
import type { Loose } from "./files.ts";

const read = (file: unknown) => readInstrument(typeof file === "string" ? file : JSON.stringify(file));
const faults = (file: unknown): Fault[] => {
  const r = read(file);
  return r.ok ? [] : r.refused;
};
const paths = (file: unknown) => faults(file).map((f) => f.path);
/** The smallest file with one change. */
const spoilt = (change: (file: Loose) => void, from: () => Loose = smallest) => {
  const file = from();
  change(file);
  return file;
};
/** The one fault that a change brings. */
const only = (change: (file: Loose) => void, from: () => Loose = smallest): Fault => {
  const all = faults(spoilt(change, from));
  expect(all.length, JSON.stringify(all)).toBe(1);
  return all[0] as Fault;
};

describe("a file as a whole", () => {
  it("[READ1] is taken as it stands when nothing is wrong", () => {
    const r = read(smallest());
    expect(r).toEqual({ ok: true, instrument: smallest(), unknown: [] });
    expect(read(fullest())).toEqual({ ok: true, instrument: fullest(), unknown: [] });
  });

  it("[READ1] is refused with every fault at once, each with its path, what stands there and what was expected", () => {
    const file = spoilt((f) => {
      f.frame.plates[1].thickness = "2,5";
      f.arbors[0].parts[0].teeth = 2;
      f.arbors[1].x = 4;
      f.engagements.push({ driver: "A1", driven: "K9" });
      f.engagements.push({ driver: "A2", driven: "B1" });
      f.arbors.push({ id: "case", diameter: 2, foot: 0, head: 4, parts: [] });
      f.arbors.push({ id: "H", diameter: 2, foot: 0, head: 4, parts: [], rides: { on: "J", radius: 0, angle: 0 } });
      f.arbors.push({ id: "J", diameter: 2, foot: 0, head: 4, parts: [], rides: { on: "H", radius: 0, angle: 0 } });
      f.input.sense = "sunwise";
    });
    expect(faults(file).sort((a, b) => (a.path < b.path ? -1 : 1))).toEqual([
      { path: "arbors[0].parts[0].teeth", found: "2", expected: "a whole number from 3 to 2,000" },
      { path: "arbors[1]", found: "x without y", expected: "both x and y, or neither" },
      { path: "arbors[2].id", found: '"case"', expected: "an id of its own; case is taken" },
      { path: "arbors[4].rides.on", found: '"H"', expected: "no circle: H rides on J, and J on H" },
      { path: "engagements[1].driven", found: '"K9"', expected: "the id of a part; nothing is called K9" },
      { path: "engagements[2].driver", found: '"A2"', expected: "a part with teeth; A2 is a pointer" },
      { path: "frame.plates[1].thickness", found: '"2,5"', expected: "a number in mm, such as 2.5" },
      { path: "input.sense", found: '"sunwise"', expected: "clockwise or anticlockwise" },
    ]);
  });

  it("[READ2] that is not JSON is refused with the place where it breaks", () => {
    const at = (text: string) => faults(text)[0];
    expect(at('{\n  "name": NaN }')).toEqual({ path: "", found: "NaN at line 2, column 11", expected: "a value" });
    expect(at("")).toMatchObject({ path: "", found: "the end of the file at line 1, column 1" });
    expect(at("[1,]")).toMatchObject({ found: "] at line 1, column 4", expected: "a value" });
    expect(at("{'a': 1}")).toMatchObject({ found: "' at line 1, column 2", expected: "a name in double quotes or }" });
    expect(at('{"a": 1,}')).toMatchObject({ found: "} at line 1, column 9", expected: "a name in double quotes" });
    expect(at('{"a" 1}')).toMatchObject({ found: "1 at line 1, column 6", expected: "a colon" });
    expect(at('{"a": 2,5}')).toMatchObject({ found: "5 at line 1, column 9", expected: "a name in double quotes" });
    expect(at('{"a": 01}')).toMatchObject({ found: "01 at line 1, column 7", expected: "a number such as 2.5, or true, false or null" });
    expect(at('{"a": 1}}')).toMatchObject({ found: "} at line 1, column 9", expected: "nothing more" });
    expect(at('{"a": "open')).toMatchObject({ found: '" at line 1, column 7', expected: "text on one line, closed by a double quote" });
    expect(at('{"a": "\\x"}')).toMatchObject({ expected: "text on one line, closed by a double quote" });
    for (const text of ["null", "[]", "3", '"instrument"']) expect(at(text)).toMatchObject({ path: "", expected: "an object" });
  });

  it("[READ2] breaks for us exactly where it breaks for the platform's own parser", () => {
    const bits = fc.constantFrom("{", "}", "[", "]", ",", ":", '"a"', '"', "1", "-", "0", ".5", "e3", "true", "nul", " ", "\n", "\\", "\\u00e9", "\t");
    fc.assert(fc.property(fc.array(bits, { maxLength: 12 }).map((b) => b.join("")), (text) => {
      const sound = (() => { try { JSON.parse(text); return true; } catch { return false; } })();
      const says = faults(text)[0]?.found ?? "";
      expect(/ at line \d+, column \d+$/.test(says)).toBe(!sound);
    }), { seed: 20260105, numRuns: 2000 });
  });

  it("[READ2] may begin with a byte order mark", () => {
    expect(read(`\uFEFF${JSON.stringify(smallest())}`).ok).toBe(true);
  });

  it("[READ3] of more than 5 MiB, or nested deeper than anything can be, is refused unread", () => {
    const padded = (bytes: number) => { const text = JSON.stringify(smallest()); return text + " ".repeat(bytes - text.length); };
    expect(read(padded(5 * 1024 * 1024)).ok).toBe(true);
    expect(faults(padded(5 * 1024 * 1024 + 1))).toEqual([{ path: "", found: "a file of more than 5 MiB", expected: "at most 5 MiB" }]);
    expect(paths(spoilt((f) => { f.notes = "é".repeat(3_000_000); }))).toEqual([""]);
    expect(faults("[".repeat(4_000_000))[0]).toMatchObject({ path: "", found: "lists and objects 4,000,000 deep" });
    expect(faults('{"a":'.repeat(500_000))[0]).toMatchObject({ path: "" });
    expect(read(spoilt((f) => { f.deep = JSON.parse("[".repeat(63) + "]".repeat(63)); })).ok).toBe(true);
    expect(paths(spoilt((f) => { f.deep = JSON.parse("[".repeat(64) + "]".repeat(64)); }))).toEqual([""]);
  });

  it("[READ3] holds at most 2,000 arbors and 20,000 parts", () => {
    const arbors = (n: number, parts: number) => spoilt((f) => {
      f.arbors = Array.from({ length: n }, (_, i) => ({ id: `A${i}`, diameter: 2, foot: 0, head: 4,
        parts: Array.from({ length: parts }, (_, k) => ({ id: `A${i}.${k}`, kind: "collet", diameter: 4, z: 1, thickness: 1 })) }));
      f.engagements = [];
      f.input.arbor = "A0";
    });
    expect(read(arbors(2000, 0)).ok).toBe(true);
    expect(faults(arbors(2001, 0))).toContainEqual({ path: "arbors", found: "a list of 2,001", expected: "at most 2,000" });
    expect(read(arbors(100, 200)).ok).toBe(true);
    expect(faults(arbors(100, 201))).toEqual([{ path: "arbors", found: "20,100 parts", expected: "at most 20,000 parts" }]);
  });

  it("[READ4] of a newer format is refused by name, and for nothing else", () => {
    expect(faults({ endshake: 2 })).toEqual([{ path: "endshake", found: "2", expected: "format 1; format 2 is newer than this program" }]);
    for (const other of [0, "1", null, -1]) expect(only((f) => { f.endshake = other; }).path).toBe("endshake");
    expect(paths({})).toContain("endshake");
  });
});

describe("a field", () => {
  it("[READ5] that is missing, or of the wrong type, is told", () => {
    expect(only((f) => { delete f.arbors[0].diameter; })).toEqual({ path: "arbors[0].diameter", found: "nothing", expected: "a number in mm" });
    expect(only((f) => { f.name = 3; })).toEqual({ path: "name", found: "3", expected: "text" });
    expect(only((f) => { f.notes = null; })).toEqual({ path: "notes", found: "null", expected: "text" });
    expect(only((f) => { f.arbors[0].steady = "yes"; })).toMatchObject({ expected: "true or false" });
    expect(only((f) => { f.frame.pillars = {}; })).toMatchObject({ path: "frame.pillars", found: "an object", expected: "a list" });
    expect(only((f) => { f.arbors[0].parts[0] = [1, 2]; f.engagements = []; })).toMatchObject({ found: "[1, 2]", expected: "an object" });
    expect(only((f) => { f.arbors[1].parts[0].kind = "pinon"; })).toMatchObject({ path: "arbors[1].parts[0].kind", found: '"pinon"' });
    expect(only((f) => { f.arbors[1].parts[0].kind = "constructor"; })).toMatchObject({ path: "arbors[1].parts[0].kind" });
    expect(only((f) => { f.arbors[1].parts[0].teeth = 12; delete f.arbors[1].parts[0].leaves; })).toMatchObject({ path: "arbors[1].parts[0].leaves", found: "nothing" });
  });

  it("[READ5] wherever it stands is told by its own path when something else stands there", () => {
    const leaves = leavesOf(fullest());
    expect(leaves.length).toBeGreaterThan(190);
    for (const { path, keys } of leaves)
      for (const wrong of [{}, null]) expect(paths(spoilt((f) => put(f, keys, wrong), fullest)), path).toContain(path);
  });

  it("[READ5] that is taken away is told by its own path, or was not needed, or stood with another", () => {
    const gone = leavesOf(fullest()).filter(({ keys }) => typeof keys[keys.length - 1] === "string");
    const missed = gone.filter(({ keys, path }) => {
      const told = paths(spoilt((f) => put(f, keys, undefined), fullest));
      // A thing without its name leaves others that refer to it behind.
      if (told.length > 0 && !told.includes(path)) expect(`${path}: ${told.join()}`).toMatch(/^(arbors|dials)\[\d\]\.[xy]: (arbors|dials)\[\d\]$/);
      return told.length > 0;
    }).map(({ path }) => path.replace(/\[\d+\]/g, "[]"));
    expect([...new Set(missed)].length).toBeGreaterThan(70);
    for (const optional of ["notes", "arbors[].name", "arbors[].steady", "arbors[].endshake", "practice.planGap", "displays[].epoch", "cutters[].from", "engagements[].ease"])
      expect(missed).not.toContain(optional);
  });

  it("[READ5] of counts is a whole number from 3 to 2,000", () => {
    for (const teeth of [3, 2000]) expect(read(spoilt((f) => { f.arbors[0].parts[0].teeth = teeth; })).ok).toBe(true);
    for (const teeth of [2, 2001, 12.5, -20, "60", null, true])
      expect(only((f) => { f.arbors[0].parts[0].teeth = teeth; })).toMatchObject({ path: "arbors[0].parts[0].teeth", expected: "a whole number from 3 to 2,000" });
  });

  it("[READ5] of lengths is finite and within 10,000 mm either way", () => {
    const x = (text: string) => JSON.stringify(smallest()).replace('"id":"A","x":0', `"id":"A","x":${text}`);
    expect(read(x("-10000")).ok && read(x("1e4")).ok).toBe(true);
    expect(faults(x("10000.001"))).toEqual([{ path: "arbors[0].x", found: "10000.001", expected: "from −10,000 to 10,000 mm" }]);
    expect(faults(x("1e999"))).toEqual([{ path: "arbors[0].x", found: "a number too great to hold", expected: "from −10,000 to 10,000 mm" }]);
    expect(faults(x("-1e999"))[0]?.path).toBe("arbors[0].x");
  });

  it("[READ5] of size is more than nothing", () => {
    for (const diameter of [0, -3]) expect(only((f) => { f.arbors[0].diameter = diameter; })).toMatchObject({ expected: "more than 0, at most 10,000 mm" });
    expect(only((f) => { f.arbors[0].parts[0].thickness = -1; }).path).toBe("arbors[0].parts[0].thickness");
    expect(read(spoilt((f) => { f.arbors[0].parts[1].tail = 0; })).ok).toBe(true);
    expect(only((f) => { f.input.days = 0; }).path).toBe("input.days");
  });

  it("[READ6] agrees with those beside it", () => {
    expect(only((f) => { delete f.arbors[0].y; })).toEqual({ path: "arbors[0]", found: "x without y", expected: "both x and y, or neither" });
    expect(only((f) => { delete f.arbors[0].x; })).toMatchObject({ found: "y without x" });
    expect(only((f) => { f.arbors[0].head = -2; })).toEqual({ path: "arbors[0].head", found: "-2", expected: "above foot, which is at -2" });
    expect(only((f) => { f.frame.pillars[0].to = -1; }).path).toBe("frame.pillars[0].to");
    expect(only((f) => { f.frame.case = { insideDiameter: 90, floor: 0, rim: 0, wall: 1 }; }).path).toBe("frame.case.rim");
    expect(only((f) => { f.arbors[0].parts[0].internal = true; })).toMatchObject({ path: "arbors[0].parts[0].outsideDiameter", found: "nothing" });
    expect(only((f) => { f.practice = { backlash: [0.2, 0.05] }; })).toEqual({ path: "practice.backlash", found: "[0.2, 0.05]", expected: "the lesser first" });
    expect(only((f) => { f.frame.plates[0].outline = {}; })).toMatchObject({ path: "frame.plates[0].outline", expected: "one of circle, rectangle, polygon" });
    expect(only((f) => { f.frame.plates[0].outline.polygon = [[0, 0], [1, 0], [0, 1]]; })).toMatchObject({ found: "circle and polygon" });
    expect(only((f) => { f.frame.plates[1].outline.polygon.length = 2; }).path).toBe("frame.plates[1].outline.polygon");
    expect(only((f) => { f.frame.plates[1].outline.polygon[1] = [1]; }).path).toBe("frame.plates[1].outline.polygon[1]");
    expect(only((f) => { f.division.circles = [15, [16]]; }, fullest).path).toBe("division.circles[1]");
  });

  it("[READ7] that is not known is kept at every level, said, and need not be understood", () => {
    const file = spoilt((f) => {
      f.arbors[0].colour = "brass";
      f["a b"] = { c: 1 };
      f.arbors[0].parts[0]["tooth.load"] = [1, { deep: true }];
      f.frame.plates[0].outline.circle.z = 1;
      f.engagements[0].constructor = 4;
    });
    const r = read(file);
    expect(r).toEqual({ ok: true, instrument: file, unknown: [
      "frame.plates[0].outline.circle.z", 'arbors[0].parts[0]["tooth.load"]', "arbors[0].colour", "engagements[0].constructor", '["a b"]',
    ] });
    const text = JSON.stringify(smallest()).replace("{", '{"__proto__": {"polluted": 1}, ');
    const strange = read(text);
    expect(strange).toMatchObject({ ok: true, unknown: ["__proto__"] });
    expect(({} as Loose).polluted).toBe(undefined);
    expect(strange.ok && JSON.parse(writeInstrument(strange.instrument))).toEqual(JSON.parse(text));
    expect(faults(JSON.stringify(smallest()).replace("{", '{"far": [1e999], '))).toEqual([{ path: "far[0]", found: "a number too great to hold", expected: "a finite number" }]);
  });

  it("[READ7] given twice counts as it stands last", () => {
    const r = read(JSON.stringify(smallest()).replace('"name":', '"name":"first","name":'));
    expect(r.ok && r.instrument.name).toBe("Sluice counter");
  });

  it("[READ8] of plates or pillars may be left out where there are none", () => {
    const r = read(spoilt((f) => { f.frame = {}; }));
    expect(r.ok && r.instrument.frame).toEqual({ plates: [], pillars: [] });
  });
});

describe("ids", () => {
  it("[READ9] are 1 to 32 letters, digits, - _ or ., the first a letter or a digit", () => {
    const named = (id: unknown) => spoilt((f) => { f.arbors[1].id = id; });
    for (const id of ["1", "a".repeat(32), "B-1_x.y", "constructor", "toString", "hasOwnProperty"]) expect(read(named(id)).ok, id).toBe(true);
    for (const id of ["", "a".repeat(33), "_a", "-a", ".a", "a b", "é", "__proto__", "a\n", 7, null]) expect(paths(named(id))).toEqual(["arbors[1].id"]);
  });

  it("[READ9] are used once in the file, an engagement's own and its usual one included; case and input are taken", () => {
    const path = (change: (f: Loose) => void) => only(change).path;
    expect(path((f) => { f.arbors[1].id = "A"; })).toBe("arbors[1].id");
    expect(path((f) => { f.arbors[1].id = "A1"; })).toBe("arbors[1].id");
    expect(path((f) => { f.arbors[1].id = "back"; })).toBe("arbors[1].id");
    expect(path((f) => { f.frame.pillars[0].id = "front"; })).toBe("frame.pillars[0].id");
    expect(path((f) => { f.engagements[0].id = "B"; })).toBe("engagements[0].id");
    expect(path((f) => { f.displays = [{ id: "P1", name: "x", arbor: "A" }]; })).toBe("displays[0].id");
    expect(path((f) => { f.frame.pillars[0].id = "input"; })).toBe("frame.pillars[0].id");
    expect(only((f) => { f.engagements.push({ driver: "A1", driven: "B1" }); }))
      .toEqual({ path: "engagements[1]", found: '"A1-B1"', expected: "an id of its own; A1-B1 is already engagements[0]" });
    expect(read(spoilt((f) => { f.engagements.push({ id: "again", driver: "A1", driven: "B1" }); })).ok).toBe(true);
    expect(path((f) => { f.arbors[1].id = "A1-B1"; })).toBe("engagements[0]");
  });
});

describe("what refers to something", () => {
  it("[READ10] finds it, and of the right sort", () => {
    expect(only((f) => { f.input.arbor = "Z"; })).toEqual({ path: "input.arbor", found: '"Z"', expected: "the id of an arbor; nothing is called Z" });
    expect(only((f) => { f.input.arbor = "A1"; })).toMatchObject({ expected: "the id of an arbor; A1 is a part" });
    expect(only((f) => { f.engagements[0].driver = "A"; })).toMatchObject({ path: "engagements[0].driver", expected: "the id of a part; A is an arbor" });
    expect(only((f) => { f.engagements[0].driver = "__proto__"; }).path).toBe("engagements[0].driver");
    expect(only((f) => { f.arbors[3].pivots.foot.plate = "P1"; }, fullest)).toMatchObject({ path: "arbors[3].pivots.foot.plate", expected: "the id of a plate; P1 is a pillar" });
    expect(only((f) => { f.displays[0].against = "moon"; }, fullest).path).toBe("displays[0].against");
    expect(only((f) => { f.arbors[2].rides.on = "Q"; }, fullest).path).toBe("arbors[2].rides.on");
    expect(only((f) => { f.couplings[2].between = ["A", "Q"]; }, fullest).path).toBe("couplings[2].between[1]");
  });

  it("[READ10] does not suffer from a fault of what it refers to", () => {
    expect(paths(spoilt((f) => { f.arbors[0].parts[0].kind = "weel"; }))).toEqual(["arbors[0].parts[0].kind"]);
    expect(paths(spoilt((f) => { delete f.arbors[0].parts[0].teeth; }))).toEqual(["arbors[0].parts[0].teeth"]);
  });

  it("[READ11] as an engagement, joins parts with teeth on two arbors", () => {
    expect(only((f) => { f.engagements[0].driver = "A2"; })).toEqual({ path: "engagements[0].driver", found: '"A2"', expected: "a part with teeth; A2 is a pointer" });
    expect(only((f) => { f.arbors[0].parts[1] = { ...f.arbors[0].parts[0], id: "A3" }; f.engagements[0].driven = "A3"; }))
      .toEqual({ path: "engagements[0]", found: '"A1" and "A3"', expected: "parts on two arbors; both are on A" });
    expect(only((f) => { f.engagements[0].driven = "A1"; }).path).toBe("engagements[0]");
  });

  it("[READ11] as a coupling, joins what can be coupled", () => {
    expect(only((f) => { f.couplings[0].driver = "A1"; }, fullest)).toMatchObject({ path: "couplings[0].driver", expected: "the id of a pin or a slot; it is a wheel" });
    expect(only((f) => { f.couplings[0].driver = "E1"; f.couplings[0].driven = "D2"; }, fullest))
      .toMatchObject({ path: "couplings[0].driven", expected: "the id of a pin; it is a disc" });
    expect(only((f) => { f.arbors[4].parts[0].kind = "disc"; f.arbors[3].parts.push({ ...f.arbors[4].parts[0], kind: "slot", id: "D5" }); f.couplings[0].driven = "D5"; }, fullest))
      .toMatchObject({ path: "couplings[0]", found: '"D3" and "D5"' });
    expect(only((f) => { f.couplings[1].ratchet = "D2"; }, fullest).path).toBe("couplings[1].ratchet");
    const arm = (id: string) => ({ id, kind: "arm", length: 9, width: 2, angle: 0, z: 90, thickness: 1 });
    expect(only((f) => { f.couplings[1].pawl = "D4"; }, fullest)).toMatchObject({ path: "couplings[1].pawl", expected: "the id of an arm; it is a ratchet" });
    expect(only((f) => { f.arbors[0].parts.push(arm("A8")); f.couplings[1].pawl = "A8"; }, fullest)).toMatchObject({ path: "couplings[1].pawl", expected: "an arm on E; it is on A" });
    expect(only((f) => { f.couplings[1].kind = "spring"; }, fullest).path).toBe("couplings[1].kind");
    expect(only((f) => { f.couplings[2].between = ["A", "A"]; }, fullest).path).toBe("couplings[2].between");
  });

  it("[READ11] as an arbor that rides, never rides in a circle", () => {
    const riding = (pairs: readonly [string, string][]) => spoilt((f) => {
      for (const [id, on] of pairs) f.arbors.push({ id, diameter: 5, foot: 0, head: 9, rides: { on, radius: 0, angle: 0 }, parts: [] });
    });
    expect(read(riding([["C", "A"], ["D", "C"], ["E", "D"], ["F", "C"]])).ok).toBe(true);
    expect(faults(riding([["C", "C"]]))).toEqual([{ path: "arbors[2].rides.on", found: '"C"', expected: "an arbor other than itself" }]);
    expect(faults(riding([["C", "D"], ["D", "E"], ["E", "C"], ["F", "C"]])))
      .toEqual([{ path: "arbors[4].rides.on", found: '"C"', expected: "no circle: C rides on D, D on E, and E on C" }]);
    expect(paths(riding([["C", "D"], ["D", "C"], ["E", "F"], ["F", "E"]]))).toEqual(["arbors[3].rides.on", "arbors[5].rides.on"]);
    const ring = riding(Array.from({ length: 1900 }, (_, i): [string, string] => [`R${i}`, `R${(i + 1) % 1900}`]));
    expect(paths(ring)).toEqual(["arbors[1901].rides.on"]);
  });
});

describe("hostile files", () => {
  it("[READ1] never make it throw, and what is accepted is written back the same", () => {
    const values = fc.oneof(fc.jsonValue(), fc.constantFrom(0, -1, 1e308, "A", "A1", "case", "__proto__", [], {}, null, 2.5, "wheel"));
    fc.assert(fc.property(fc.array(fc.tuple(fc.nat(10_000), fc.nat(4), values), { maxLength: 3 }), (changes) => {
      const file = fullest();
      for (const [pick, up, value] of changes) {
        const leaves = leavesOf(file);
        const keys = leaves[pick % leaves.length]?.keys ?? [];
        put(file, keys.slice(0, Math.max(1, keys.length - up)), value);
      }
      const r = read(file);
      if (r.ok) expect(readInstrument(writeInstrument(r.instrument))).toEqual(r);
      else {
        expect(r.refused.length).toBeGreaterThan(0);
        for (const f of r.refused) expect([typeof f.path, f.found !== "", f.expected !== "", f.found.length < 120]).toEqual(["string", true, true, true]);
      }
    }), { seed: 20260104, numRuns: 1000 });
  });

  it("[READ1] of any text at all are refused without a throw", () => {
    fc.assert(fc.property(fc.oneof(fc.string({ unit: "binary" }), fc.json()), (text) => {
      expect(readInstrument(text).ok).toBe(false);
    }), { seed: 20260103, numRuns: 800 });
  });

  it("[READ3] full of faults are answered soon, and the list has an end", () => {
    const plate = { id: "p", z: 0, thickness: 1, outline: { circle: { diameter: 9 } }, openings: new Array(20_000).fill(0) };
    const file = { ...smallest(), frame: { plates: new Array(80).fill(plate), pillars: [] } };
    const all = faults(file);
    expect(all.length).toBe(10_001);
    expect(all[10_000]).toEqual({ path: "", found: "1,590,079 more faults", expected: "none" });
  });
});
