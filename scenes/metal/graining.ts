// The turned look: metal that came off the lathe reflects along its grooves. Flat faces get circular graining about
// their own axis: the normal is bent towards the eye across the groove (a disc then shows the bright fans of a turned
// face), with fine strokes in tone and polish. Backs of faces, seen only through a cut, are drawn as a flat hatched
// section: in a closed solid they are exactly what the cutting plane bares. Patches of the standard shader; no textures.
import { Color, type IUniform, type MeshStandardMaterial, type WebGLProgramParametersWithUniforms } from "three";

export interface Graining {
  /** 0 polished … 1 strongly grained. */
  readonly depth: number;
  /** Strokes a millimetre. */
  readonly strokes: number;
}

export function grain(material: MeshStandardMaterial, graining: Graining, section: { value: Color }): void {
  const uniforms: Record<string, IUniform> = {
    grainDepth: { value: graining.depth },
    grainStrokes: { value: graining.strokes },
    sectionColour: section,
  };
  material.onBeforeCompile = (shader: WebGLProgramParametersWithUniforms) => {
    Object.assign(shader.uniforms, uniforms);
    shader.vertexShader = shader.vertexShader
      .replace("#include <common>", `#include <common>\n${VARYINGS}`)
      .replace("#include <begin_vertex>", `#include <begin_vertex>\n${VERTEX}`);
    shader.fragmentShader = shader.fragmentShader
      .replace("#include <common>", `#include <common>\n${VARYINGS}${FUNCTIONS}`)
      .replace("#include <normal_fragment_maps>", `#include <normal_fragment_maps>\n${FACE}`)
      .replace("#include <lights_fragment_end>", `#include <lights_fragment_end>\n${SHADE}`)
      .replace("#include <opaque_fragment>", `#include <opaque_fragment>\n${SECTION}`);
  };
  material.customProgramCacheKey = () => "grained";
}

const VARYINGS = /* glsl */ `
varying vec3 vAbout;
varying vec3 vAboutNormal;
`;

const VERTEX = /* glsl */ `
vAbout = position;
vAboutNormal = normal;
`;

const FUNCTIONS = /* glsl */ `
uniform float grainDepth;
uniform float grainStrokes;
uniform vec3 sectionColour;
uniform mat3 normalMatrix;

float scatter(vec2 p) { return fract(sin(dot(p, vec2(127.1, 311.7))) * 43758.5453); }
float drift(vec2 p) {
  vec2 i = floor(p), f = fract(p);
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(scatter(i), scatter(i + vec2(1.0, 0.0)), f.x),
             mix(scatter(i + vec2(0.0, 1.0)), scatter(i + vec2(1.0, 1.0)), f.x), f.y);
}
// Strokes along the circle through p: long round the axis, fine across, each octave fading before it would shimmer.
float strokes(vec2 p) {
  float r = length(p), turn = atan(p.y, p.x);
  float sum = 0.0, across = grainStrokes * 0.4;
  for (int i = 0; i < 3; i++) {
    float seen = 1.0 - smoothstep(0.25, 0.9, fwidth(r) * across);
    sum += seen * (drift(vec2(r * across, abs(turn) * (3.0 + float(i)) + float(i) * 17.0)) - 0.5);
    across *= 2.3;
  }
  return sum;
}
`;

const FACE = /* glsl */ `
{
  float face = smoothstep(0.7, 0.97, abs(vAboutNormal.z)) * grainDepth;
  if (face > 0.001) {
    float stroke = strokes(vAbout.xy);
    vec3 along = normalize(normalMatrix * vec3(-vAbout.y, vAbout.x, 1e-4));
    vec3 eye = normalize(vViewPosition);
    vec3 bent = normalize(eye - along * dot(eye, along) + normal * 0.35);
    normal = normalize(mix(normal, bent, face * (0.3 + 0.2 * stroke)));
    roughnessFactor = clamp(roughnessFactor + face * (0.06 + 0.1 * stroke), 0.05, 1.0);
    diffuseColor.rgb *= 1.0 + face * 0.16 * stroke;
  }
}
`;

// Metal shows no shadow of its own, only what it reflects: where the sun is hidden, so is much of the room.
const SHADE = /* glsl */ `
#if defined(USE_SHADOWMAP) && NUM_DIR_LIGHT_SHADOWS > 0
if (receiveShadow) {
  DirectionalLightShadow sun = directionalLightShadows[0];
  float lit = getShadow(directionalShadowMap[0], sun.shadowMapSize, 1.0, sun.shadowBias, 2.0 * sun.shadowRadius, vDirectionalShadowCoord[0]);
  reflectedLight.indirectSpecular *= mix(0.58, 1.0, lit);
  reflectedLight.indirectDiffuse *= mix(0.6, 1.0, lit);
}
#endif
`;

const SECTION = /* glsl */ `
#ifdef DOUBLE_SIDED
if (!gl_FrontFacing) {
  float line = abs(fract((gl_FragCoord.x + gl_FragCoord.y) / 11.0) - 0.5) * 11.0;
  gl_FragColor = vec4(mix(sectionColour * 0.55, sectionColour, smoothstep(0.5, 1.3, line)), 1.0);
}
#endif
`;
