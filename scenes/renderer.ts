// The renderer of a movement view, and whether there is a graphics card behind it: without one (tests, old machines)
// neither smooth edges nor shadows are asked for, and pictures come in time.
import { ACESFilmicToneMapping, PCFShadowMap, SRGBColorSpace, WebGLRenderer } from "three";

const SOFTWARE = /swiftshader|llvmpipe|software|basic render/i;

/** null: nothing can be drawn in three dimensions here. `?plain` in the address asks for the plain way. */
export function kindOfCard(): "card" | "plain" | null {
  const gl = document.createElement("canvas").getContext("webgl2");
  if (!gl) return null;
  const info = gl.getExtension("WEBGL_debug_renderer_info");
  const name = info ? String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)) : "";
  gl.getExtension("WEBGL_lose_context")?.loseContext();
  const asked = new URLSearchParams(location.search);
  if (asked.has("fine")) return "card";
  return asked.has("plain") || SOFTWARE.test(name) ? "plain" : "card";
}

export function createRenderer(canvas: HTMLCanvasElement, plain: boolean): WebGLRenderer {
  const renderer = new WebGLRenderer({ canvas, antialias: !plain, alpha: true, powerPreference: "high-performance" });
  renderer.outputColorSpace = SRGBColorSpace;
  renderer.toneMapping = ACESFilmicToneMapping;
  renderer.toneMappingExposure = 1.05;
  renderer.localClippingEnabled = true;
  renderer.shadowMap.enabled = !plain;
  renderer.shadowMap.type = PCFShadowMap;
  renderer.shadowMap.autoUpdate = false;
  renderer.setClearColor(0, 0);
  return renderer;
}
