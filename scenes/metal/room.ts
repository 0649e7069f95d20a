// The room that lights the metal: generated, none fetched. A workshop with a north window to the upper left, a skylight,
// a warm wall and a dark bench all round, so that turned brass shows a bright top, a dark waist and long highlights.
// z is up out of the dial; the eye stands at −y.
import {
  BackSide, BoxGeometry, Color, CubeCamera, HalfFloatType, LinearMipmapLinearFilter, Mesh, MeshBasicMaterial, PMREMGenerator, Scene,
  type Texture, WebGLCubeRenderTarget, type WebGLRenderer,
} from "three";

export interface Room {
  readonly texture: Texture;
  dispose(): void;
}

interface Panel { readonly at: readonly [number, number, number]; readonly size: readonly [number, number, number]; readonly colour: string; readonly strength: number }

/** Light fittings and dark things, in room lengths of 10. */
const PANELS: readonly Panel[] = [
  { at: [-2, 6.4, 8.6], size: [12, 5.6, 0.2], colour: "#fff4e2", strength: 2.4 },
  { at: [-1, 9.3, 5.6], size: [13, 0.2, 5.4], colour: "#fff0da", strength: 1.45 },
  { at: [-3.4, -1.5, 8.7], size: [7, 6, 0.2], colour: "#fff8ee", strength: 1.25 },
  { at: [-9.2, 1, 4.6], size: [0.2, 9, 5], colour: "#f2f5ff", strength: 2.6 },
  { at: [9.2, 2.5, 3.4], size: [0.2, 2, 4.4], colour: "#ffe6c0", strength: 3.2 },
  { at: [-4, -9.2, 4.4], size: [2, 0.2, 3.4], colour: "#fff3dc", strength: 2 },
];
const WALLS = { light: { colour: "#9a6f42", strength: 1.05 }, dark: { colour: "#4c443c", strength: 0.5 } };
const BENCH = "#5a3a1e";
/** Pixels of a face of the room where there is no graphics card. */
const PLAIN_SIZE = 128, ROUGHEST_SIZE = 8;

/** `plain`: without a graphics card, where true blurring of the room takes seconds; halved pictures of it stand in. */
export function createRoom(renderer: WebGLRenderer, theme: "light" | "dark", plain: boolean): Room {
  const scene = new Scene();
  const box = new BoxGeometry();
  const materials: MeshBasicMaterial[] = [];
  const add = (panel: Panel, inside: boolean) => {
    const material = new MeshBasicMaterial({ color: new Color(panel.colour).multiplyScalar(panel.strength), ...(inside ? { side: BackSide } : {}) });
    const mesh = new Mesh(box, material);
    mesh.position.set(...panel.at);
    mesh.scale.set(...panel.size);
    materials.push(material);
    scene.add(mesh);
  };
  add({ at: [0, 0, 3], size: [20, 20, 12.5], ...WALLS[theme] }, true);
  add({ at: [0, 0, -2.6], size: [19.9, 19.9, 0.2], colour: BENCH, strength: theme === "light" ? 1 : 0.6 }, false);
  for (const panel of PANELS) add(theme === "light" ? panel : { ...panel, strength: panel.strength * 0.8 }, false);
  const target = plain ? halved(renderer, scene) : blurred(renderer, scene);
  box.dispose();
  for (const material of materials) material.dispose();
  return { texture: target.texture, dispose: () => target.dispose() };
}

const NEAR = 0.1, FAR = 60;

function blurred(renderer: WebGLRenderer, scene: Scene): WebGLCubeRenderTarget {
  const generator = new PMREMGenerator(renderer);
  const target = generator.fromScene(scene, 0.05, NEAR, FAR);
  generator.dispose();
  return target;
}

/** Each rougher picture is the one before at half its size, as a texture is always halved; the roughest has faces of 8 pixels, as in the blurred way. */
function halved(renderer: WebGLRenderer, scene: Scene): WebGLCubeRenderTarget {
  const target = new WebGLCubeRenderTarget(PLAIN_SIZE, { type: HalfFloatType, generateMipmaps: true, minFilter: LinearMipmapLinearFilter });
  new CubeCamera(NEAR, FAR, target).update(renderer, scene);
  target.texture.isPMREMTexture = true;
  // Said afterwards: it is how the shader knows which is the roughest.
  const faces: { width: number; height: number }[] = target.texture.mipmaps;
  for (let size = PLAIN_SIZE; size >= ROUGHEST_SIZE; size /= 2) faces.push({ width: size, height: size });
  return target;
}
