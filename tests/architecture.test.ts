// Holds the directions in which the rooms may import one another (type imports too), and that there are no circles.
import { readdirSync, readFileSync, existsSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";

const root = resolve(import.meta.dirname, "..");

/** What a room of the kernel may import of the kernel, in the order of the table in DEVELOPERS.md: each sees those above it. */
const GEOMETRY = [
  "numeric", "instrument.ts", "planar", "teeth", "finding.ts", "movement.ts", "train", "motion", "planting", "heights",
  "bodies", "clearance", "depth", "assembly", "numbers", "sky", "dials", "workshop", "workout.ts", "examine", "search", "mesh", "index.ts",
];
/** Pairs that the order alone would allow and the plan forbids. */
const FORBIDDEN: readonly [string, string][] = [
  ["geometry/clearance", "geometry/depth"], ["geometry/examine", "geometry/mesh"], ["geometry/clearance", "geometry/mesh"],
  ["geometry/planting", "geometry/motion"], ["geometry/numbers", "geometry/planting"], ["geometry/mesh", "geometry/examine"], ["geometry/mesh", "geometry/search"],
];
/** What each room of the shell may import besides packages. */
const SHELL: Record<string, readonly string[]> = {
  "src/document": ["geometry", "src/document"],
  "src/workers": ["geometry", "src/document", "src/paper", "src/workers"],
  "src/cli": ["geometry", "src/document", "src/paper", "src/cli"],
  "src/paper": ["geometry", "src/document", "src/paper"],
  "scenes": ["geometry", "scenes"],
  "src/commands": ["geometry", "src/document", "src/commands"],
  "src/state": ["geometry", "src/document", "src/commands", "src/workers", "src/state"],
};
const WITHOUT_THREE = ["geometry", "src/document", "src/state", "src/commands", "src/workers", "src/cli", "src/paper"];

interface Edge { readonly from: string; readonly to: string; readonly outside: boolean }

const files = ["geometry", "scenes", "src"].flatMap(filesBelow);
const edges = files.flatMap(importsOf);

describe("the rooms", () => {
  it("were all read", () => {
    expect(files.filter((f) => f.startsWith("geometry/")).length).toBeGreaterThan(20);
    expect(files.filter((f) => f.startsWith("src/")).length).toBeGreaterThan(5);
    expect(edges.length).toBeGreaterThan(50);
  });

  it("import one way: geometry, then scenes, then src", () => {
    const wrong = edges.filter((e) => !e.outside && (
      (e.from.startsWith("geometry/") && !e.to.startsWith("geometry/")) ||
      (e.from.startsWith("scenes/") && e.to.startsWith("src/"))));
    expect(wrong).toEqual([]);
  });

  it("of the kernel see only those above them in the table", () => {
    const place = (f: string) => GEOMETRY.findIndex((room) => f === `geometry/${room}` || f.startsWith(`geometry/${room}/`));
    const inside = edges.filter((e) => !e.outside && e.from.startsWith("geometry/"));
    expect(inside.flatMap((e) => [e.from, e.to]).filter((f) => place(f) < 0)).toEqual([]);
    expect(inside.filter((e) => place(e.to) > place(e.from))).toEqual([]);
    expect(inside.filter((e) => FORBIDDEN.some(([a, b]) => e.from.startsWith(`${a}/`) && e.to.startsWith(`${b}/`)))).toEqual([]);
  });

  it("of the shell keep to what the plan allows them", () => {
    const wrong = edges.filter((e) => !e.outside).filter((e) => {
      const room = Object.keys(SHELL).find((r) => e.from.startsWith(`${r}/`));
      return room !== undefined && !(SHELL[room] ?? []).some((r) => e.to.startsWith(`${r}/`));
    });
    expect(wrong).toEqual([]);
  });

  it("reach the kernel from outside only by its public face", () => {
    const wrong = edges.filter((e) => !e.outside && !e.from.startsWith("geometry/") && e.to.startsWith("geometry/")
      && e.to !== "geometry/index.ts");
    expect(wrong).toEqual([]);
  });

  it("keep three.js and React out of the kernel, the document, the store and the terminal", () => {
    const wrong = edges.filter((e) => e.outside && /^(three|react|@react-three)/.test(e.to)
      && WITHOUT_THREE.some((r) => e.from.startsWith(`${r}/`)));
    expect(wrong.filter((e) => !(e.from.startsWith("src/state/") && e.to === "react"))).toEqual([]);
  });

  it("have no circles of imports", () => {
    expect(circles(edges.filter((e) => !e.outside))).toEqual([]);
  });
});

function filesBelow(folder: string): string[] {
  const at = join(root, folder);
  if (!existsSync(at)) return [];
  return readdirSync(at, { recursive: true, encoding: "utf8" })
    .filter((f) => /\.tsx?$/.test(f)).map((f) => `${folder}/${f.replaceAll("\\", "/")}`);
}

function importsOf(file: string): Edge[] {
  const text = readFileSync(join(root, file), "utf8");
  return ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => {
    if (!fileName.startsWith(".")) return { from: file, to: fileName, outside: true };
    const to = relative(root, resolve(root, dirname(file), fileName.replace(/\?.*$/, ""))).replaceAll("\\", "/");
    return { from: file, to, outside: !/\.tsx?$/.test(to) };
  });
}

function circles(inner: readonly Edge[]): string[] {
  const next = new Map<string, string[]>();
  for (const e of inner) next.set(e.from, [...(next.get(e.from) ?? []), e.to]);
  const state = new Map<string, "open" | "done">();
  const found: string[] = [];
  const visit = (f: string, path: string[]) => {
    if (state.get(f) === "done") return;
    if (state.get(f) === "open") { found.push([...path.slice(path.indexOf(f)), f].join(" > ")); return; }
    state.set(f, "open");
    for (const t of next.get(f) ?? []) visit(t, [...path, f]);
    state.set(f, "done");
  };
  for (const f of next.keys()) visit(f, []);
  return found;
}
