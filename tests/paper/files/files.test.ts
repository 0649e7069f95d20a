// Every file that leaves the workshop, read back by something that we did not write, or that only knows the format.
import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import DxfParser from "dxf-parser";
import validator from "gltf-validator";
import { DOMParser } from "linkedom";
import Module from "manifold-3d";
import type { Instrument } from "../../../geometry/instrument.ts";
import { examine, meshOf, plateFigures, thingsOf, volumeMmCu, windowsOf, workOut } from "../../../geometry/index.ts";
import { exportSteps, filesOf } from "../../../src/paper/files/export.ts";
import { FORMATS } from "../../../src/paper/files/formats.ts";
import { movementThreeMf } from "../../../src/paper/files/three-mf.ts";
import { zipOf } from "../../../src/paper/files/zip.ts";
import { distinct, fileName, type OutFile } from "../../../src/paper/files/file.ts";
import { tableCsv } from "../../../src/paper/files/csv.ts";
import { plansOf } from "../../../src/paper/plans.ts";
import { everyKind } from "../every-kind.ts";
import { fonts } from "./fonts.ts";
import { boxesOn, openPdf } from "./read-pdf.ts";

const read = (name: string): Instrument => JSON.parse(readFileSync(`public/instruments/${name}.instrument.json`, "utf8")) as Instrument;
const dial = read("estuary-dial"), movement = workOut(dial), HOW = { issued: "2026-01-13", kerf: 0.2 };
let files: OutFile[] = [], manifold: Awaited<ReturnType<typeof Module>>;
const file = (name: string): Uint8Array => {
  const found = files.find((f) => f.name === name);
  if (!found) throw new Error(`no file ${name}`);
  return found.bytes;
};
const text = (name: string): string => new TextDecoder().decode(file(name));
beforeAll(async () => {
  manifold = await Module();
  manifold.setup();
  files = await filesOf(dial, fonts, HOW);
}, 120_000);

describe("all files", () => {
  it("[OUT1] are the same byte for byte every time", async () => {
    const again = await filesOf(structuredClone(dial), fonts, HOW);
    expect(again.map((f) => f.name)).toEqual(files.map((f) => f.name));
    expect(again.filter((f, i) => Buffer.compare(f.bytes, files[i]!.bytes) !== 0).map((f) => f.name)).toEqual([]);
  });
  it("[OUT1] are given back by their archive, which is the same every time", () => {
    const few = files.filter((f) => !/^(svg|dxf|stl)/.test(f.name)), zip = zipOf(few), entries = unzipSync(zip);
    expect(Buffer.compare(zip, zipOf(few.map((f) => ({ ...f, bytes: f.bytes.slice() }))))).toBe(0);
    expect(Object.keys(entries)).toHaveLength(few.length);
    for (const f of few) expect(Buffer.compare(entries[f.name]!, f.bytes)).toBe(0);
  });
  it("[OUT1] come one after another with how much is done, rising, and only those of the formats that are asked for", async () => {
    const done: number[] = [], names: string[] = [];
    for await (const step of exportSteps(everyKind, fonts, { formats: ["STL", "CSV"] })) { done.push(step.done); names.push(step.file.name); }
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(done.at(-1)).toBeLessThanOrEqual(1);
    expect(names.every((n) => n === "read-me.txt" || /^(stl|csv)\//.test(n))).toBe(true);
  });
  it("[OUT2] have names that every disk takes, each once", () => {
    expect(new Set(files.map((f) => f.name.toLowerCase())).size).toBe(files.length);
    for (const f of files) expect(f.name).toMatch(/^[A-Za-z0-9./-]+$/);
    expect(distinct(["a", "A", "a", "b"])).toEqual(["a", "A-2", "a-3", "b"]);
    expect([fileName("Räd/1 ø"), fileName("../.."), fileName("")]).toEqual(["Ra-d-1", "part", "part"]);
  });
  it("[OUT3] of an instrument that fouls say so, and those of another do not", async () => {
    const fouls = await filesOf(everyKind, fonts, { ...HOW, formats: FORMATS });
    expect(examine(workOut(everyKind)).counts.foul).toBeGreaterThan(0);
    const says = async (f: OutFile): Promise<boolean> => {
      if (f.name.endsWith(".pdf")) {
        const pdf = await openPdf(f.bytes);
        return (await Promise.all(Array.from({ length: pdf.numPages }, async (_, i) => /fouls in/.test((await (await pdf.getPage(i + 1)).getTextContent()).items.map((t) => ("str" in t ? t.str : "")).join(""))))).every(Boolean);
      }
      const bytes = f.name.endsWith(".3mf") ? unzipSync(f.bytes)["3D/3dmodel.model"]! : f.bytes;
      return /fouls/i.test(strFromU8(bytes.subarray(0, f.name.endsWith(".glb") ? 400_000 : undefined), true));
    };
    expect((await Promise.all(fouls.map(async (f) => ((await says(f)) ? "" : f.name)))).filter(Boolean)).toEqual([]);
    expect(await says({ name: "read-me.txt", bytes: file("read-me.txt") })).toBe(false);
    expect(await says({ name: "parts.3mf", bytes: file("parts.3mf") })).toBe(false);
  }, 120_000);
});

describe("the PDF", () => {
  it("[OUT4] has every page, a bookmark for every sheet, every text as text, and embeds the letters it uses", async () => {
    const pdf = await openPdf(file("plans.pdf")), sheets = plansOf(dial, HOW);
    expect(pdf.numPages).toBe(sheets.reduce((sum, s) => sum + s.pages.length, 0));
    expect((await pdf.getOutline()).map((o: { title: string }) => o.title)).toEqual(sheets.map((s) => s.title));
    const pages = sheets.flatMap((s) => s.pages);
    for (let i = 0; i < pages.length; i += 7) {
      const said = (await (await pdf.getPage(i + 1)).getTextContent()).items.map((t) => ("str" in t ? t.str : "")).join("").replace(/\s/g, "");
      for (const e of pages[i]!.entities) if (e.kind === "text") expect(said).toContain(e.text.replace(/\s/g, ""));
    }
    const raw = strFromU8(file("plans.pdf"), true);
    expect(raw).not.toMatch(/CreationDate|ModDate/);
  }, 60_000);
  it("[OUT4] stands at true scale: paper, check bars and every hole of a template within 0.05 mm", async () => {
    const pdf = await openPdf(file("plans.pdf")), sheets = plansOf(dial, HOW), plate = dial.frame.plates[0]!;
    const before = sheets.slice(0, sheets.findIndex((s) => s.kind === "template")).reduce((sum, s) => sum + s.pages.length, 0);
    const page = await pdf.getPage(before + 1), boxes = await boxesOn(page);
    expect(page.view.map((v: number) => (v * 25.4) / 72)).toEqual([0, 0, expect.closeTo(210, 6), expect.closeTo(297, 6)]);
    expect(boxes.some((b) => Math.abs(b.width - 100) < 0.05 && b.height < 5)).toBe(true);
    expect(boxes.some((b) => Math.abs(b.height - 100) < 0.05 && b.width < 5)).toBe(true);
    const holes = plateFigures(movement, plate.id, windowsOf(movement))!.holes, first = holes[0]!;
    expect(holes.length).toBeGreaterThan(5);
    const round = boxes.filter((b) => Math.abs(b.width - b.height) < 1e-3);
    const fits = round.filter((b) => Math.abs(b.width - first.diameter) < 0.05).map((anchor) => holes.every((h) => round.some((b) =>
      Math.abs(Math.abs(b.x - anchor.x) - Math.abs(h.x - first.x)) < 0.05 && Math.abs(b.y - anchor.y - (h.y - first.y)) < 0.05 && Math.abs(b.width - h.diameter) < 0.05)));
    expect(fits).toContain(true);
  });
});

describe("DXF", () => {
  const parsed = (name: string) => new DxfParser().parseSync(text(name))!;
  it("[OUT5] of every page parses, in mm, each entity on a layer that is declared", () => {
    for (const f of files.filter((f) => f.name.endsWith(".dxf"))) {
      const dxf = parsed(f.name), layers = Object.keys(dxf.tables.layer.layers);
      expect(dxf.header["$INSUNITS"]).toBe(4);
      expect(dxf.entities.length).toBeGreaterThan(2);
      expect(dxf.entities.filter((e) => !layers.includes(e.layer))).toEqual([]);
    }
  });
  it("[OUT6] of a wheel to cut is its closed outline at full size, area as its mesh, and a path out of the metal by half the kerf", () => {
    const figures = movement.instrument.arbors.flatMap((a) => a.parts).filter((p) => p.kind === "wheel" || p.kind === "pinion");
    expect(figures.length).toBeGreaterThan(10);
    for (const part of figures) {
      const lines = parsed(`cutting/${part.id}.dxf`).entities.filter((e) => e.type === "POLYLINE") as unknown as { layer: string; shape: boolean; vertices: { x: number; y: number }[] }[];
      const of = (layer: string) => lines.filter((l) => l.layer === layer).map((l) => l.vertices);
      expect(lines.every((l) => l.shape)).toBe(true);
      const metal = of("WIDE").reduce((sum, l) => sum + area(l), 0), volume = volumeMmCu(meshOf(movement, part.id, { chordMm: 0.002 })!);
      expect(Math.abs(metal - volume / part.thickness)).toBeLessThan(0.005 * metal * 0.02 + 0.01);
      for (const [i, path] of of("CUT").entries()) {
        const true_ = of("WIDE")[i]!;
        for (let k = 0; k < path.length; k += 11) expect(distanceTo(true_, path[k]!)).toBeGreaterThan(0.1 - 2e-4);
        for (let k = 0; k < path.length; k += 11) expect(distanceTo(true_, path[k]!)).toBeLessThan(0.1 * 1.03);
        expect(area(path)).toBeGreaterThan(area(true_));
      }
    }
  });
});

interface Point { readonly x: number; readonly y: number }
function area(loop: readonly Point[]): number {
  return loop.reduce((sum, p, i) => sum + (loop[(i + loop.length - 1) % loop.length]!.x * p.y - loop[(i + loop.length - 1) % loop.length]!.y * p.x) / 2, 0);
}
function distanceTo(loop: readonly Point[], p: Point): number {
  return loop.reduce((least, a, i) => {
    const b = loop[(i + 1) % loop.length]!, dx = b.x - a.x, dy = b.y - a.y;
    const t = Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
    return Math.min(least, Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y));
  }, Infinity);
}

describe("solids", () => {
  it("[OUT7] every STL is one closed solid for another kernel, of the volume of its mesh within a thousandth", () => {
    for (const thing of thingsOf(movement)) {
      const bytes = file(`stl/${fileName(thing.id)}.stl`), view = new DataView(bytes.buffer, bytes.byteOffset), count = view.getUint32(80, true);
      expect(bytes.length).toBe(84 + 50 * count);
      expect(strFromU8(bytes.subarray(0, 5), true)).not.toBe("solid");
      const vertices = new Float32Array(9 * count);
      for (let t = 0; t < count; t++) for (let k = 0; k < 9; k++) vertices[9 * t + k] = view.getFloat32(84 + 50 * t + 12 + 4 * k, true);
      const mesh = new manifold.Mesh({ numProp: 3, vertProperties: vertices, triVerts: Uint32Array.from({ length: 3 * count }, (_, i) => i) });
      mesh.merge();
      const solid = new manifold.Manifold(mesh), volume = volumeMmCu(meshOf(movement, thing.id)!);
      expect(solid.status()).toBe("NoError");
      expect(Math.abs(solid.volume() - volume)).toBeLessThan(1e-3 * volume);
      expect(Math.abs(solid.boundingBox().min[2]!)).toBeLessThan(1e-5);
      solid.delete();
    }
  });
  it("[OUT8] the 3MF says millimetres, has one named closed object a part, each laid on the plate without touching another", () => {
    // Every kind of part: solids are as many as a reader of XML goes through in a moment.
    const trial = workOut(everyKind), entries = unzipSync(movementThreeMf(trial, []));
    expect(Object.keys(entries).sort()).toEqual(["3D/3dmodel.model", "[Content_Types].xml", "_rels/.rels"]);
    const model = new DOMParser().parseFromString(strFromU8(entries["3D/3dmodel.model"]!), "text/xml") as unknown as Document;
    expect(model.querySelector("model")!.getAttribute("unit")).toBe("millimeter");
    const objects = [...model.querySelectorAll("object")], items = [...model.querySelectorAll("item")];
    expect(objects.map((o) => o.getAttribute("name"))).toEqual(thingsOf(trial).map((t) => `${t.kind} ${t.id}`));
    expect(items.map((i) => i.getAttribute("objectid"))).toEqual(objects.map((o) => o.getAttribute("id")));
    const boxes = objects.map((o, i) => {
      const at = ["x", "y", "z"] as const, vertices = [...o.querySelectorAll("vertex")].map((v) => at.map((k) => Number(v.getAttribute(k))));
      const edges = new Set<string>(), triangles = [...o.querySelectorAll("triangle")].map((t) => ["v1", "v2", "v3"].map((k) => Number(t.getAttribute(k))));
      for (const t of triangles) for (let k = 0; k < 3; k++) edges.add(`${t[k]} ${t[(k + 1) % 3]}`);
      expect([...edges].filter((e) => !edges.has(e.split(" ").reverse().join(" ")))).toEqual([]);
      const m = items[i]!.getAttribute("transform")!.split(" ").map(Number);
      const det = m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) - m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) + m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!);
      expect(det).toBe(1);
      const placed = vertices.map((v) => at.map((_, k) => v[0]! * m[k]! + v[1]! * m[3 + k]! + v[2]! * m[6 + k]! + m[9 + k]!));
      return at.map((_, k) => placed.reduce(([low, high], v) => [Math.min(low!, v[k]!), Math.max(high!, v[k]!)], [Infinity, -Infinity]) as [number, number]);
    });
    for (const [i, a] of boxes.entries()) {
      expect(Math.abs(a[2]![0])).toBeLessThan(1e-4);
      for (const b of boxes.slice(i + 1)) expect([0, 1].some((k) => a[k]![0] > b[k]![1] + 4.99 || b[k]![0] > a[k]![1] + 4.99)).toBe(true);
    }
  });
  it("[OUT9] the glTF validates without a fault, stands in metres, names its nodes, and turns each arbor by its rate", async () => {
    const glb = file("movement.glb"), report = await validator.validateBytes(glb);
    expect(report.issues.messages).toEqual([]);
    const json = JSON.parse(strFromU8(glb.subarray(20, 20 + new DataView(glb.buffer, glb.byteOffset).getUint32(12, true)))) as {
      nodes: { name: string; scale?: number[] }[]; animations: { channels: { sampler: number; target: { node: number; path: string } }[]; samplers: { output: number }[] }[];
      accessors: { bufferView: number; count: number }[]; bufferViews: { byteOffset: number }[];
    };
    expect(json.nodes[0]!.scale).toEqual([0.001, 0.001, 0.001]);
    for (const t of thingsOf(movement)) expect(json.nodes.map((n) => n.name)).toContain(`${t.kind} ${t.id}`);
    const start = 28 + new DataView(glb.buffer, glb.byteOffset).getUint32(12, true), view = new DataView(glb.buffer, glb.byteOffset + start);
    let turning = 0;
    for (const { sampler, target } of json.animations[0]!.channels.filter((c) => c.target.path === "rotation")) {
      const { bufferView, count } = json.accessors[json.animations[0]!.samplers[sampler]!.output]!, at = json.bufferViews[bufferView]!.byteOffset;
      const half = Array.from({ length: count }, (_, k) => Math.atan2(view.getFloat32(at + 16 * k + 8, true), view.getFloat32(at + 16 * k + 12, true)));
      const turned = half.slice(1).reduce((sum, a, k) => sum + 2 * Math.atan2(Math.sin(a - half[k]!), Math.cos(a - half[k]!)), 0) / (2 * Math.PI);
      const arbor = movement.arbors.find((a) => `arbor ${a.id}` === json.nodes[target.node]!.name)!, wanted = Number(arbor.rate!.valueOf());
      expect(Math.abs(Math.abs(turned) - Math.abs(wanted))).toBeLessThan(1e-4 * Math.max(1, Math.abs(wanted)));
      turning++;
    }
    expect(turning).toBe(movement.arbors.filter((a) => a.rate !== null && Number(a.rate.valueOf()) !== 0).length);
  });
});

describe("CSV", () => {
  it("[OUT10] holds every table of the plans cell for cell, with its source under it", () => {
    const tables = plansOf(dial, HOW).flatMap((s) => s.tables);
    expect(files.filter((f) => f.name.endsWith(".csv"))).toHaveLength(tables.length);
    for (const table of tables) {
      const rows = records(tableCsv(table));
      expect(rows.slice(0, 1 + table.rows.length)).toEqual([table.columns, ...table.rows.map((row) => row.map(String))]);
      if (table.source !== undefined) expect(rows.at(-1)).toEqual([table.source]);
    }
    expect(records(tableCsv({ id: "t", title: "t", columns: ['a "b"', "c,d"], rows: [["e\nf", -1.5]] }, ["heed"]))).toEqual([['a "b"', "c,d"], ["e\nf", "-1.5"], [""], ["heed"]]);
  });
});

/** A reader by the grammar of RFC 4180. */
function records(csv: string): string[][] {
  return [...csv.matchAll(/((?:(?:"(?:[^"]|"")*"|[^",\r\n]*)(?:,|(?=\r\n)))+)\r\n|\r\n/g)].map((m) =>
    [...(m[1] ?? "").matchAll(/(?:"((?:[^"]|"")*)"|([^",]*))(?:,|$)/g)].filter((c, i, all) => !(i === all.length - 1 && c[0] === "" && i > 0 && !(m[1] ?? "").endsWith(",")))
      .map((c) => (c[1] ?? c[2] ?? "").replaceAll('""', '"')));
}
