// The engraved face of a chapter ring: a closed ring with its divisions and numerals on a strip of canvas that runs
// round it. Across the strip: a blank margin, the numerals, the divisions, a blank margin.
import { BufferAttribute, BufferGeometry, CanvasTexture, SRGBColorSpace } from "three";
import type { Ring } from "./rings.ts";

const STRIP = 4096;
const SERIF = "'Palatino Linotype', Palatino, 'Book Antiqua', 'TeX Gyre Pagella', Georgia, serif";
const INK = "#23282c";
/** Sides and back of the ring show this blank share of the strip. */
const BLANK = 0.02;

export function ringGeometry(ring: Ring, steps = 192): BufferGeometry {
  const { insideMm: a, outsideMm: b, z: low } = ring, high = low + ring.thickness;
  // Round the section: top, outside, back, inside; each its own corners, so that edges stay sharp.
  const section: readonly [number, number, number, number, number][] = [
    [a, high, 0, 0, 1], [b, high, 1, 0, 1], [b, high, BLANK, 1, 0], [b, low, BLANK, 1, 0],
    [b, low, BLANK, 0, -1], [a, low, BLANK, 0, -1], [a, low, BLANK, -1, 0], [a, high, BLANK, -1, 0],
  ];
  const positions: number[] = [], normals: number[] = [], uvs: number[] = [], indices: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const clockwise = (2 * Math.PI * i) / steps, x = Math.sin(clockwise), y = Math.cos(clockwise);
    for (const [r, z, v, out, upward] of section) {
      positions.push(r * x, r * y, z);
      normals.push(out * x, out * y, upward);
      uvs.push(i / steps, v);
    }
  }
  for (let i = 0; i < steps; i++)
    for (let s = 0; s < 8; s += 2) {
      const p = 8 * i + s, q = p + 8;
      indices.push(p, q, p + 1, p + 1, q, q + 1);
    }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float32Array.from(positions), 3));
  geometry.setAttribute("normal", new BufferAttribute(Float32Array.from(normals), 3));
  geometry.setAttribute("uv", new BufferAttribute(Float32Array.from(uvs), 2));
  geometry.setIndex(indices);
  return geometry;
}

/** null where there is nothing to draw on (outside a page). */
export function ringTexture(ring: Ring): CanvasTexture | null {
  if (typeof document === "undefined") return null;
  const canvas = document.createElement("canvas");
  const bandMm = ring.outsideMm - ring.insideMm, roundMm = Math.PI * (ring.insideMm + ring.outsideMm);
  canvas.width = STRIP;
  canvas.height = Math.min(1024, Math.max(32, Math.round((STRIP * bandMm) / roundMm)));
  const pen = canvas.getContext("2d");
  if (pen) engrave(pen, ring, canvas.height);
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  return texture;
}

function engrave(pen: CanvasRenderingContext2D, ring: Ring, height: number): void {
  pen.fillStyle = "#ffffff";
  pen.fillRect(0, 0, STRIP, height);
  pen.fillStyle = INK;
  const line = Math.max(1.5, 0.018 * height);
  const rule = (share: number, width = line) => pen.fillRect(0, share * height - width / 2, STRIP, width);
  // The strip's top is the ring's outside.
  for (const share of [0.05, 0.27, 0.95]) rule(share);
  for (const { turn, weight } of ring.marks) {
    const x = STRIP * turn, [width, share] = ([[line, 0.11], [1.4 * line, 0.22], [2.2 * line, 0.22]] as const)[weight];
    for (const shift of roundTheEnd(x, width)) pen.fillRect(x + shift - width / 2, 0.05 * height, width, share * height);
  }
  pen.textAlign = "center";
  pen.textBaseline = "alphabetic";
  const room = STRIP * leastApart(ring.letters.map((l) => l.turn));
  for (const { turn, text } of ring.letters) {
    let size = 0.56 * height;
    pen.font = `600 ${size}px ${SERIF}`;
    const width = pen.measureText(text).width;
    if (width > 0.8 * room) pen.font = `600 ${size *= (0.8 * room) / width}px ${SERIF}`;
    const x = STRIP * turn, baseline = 0.61 * height + 0.34 * size;
    for (const shift of roundTheEnd(x, room)) pen.fillText(text, x + shift, baseline);
  }
  const upAt = (mm: number) => ((ring.outsideMm - mm) / (ring.outsideMm - ring.insideMm)) * height;
  for (const { turn, breadth, fromMm, toMm } of ring.windows) for (const shift of roundTheEnd(STRIP * turn, (STRIP * breadth) / 2))
    pen.fillRect(STRIP * (turn - breadth / 2) + shift, upAt(toMm), STRIP * breadth, upAt(fromMm) - upAt(toMm));
}

/** The strip runs clockwise from the top of the dial; what stands at its end is drawn at its beginning too. */
const roundTheEnd = (x: number, width: number): readonly number[] => (x < width ? [0, STRIP] : x > STRIP - width ? [0, -STRIP] : [0]);

/** The least part of a turn from one to the next, all round. */
export function leastApart(turns: readonly number[]): number {
  const inOrder = [...turns].sort((a, b) => a - b);
  return inOrder.reduce((least, turn, i) => Math.min(least, i === 0 ? turn + 1 - (inOrder.at(-1) ?? 0) : turn - (inOrder[i - 1] ?? 0)), 1);
}
