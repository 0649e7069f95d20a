// The plans of every example, held to what a printed sheet promises.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Instrument, Part } from "../../geometry/instrument.ts";
import { type Drawing, type Entity, hatchLines, type PlanSheet } from "../../src/paper/drawing.ts";
import { crosses, overlap, type Rect, strokesOf, textBox } from "../../src/paper/lettered.ts";
import { plansOf } from "../../src/paper/plans.ts";
import { drawingSvg } from "../../src/paper/svg.ts";
import { everyKind } from "./every-kind.ts";

const read = (name: string): Instrument => JSON.parse(readFileSync(`public/instruments/${name}.instrument.json`, "utf8")) as Instrument;
const NAMES = ["estuary-dial", "estuary-dial-first-draft", "small-tellurian", "going-train"] as const;
const instruments: readonly (readonly [string, Instrument])[] = [...NAMES.map((n) => [n, read(n)] as const), ["every kind", everyKind]];
const plans = new Map(instruments.map(([name, i]) => [name, plansOf(i, { issued: "2026-01-13" })]));
const all = [...plans].flatMap(([name, sheets]) => sheets.flatMap((s) => s.pages.map((page, k) => ({ of: `${name}, ${s.id}, page ${k + 1}`, sheet: s, page }))));

function boxOf(e: Entity): Rect[] {
  const round = (x: number, y: number, r: number) => [{ left: x - r, right: x + r, bottom: y - r, top: y + r }];
  const points = (p: readonly number[]) => {
    const xs = p.filter((_, i) => i % 2 === 0), ys = p.filter((_, i) => i % 2 === 1);
    return [{ left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) }];
  };
  switch (e.kind) {
    case "text": return [textBox(e)];
    case "line": return points([e.x1, e.y1, e.x2, e.y2]);
    case "polyline": return points(e.points);
    case "circle": case "arc": return round(e.x, e.y, e.radius);
    case "hatch": case "fill": return e.loops.flatMap(points);
  }
}

const within = (r: Rect, f: Drawing["frame"]): boolean => r.left >= f.left - 0.01 && r.right <= f.right + 0.01 && r.bottom >= f.bottom - 0.01 && r.top <= f.top + 0.01;

describe("every page", () => {
  it("[PLAN1] has everything but its centring marks within the frame, and every figure is a number", () => {
    const outside = all.flatMap(({ of, page }) => page.entities.filter((e) => !(e.kind === "line" && e.layer === "frame"))
      .filter((e) => e.kind !== "arc" && boxOf(e).some((b) => !within(b, page.frame))).map((e) => `${of}: ${JSON.stringify(e).slice(0, 160)}`));
    expect(outside).toEqual([]);
    expect(all.filter(({ page }) => /null|NaN|Infinity/.test(JSON.stringify(page.entities)))).toEqual([]);
  });
  it("[PLAN2] has no text that stands on another", () => {
    const clashes = all.flatMap(({ of, page }) => {
      const texts = page.entities.filter((e) => e.kind === "text"), boxes = texts.map(textBox);
      return texts.flatMap((a, i) => texts.slice(i + 1).flatMap((b, k) => (overlap(boxes[i]!, boxes[i + 1 + k]!) ? [`${of}: "${a.text}" and "${b.text}"`] : [])));
    });
    expect(clashes).toEqual([]);
  });
  it("[PLAN2] of a sheet for cutting or turning has no line of the part or its dimensions through a text", () => {
    const kinds = new Set(["wheel", "pinion", "arbor", "piece", "hands", "ratchet", "fit", "housing"]);
    const crossed = all.filter(({ sheet }) => kinds.has(sheet.kind)).flatMap(({ of, page }) => {
      const strokes = page.entities.filter((e) => e.layer === "part" || e.layer === "dimension").flatMap(strokesOf);
      return page.entities.filter((e) => e.kind === "text").filter((t) => { const box = textBox(t); return strokes.some((s) => crosses(s, box)); }).map((t) => `${of}: ${t.text}`);
    });
    expect(crossed).toEqual([]);
  });
  it("[PLAN3] says its instrument, title, number, sheet, scale, document and mark in the title block, as text that can be searched", () => {
    for (const { page, sheet } of all) {
      const words = page.entities.flatMap((e) => (e.kind === "text" ? [e.text] : []));
      for (const field of ["owner", "title", "number", "sheet", "scale", "document", "mark", "unless"] as const) expect(words).toContain(page.titleBlock[field]);
      expect(page.titleBlock.mark).toBe(sheet.mark);
    }
  });
  it("[PLAN3] has a drawing number that no other sheet of its instrument has", () => {
    for (const sheets of plans.values()) {
      const numbers = sheets.map((s) => s.pages[0]?.titleBlock.number);
      expect(new Set(numbers).size).toBe(sheets.length);
    }
  });
  it("[PLAN3] is alike in SVG: every text once, in millimetres", () => {
    for (const { page } of all.filter((_, i) => i % 7 === 0)) {
      const svg = drawingSvg(page);
      expect(svg.match(/<text /g)?.length).toBe(page.entities.filter((e) => e.kind === "text").length);
      expect(svg).toContain(`width="${page.width}mm" height="${page.height}mm" viewBox="0 0 ${page.width} ${page.height}"`);
    }
  });
  it("[PLAN3] fits A3 and Letter as well", () => {
    for (const size of ["A3", "Letter"] as const) for (const [name, i] of instruments.slice(0, 1).concat(instruments.slice(-1))) for (const s of plansOf(i, { size })) for (const page of s.pages)
      expect(page.entities.filter((e) => !(e.kind === "line" && e.layer === "frame") && e.kind !== "arc" && boxOf(e).some((b) => !within(b, page.frame))).map((e) => [name, s.id, e])).toEqual([]);
  });
});

describe("marks", () => {
  const drawnOf = (s: PlanSheet): string => JSON.stringify(s.pages.map((p) => p.entities.filter((e) => e.layer !== "frame"))) + JSON.stringify(s.tables) + s.pages.map((p) => p.titleBlock.title + p.titleBlock.subtitle + p.titleBlock.scale).join();
  const dial = read("estuary-dial"), before = new Map(plansOf(dial).map((s) => [s.id, s]));
  const changed = (change: (part: Part) => Part, id: string): Instrument => ({ ...dial, arbors: dial.arbors.map((a) => ({ ...a, parts: a.parts.map((p) => (p.id === id ? change(p) : p)) })) });
  const wheels = dial.arbors.flatMap((a) => a.parts).filter((p) => p.kind === "wheel" && p.crossings);

  it("[PLAN4] a change to one wheel changes the mark of exactly the sheets that show it", () => {
    const change = fc.record({ id: fc.constantFrom(...wheels.map((w) => w.id)), how: fc.constantFrom("thickness", "rim", "material", "name", "z", "thinning"), by: fc.double({ min: 0.02, max: 0.3, noNaN: true }) });
    fc.assert(fc.property(change, ({ id, how, by }) => {
      const after = plansOf(changed((p) => {
        if (p.kind !== "wheel" || !p.crossings) return p;
        if (how === "rim") return { ...p, crossings: { ...p.crossings, rim: p.crossings.rim + by } };
        if (how === "material") return { ...p, material: "bronze" };
        if (how === "name") return { ...p, name: `Wheel ${Math.round(1e6 * by)}` };
        if (how === "z") return { ...p, z: p.z + by };
        return how === "thinning" ? { ...p, thinning: by } : { ...p, thickness: p.thickness + by };
      }, id));
      const otherMark = after.filter((s) => before.get(s.id)?.mark !== s.mark).map((s) => s.id);
      const otherDrawing = after.filter((s) => { const b = before.get(s.id); return !b || drawnOf(b) !== drawnOf(s); }).map((s) => s.id);
      expect([...otherMark].sort()).toEqual([...otherDrawing].sort());
      expect(otherMark).toContain(how === "z" ? `arbor-${dial.arbors.find((a) => a.parts.some((p) => p.id === id))!.id}` : `wheel-${id}`);
      const untouched = dial.arbors.flatMap((a) => a.parts).filter((p) => p.kind === "pointer").map((p) => `pointer-${p.id}`);
      expect(otherMark.filter((s) => untouched.includes(s) || s === "pillars" || s.startsWith("dial-"))).toEqual([]);
    }), { seed: 7, numRuns: 10 });
  });
  it("[PLAN4] do not depend on the order of fields, and a sheet that was printed under another mark is stale in words", () => {
    const turned = JSON.parse(JSON.stringify(dial), (_, v: unknown) => (v !== null && typeof v === "object" && !Array.isArray(v) ? Object.fromEntries(Object.entries(v).reverse()) : v)) as Instrument;
    expect(plansOf(turned).map((s) => [s.id, s.mark])).toEqual([...before.values()].map((s) => [s.id, s.mark]));
    const printed = { "wheel-E1": "aaa·aaa", "wheel-B1": before.get("wheel-B1")!.mark };
    const stale = plansOf(dial, { printed }).filter((s) => s.stale);
    expect(stale.map((s) => s.stale)).toEqual([`Wheel E1 has moved on: printed aaa·aaa, now ${before.get("wheel-E1")!.mark}`]);
  });
});

describe("warnings", () => {
  it("[PLAN5] every page of an instrument that fouls says so, and none of one that does not", () => {
    const says = (p: Drawing) => p.entities.some((e) => e.kind === "text" && e.text.startsWith("This instrument fouls"));
    expect(all.filter(({ of }) => of.startsWith("estuary-dial-first-draft,")).every(({ page }) => says(page))).toBe(true);
    expect(all.filter(({ of }) => of.startsWith("estuary-dial,")).some(({ page }) => says(page))).toBe(false);
  });
  it("[PLAN6] sheets that lead to turning, heat or foundry work show its cautions on every page, and defer", () => {
    for (const { sheet, page } of all.filter(({ sheet: s }) => ["wheel", "pinion", "arbor", "heats", "housing", "plate"].includes(s.kind))) {
      const words = page.entities.flatMap((e) => (e.kind === "text" && e.layer === "frame" ? [e.text] : [])).join(" ");
      expect(sheet.cautions.length).toBeGreaterThan(0);
      for (const caution of sheet.cautions) expect(words).toContain(caution);
      expect(words).toContain("leave to licensed practice");
    }
    const words = (kind: string) => plans.get("every kind")!.filter((s) => s.kind === kind).flatMap((s) => s.cautions).join(" ");
    expect(words("housing")).toMatch(/Molten.*silica/);
    expect(words("heats")).toMatch(/lead or cadmium/);
  });
});

describe("a stranger with the sheets alone", () => {
  const figures = (kind: PlanSheet["kind"], id: RegExp): string => plans.get("every kind")!.filter((s) => s.kind === kind && id.test(s.id))
    .flatMap((s) => s.pages.flatMap((p) => p.entities.flatMap((e) => (e.kind === "text" && e.layer !== "frame" ? [e.text] : [])))).join("\n");
  const FIND: readonly (readonly [string, PlanSheet["kind"], RegExp, readonly string[]])[] = [
    ["a crossed wheel", "wheel", /W1/, ["Teeth", "48", "Module, form", "0.6, involute 20°", "30.00", "1.40", "Blank diameter", "Bore and fit", "Crossings", "arm 2.00", "R5.00", "saw entry", "hub R", "First arm", "at 23.7°, input at 0", "First arm past a tooth"]],
    ["an annulus", "wheel", /R1/, ["Bored for teeth", "Outside diameter", "ø66.00", "Thickness"]],
    ["a pinion", "pinion", /P1/, ["Leaves", "12", "Profile shift", "+0.300"]],
    ["a lantern", "pinion", /L1/, ["Trundles", "10", "Trundles of", "ø1.00", "Trundle circle", "Shrouds", "ø12.00"]],
    ["a collet", "arbor", /-A/, ["K1", "7.00", "3.00", "spigot"]],
    ["a pin", "arbor", /-A/, ["N1", "1.50", "6.000", "30.00°"]],
    ["a square", "arbor", /-A/, ["S1", "2.20", "1°", "100 mm bar", "41.00°"]],
    ["a cotter", "fit", /S1/, ["0.80 × 1.20", "1 in 48", "Cotter, long", "of endshake"]],
    ["a disc", "piece", /D1/, ["20.00", "ø3.00 on R6.000 at 45.000°", "Thickness"]],
    ["a slot", "piece", /T1/, ["18.00", "R5.000 at 60.000°", "6.00 × 1.60"]],
    ["an arm", "piece", /M1/, ["22.00", "4.00", "15.000°"]],
    ["a hand", "hands", /H1/, ["25.00", "8.00", "3.00", "90.000°"]],
    ["a ratchet", "ratchet", /G1/, ["24", "16.00", "1.20", "Back to face"]],
    ["an arbor", "arbor", /-B/, ["pivot in back", "1.20", "pivot in front", "ø3.00", "To be turned", "endshake as drawn", "0.200: 0.100 up, 0.100 down", "for 0.15 of endshake", "washer 0.050 thick, bore 1.30"]],
    ["a pipe", "arbor", /-Q/, ["ø3.04", "bore", "5.00"]],
    ["a plate", "plate", /back/, ["ø120.00", "Holes", "−20.0000", "1.23"]],
    ["a pillar", "piece", /pillars/, ["P1p", "ø8.00", "30.00"]],
    ["a case", "housing", /housing/, ["ø130.00", "Strip to cut, long", "Pattern, outside", "Metal to melt"]],
  ];
  it.each(FIND)("[PLAN7] finds what defines %s", (_, kind, id, wanted) => {
    const text = figures(kind, id);
    for (const w of wanted) expect(text).toContain(w);
  });
});

describe("a stranger with the sheets alone, field by field", () => {
  /** Of a part as it is measured in the hand, and of how it is joined, nothing is cut; the kind and names are words. */
  const NOT_CUT = new Set(["measured", "join"]);
  type Schema = { readonly properties?: Record<string, Schema>; readonly items?: Schema; readonly oneOf?: readonly Schema[]; readonly type?: string; readonly const?: string };
  const dimensionsOf = (s: Schema): string[] => (s.type === "number" || s.type === "integer" ? [""] : s.items ? dimensionsOf(s.items)
    : Object.entries(s.properties ?? {}).filter(([name]) => !NOT_CUT.has(name)).flatMap(([name, field]) => dimensionsOf(field).map((rest) => (rest === "" ? name : `${name}.${rest}`))));
  const schema = JSON.parse(readFileSync("public/instrument.schema.json", "utf8")) as Schema;
  const kinds = new Map(schema.properties!.arbors!.items!.properties!.parts!.items!.oneOf!.map((k) => [k.properties!.kind!.const!, dimensionsOf(k)]));
  /** Every number of a part that the file gives, with the name of its field. */
  const numbersOf = (value: unknown, path = ""): (readonly [string, number])[] => (typeof value === "number" ? [[path, value]] : Array.isArray(value) ? value.flatMap((v) => numbersOf(v, path))
    : typeof value === "object" && value !== null ? Object.entries(value).filter(([name]) => !NOT_CUT.has(name)).flatMap(([name, v]) => numbersOf(v, path === "" ? name : `${path}.${name}`)) : []);
  const parts = everyKind.arbors.flatMap((a) => a.parts.map((part) => ({ part, arbor: a })));

  it("[PLAN7] the trial has every kind of part that a file may hold, and every dimension that one may have", () => {
    expect(kinds.size).toBeGreaterThan(8);
    for (const [kind, dimensions] of kinds) {
      const told = new Set(parts.filter(({ part }) => part.kind === kind).flatMap(({ part }) => numbersOf(part).map(([name]) => name)));
      expect([kind, dimensions.filter((d) => !told.has(d))]).toEqual([kind, []]);
    }
  });
  it.each(parts.map(({ part, arbor }) => [`${part.kind} ${part.id}`, part, arbor] as const))("[PLAN7] finds every number of %s", (_, part, arbor) => {
    const sheets = plans.get("every kind")!.filter((s) => s.id === `${part.kind}-${part.id}` || s.id === `fit-${part.id}` || s.id === `arbor-${arbor.id}`);
    const texts = sheets.flatMap((s) => s.pages.flatMap((p) => p.entities.flatMap((e) => (e.kind === "text" && e.layer !== "frame" ? [e.text] : []))));
    const written = texts.flatMap((t) => [...t.matchAll(/[−-]?\d+(\.\d+)?/g)].map((m) => Number(m[0].replace("−", "-"))));
    // A diameter may stand as a radius, a height as that over the arbor's foot.
    const says = (v: number): boolean => written.some((w) => [w, 2 * w, w / 2].some((u) => Math.abs(u - v) < 0.006));
    expect(numbersOf(part).filter(([name, v]) => !says(name === "z" ? v - arbor.foot : v))).toEqual([]);
  });
});

describe("hatching", () => {
  it("[PLAN8] lines lie inside, evenly apart, and cover the area once: length times spacing is the area (2 %)", () => {
    const ring = (r: number) => Array.from({ length: 200 }, (_, i) => [r * Math.cos((i * Math.PI) / 100), r * Math.sin((i * Math.PI) / 100)]).flat();
    const lines = hatchLines({ kind: "hatch", layer: "part", loops: [ring(20), ring(8)], angle: 45, spacing: 0.5 });
    const length = lines.reduce((sum, [x1, y1, x2, y2]) => sum + Math.hypot(x2 - x1, y2 - y1), 0);
    expect(Math.abs(length * 0.5 - Math.PI * (400 - 64)) / (Math.PI * 336)).toBeLessThan(0.02);
    for (const [x1, y1, x2, y2] of lines) { const r = Math.hypot((x1 + x2) / 2, (y1 + y2) / 2); expect(r).toBeLessThan(20.001); expect(r).toBeGreaterThan(7.9); }
  });
});
