// The scene without a graphics card: a renderer that draws nothing stands in for the real one.
import { act, advance, createRoot, type ReconcilerRoot } from "@react-three/fiber";
import { Profiler } from "react";
import { BufferGeometry, Material, Mesh, type Scene as ThreeScene } from "three";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { workOut, type Instrument } from "../../geometry/index.ts";
import type { MovementViewProps } from "../../scenes/props.ts";
import { Scene } from "../../scenes/Scene.tsx";
import { createStage, type Stage } from "../../scenes/stage.ts";
import { FOUL, HARBOUR_DIAL } from "./gallery/harbour-dial.ts";

const movement = workOut(HARBOUR_DIAL);
const sheet = { assembly: movement.arbors.map((a) => [a.id]) } as unknown as MovementViewProps["sheet"];

beforeAll(() => { (globalThis as { IS_REACT_ACT_ENVIRONMENT?: boolean }).IS_REACT_ACT_ENVIRONMENT = true; });
afterAll(() => { vi.restoreAllMocks(); });

describe("the scene", () => {
  it("turns a hundred frames without one React render, and every arbor with the crank", async () => {
    const clock = { turns: 0 };
    const { root, stage, renders } = await mounted({ turns: { get: () => clock.turns, subscribe: () => () => {} } });
    const before = renders();
    const a = stage.groups[0], b = stage.groups[1];
    for (let frame = 1; frame <= 100; frame++) {
      clock.turns = frame / 1000;
      advance(frame / 60);
    }
    expect(before).toBeGreaterThan(0);
    expect(renders()).toBe(before);
    // A tenth of a turn, clockwise from the dial side; B goes the other way at 17/42.
    expect(turned(a?.rotation.z)).toBeCloseTo(-0.1 * 2 * Math.PI, 9);
    expect(turned(b?.rotation.z)).toBeCloseTo((0.1 * 2 * Math.PI * 17) / 42, 9);
    await act(async () => root.unmount());
  });

  it("makes no shape but the plates' when an arbor is dragged", async () => {
    const { root, scene, show } = await mounted({});
    const before = shapes(scene());
    const moved: Instrument = { ...HARBOUR_DIAL, arbors: HARBOUR_DIAL.arbors.map((x) => (x.id === "G" ? { ...x, x: 21.5, y: 2.06 } : x)) };
    await show({ movement: workOut(moved) });
    const after = shapes(scene());
    const changed = [...after].filter(([name, shape]) => before.get(name) !== shape).map(([name]) => name);
    expect(changed.sort()).toEqual(["back", "front"]);
    await act(async () => root.unmount());
  });

  it("lets pillars of one size share a shape", async () => {
    const { root, scene } = await mounted({});
    const all = shapes(scene());
    expect(all.get("P1")).toBeDefined();
    expect(new Set(["P1", "P2", "P3", "P4"].map((id) => all.get(id))).size).toBe(1);
    await act(async () => root.unmount());
  });

  it("disposes every shape and metal it made once it is gone", async () => {
    const geometries = vi.spyOn(BufferGeometry.prototype, "dispose"), materials = vi.spyOn(Material.prototype, "dispose");
    const { root, scene } = await mounted({ chosen: "G", finding: FOUL });
    const made = drawn(scene());
    await act(async () => root.unmount());
    const disposed = new Set<unknown>([...geometries.mock.contexts, ...materials.mock.contexts]);
    expect(made.length).toBeGreaterThan(40);
    expect(made.filter((m) => !disposed.has(m.geometry)).map((m) => m.name)).toEqual([]);
    expect(made.filter((m) => !disposed.has(m.material)).map((m) => m.name)).toEqual([]);
  });

  it("colours both things of a finding, and marks a chosen arbor with all that is on it", async () => {
    const { root, scene, show } = await mounted({});
    const colour = (id: string) => ((named(scene(), id)?.material as unknown as { color: { getHexString(): string } })?.color.getHexString());
    const plain = [colour("D1"), colour("G"), colour("G1"), colour("B1")];
    await show({ finding: FOUL, chosen: "G" });
    expect(colour("D1")).not.toBe(plain[0]);
    expect(colour("D1")).toBe(colour("G"));
    expect(colour("G1")).not.toBe(plain[2]);
    expect(colour("G1")).not.toBe(colour("G"));
    expect(colour("B1")).toBe(plain[3]);
    await act(async () => root.unmount());
  });

  it("lifts every arbor by its place in the order, and cuts only the frame", async () => {
    const { root, stage, scene, show } = await mounted({ stillMotion: true });
    await show({ lift: 1, cut: 0.5 });
    advance(1);
    const up = (id: string) => stage.groups[movement.arborIndex.get(id) ?? -1]?.position.z ?? 0;
    expect(up("A")).toBeGreaterThan(0);
    expect(up("C")).toBeGreaterThan(up("B"));
    expect(up("F")).toBeGreaterThan(up("E"));
    expect(stage.meshes.get("front")?.position.z).toBeGreaterThan(up("D"));
    const cut = (id: string) => ((named(scene(), id)?.material as Material).clippingPlanes ?? []).length;
    expect([cut("back"), cut("P1"), cut("B1"), cut("A")]).toEqual([1, 1, 0, 0]);
    await act(async () => root.unmount());
  });

  it("leaves out what is hidden, an arbor with all its parts", async () => {
    const { root, scene } = await mounted({ hidden: new Set(["G", "front"]) });
    expect(["G", "G1", "G2", "front"].map((id) => named(scene(), id))).toEqual([undefined, undefined, undefined, undefined]);
    expect(named(scene(), "D1")).toBeDefined();
    await act(async () => root.unmount());
  });
});

interface Mounted {
  readonly root: ReconcilerRoot<HTMLCanvasElement>;
  readonly stage: Stage;
  scene(): ThreeScene;
  renders(): number;
  show(more: Partial<MovementViewProps>): Promise<void>;
}

async function mounted(first: Partial<MovementViewProps>): Promise<Mounted> {
  const canvas = { style: {}, addEventListener() {}, removeEventListener() {} } as unknown as HTMLCanvasElement;
  let count = 0, drawnScene: ThreeScene | null = null;
  const gl = {
    domElement: canvas, shadowMap: {}, xr: { addEventListener() {}, removeEventListener() {} },
    setSize() {}, setPixelRatio() {}, dispose() {}, render(scene: ThreeScene) { drawnScene = scene; },
  };
  const root = createRoot(canvas);
  await root.configure({ gl: (() => gl) as never, frameloop: "never", dpr: 1, size: { width: 800, height: 600, top: 0, left: 0 } });
  let props: MovementViewProps = {
    movement, sheet, turns: { get: () => 0, subscribe: () => () => {} }, theme: "light", standing: null, chosen: null, onChoose: () => {},
    finding: null, lift: 0, cut: 0, plates: 1, drag: null, stillMotion: true, letters: true, label: "", ...first,
  };
  const stage = createStage(props);
  const show = async (more: Partial<MovementViewProps>) => {
    props = { ...props, ...more };
    stage.props = props;
    await act(async () => root.render(<Profiler id="scene" onRender={() => { count++; }}><Scene {...props} stage={stage} plain /></Profiler>));
    advance(0);
  };
  await show({});
  return { root, stage, renders: () => count, show, scene: () => { if (!drawnScene) throw new Error("nothing was drawn"); return drawnScene; } };
}

function drawn(scene: ThreeScene): Mesh[] {
  const meshes: Mesh[] = [];
  scene.traverse((object) => { if (object instanceof Mesh) meshes.push(object); });
  return meshes;
}
const shapes = (scene: ThreeScene) => new Map(drawn(scene).map((mesh) => [mesh.name, mesh.geometry]));
const named = (scene: ThreeScene, name: string) => drawn(scene).find((mesh) => mesh.name === name);
/** In (−π, π]. */
const turned = (rad: number | undefined) => Math.atan2(Math.sin(rad ?? NaN), Math.cos(rad ?? NaN));
