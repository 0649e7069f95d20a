// Everything of a movement that is drawn, as flat rows: which thing, on which arbor, of what metal, and its shape. Rows
// are worked out when the movement changes; shapes come from the library, so that only what changed is made.
import { BufferAttribute, BufferGeometry } from "three";
import { meshOf, meshTextOf, thingsOf, type Mesh, type Movement, type Thing } from "../../geometry/index.ts";
import type { Metal } from "../metal/metals.ts";
import type { Library } from "./library.ts";

export interface Solid {
  readonly id: string;
  /** Index of the arbor it turns with, or null: it stands in the frame. */
  readonly arbor: number | null;
  /** Where its axis stands if it is on no arbor. */
  readonly x: number;
  readonly y: number;
  readonly metal: Metal;
  readonly frame: "no" | "back" | "plate";
  readonly shape: BufferGeometry;
}

/** mm: chords no farther from the true curve than this are not seen on a screen. */
const CHORD_MM = 0.03;

export function solidsOf(movement: Movement, library: Library<BufferGeometry>): Solid[] {
  const lowest = [...movement.instrument.frame.plates].sort((a, b) => a.z - b.z)[0]?.id;
  return thingsOf(movement).flatMap((thing) => {
    const { id, arbor, x, y } = thing;
    const frame = arbor !== null ? "no" : thing.kind === "plate" && id !== lowest ? "plate" : "back";
    const mesh = () => meshOf(movement, id, { chordMm: CHORD_MM });
    const shape = library.take(contentOf(thing, movement), () => shapeOf(mesh()));
    return [{ id, arbor, x, y, metal: metalOf(thing), frame, shape }];
  });
}

/** The kernel's arrays are handed on as they are; nothing to draw is an empty shape. */
export function shapeOf(mesh: Mesh | null): BufferGeometry {
  const shape = new BufferGeometry();
  shape.setAttribute("position", new BufferAttribute(mesh?.positions ?? new Float32Array(0), 3));
  shape.setAttribute("normal", new BufferAttribute(mesh?.normals ?? new Float32Array(0), 3));
  shape.setIndex(new BufferAttribute(mesh?.indices ?? new Uint32Array(0), 1));
  return shape;
}

/** Pillars stand about their own axes: those of one height and width share a shape wherever they stand. */
function contentOf(thing: Thing, movement: Movement): string {
  const pillar = thing.kind === "pillar" && movement.instrument.frame.pillars.find((p) => p.id === thing.id);
  return pillar ? JSON.stringify(["pillar", pillar.diameter, pillar.from, pillar.to]) : meshTextOf(movement, thing.id);
}

/** What the file says of the metal, else what is usual. */
function metalOf({ kind, material, metal }: Thing): Metal {
  const said = material?.toLowerCase() ?? "";
  if (/blued/.test(said)) return "blued";
  if (/steel|iron/.test(said)) return "steel";
  if (/silver/.test(said)) return "silvered";
  if (kind === "plate") return "plate";
  if (metal === "blued steel") return "blued";
  if (metal === "steel" && !/brass|bronze/.test(said)) return kind === "arbor" || kind === "square" ? "arbor" : "steel";
  return "brass";
}
