// What things are made of, to the eye: brass, steel, blued steel, silvering; plain or marked (foul, tight, chosen),
// thinned or whole, whole or cut. One material for each combination in use, shared by all that look alike.
import { Color, DoubleSide, FrontSide, MeshStandardMaterial, Plane, Vector3, type Texture } from "three";
import type { Bound } from "../eye/view.ts";
import { grain, type Graining } from "./graining.ts";

export type Metal = "brass" | "plate" | "steel" | "arbor" | "blued" | "silvered";
/** Why a thing is coloured; null: as the metal is. */
export type Mark = "foul" | "tight" | "free" | "chosen" | null;

export interface Look {
  readonly metal: Metal;
  readonly mark: Mark;
  /** Thinned so that what is behind it can be seen. */
  readonly thin: boolean;
  /** no: neither cut nor thinned with the frame; back: cut only; plate: cut and thinned. */
  readonly frame: "no" | "back" | "plate";
}

/** What all metals of a view share. */
export interface Setting {
  readonly theme: "light" | "dark";
  /** Opacity of the plates that may be thinned. */
  readonly plates: number;
  /** 0 whole … 1 the frame cut away past the far edge of the bound. */
  readonly cut: number;
  readonly bound: Bound;
}

export interface Metals {
  of(look: Look): MeshStandardMaterial;
  /** Silvering with an engraved face; its own user disposes it. */
  face(texture: Texture | null, thin: boolean): MeshStandardMaterial;
  set(setting: Setting): void;
  dispose(): void;
}

interface Finish { readonly colour: string; readonly roughness: number; readonly metalness: number; readonly graining: Graining }
interface Made { readonly look: Look; readonly material: MeshStandardMaterial }

const FINISH: Record<Metal, Finish> = {
  brass: { colour: "#dca648", roughness: 0.34, metalness: 1, graining: { depth: 0.85, strokes: 7 } },
  plate: { colour: "#dba951", roughness: 0.42, metalness: 1, graining: { depth: 1, strokes: 4.5 } },
  steel: { colour: "#b4b9be", roughness: 0.4, metalness: 1, graining: { depth: 0.6, strokes: 8 } },
  arbor: { colour: "#9a9fa5", roughness: 0.3, metalness: 1, graining: { depth: 0.2, strokes: 8 } },
  blued: { colour: "#17358c", roughness: 0.3, metalness: 0.85, graining: { depth: 0, strokes: 1 } },
  silvered: { colour: "#cfd0cc", roughness: 0.55, metalness: 0.6, graining: { depth: 0.3, strokes: 5 } },
};
const MARKED: Record<Exclude<Mark, null>, string> = { foul: "#e5512b", tight: "#d98a12", free: "#2f9c80", chosen: "#5f93c4" };
const DARK_BLUED = "#6d97e6";
const THIN = 0.16;

export function createMetals(): Metals {
  const made = new Map<string, Made>(), faces = new Set<Made>();
  const section = { value: new Color("#c9a35c") };
  const plane = new Plane(new Vector3(0, 1, 0), 0);
  let setting: Setting = { theme: "light", plates: 1, cut: 0, bound: { x: 0, y: 0, radiusMm: 1, lowMm: 0, highMm: 1 } };
  const make = (look: Look): Made => {
    const { roughness, metalness, graining } = FINISH[look.metal];
    const material = new MeshStandardMaterial({ roughness, metalness: look.mark ? Math.min(metalness, 0.55) : metalness });
    grain(material, graining, section);
    dress({ look, material }, setting, plane);
    return { look, material };
  };
  return {
    of(look) {
      const key = `${look.metal} ${look.mark} ${look.thin} ${look.frame}`;
      const one = made.get(key) ?? make(look);
      made.set(key, one);
      return one.material;
    },
    face(texture, thin) {
      const one = make({ metal: "silvered", mark: null, thin, frame: "back" });
      one.material.map = texture;
      faces.add(one);
      one.material.addEventListener("dispose", () => faces.delete(one));
      return one.material;
    },
    set(to) {
      setting = to;
      plane.constant = -(to.bound.y - to.bound.radiusMm + 2 * to.bound.radiusMm * to.cut);
      for (const one of [...made.values(), ...faces]) dress(one, to, plane);
    },
    dispose() {
      for (const { material } of [...made.values(), ...faces]) material.dispose();
      made.clear();
    },
  };
}

function dress({ look, material }: Made, { theme, plates, cut }: Setting, plane: Plane): void {
  const colour = look.mark ? MARKED[look.mark] : look.metal === "blued" && theme === "dark" ? DARK_BLUED : FINISH[look.metal].colour;
  material.color.set(colour);
  const opacity = Math.min(look.frame === "plate" ? plates : 1, look.thin ? THIN : 1);
  material.opacity = opacity;
  material.visible = opacity > 0.005;
  material.depthWrite = opacity >= 1;
  const cutting = cut > 0 && look.frame !== "no";
  const side = cutting ? DoubleSide : FrontSide;
  if (material.transparent !== opacity < 1 || material.side !== side) material.needsUpdate = true;
  material.transparent = opacity < 1;
  material.side = side;
  material.clippingPlanes = cutting ? [plane] : [];
}
