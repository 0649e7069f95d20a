// A wheel seen from the dial side: a solid without teeth but for a few at the top, its crossings and what they are marked
// out by. The first tooth, and with it the first arm, stands upright.
import { crossingOutlines, toothOutline, trundleOutlines, type WheelFigures } from "../../../geometry/index.ts";
import { leader } from "../dimension.ts";
import { arc, type Box, circle, line, outlineOn, type Page, polyline, text, view } from "../page.ts";
import { fixed } from "../words.ts";

const CHORD_MM = 0.005;
/** So many teeth are drawn either side of the upright one. */
const SHOWN = 1.5;

export function drawFace(page: Page, w: WheelFigures, x: number, y: number, scale: number, room: Box): void {
  const at = view(page, "face", x, y, scale), up = (mx: number, my: number) => at(-my, mx);
  const tip = (w.blankDiameter / 2) * scale, reach = (Math.max(w.blankDiameter, w.outsideDiameter ?? 0, w.teeth.internal ? w.rootDiameter : 0) / 2) * scale;
  if (w.kind === "lantern") lantern(page, w, up, x, y, scale);
  else teeth(page, w, up, x, y, scale, tip);
  circle(page, x, y, (w.pitchDiameter / 2) * scale, "chain");
  if (w.outsideDiameter !== null && w.teeth.internal) circle(page, x, y, (w.outsideDiameter / 2) * scale);
  const bore = (w.seat.diameter / 2) * scale;
  if (!w.teeth.internal && bore > 0) circle(page, x, y, bore);
  if (w.crossings) crossings(page, w, up, x, y, scale, room);
  line(page, x - reach - 3, y, x + reach + 3, y, "chain");
  line(page, x, y - reach - 3, x, y + reach + 3, "chain");
  for (const side of [1, -1]) {
    line(page, x, y + side * (reach + 4), x, y + side * (reach + 7.5), "wide", "dimension");
    text(page, x + 2, y + side * (reach + 5.8) - 1.2, "A", { layer: "dimension" });
  }
}

/** A few teeth as they are, the rest by their tip circle and a thin root circle; all of them where there are few. */
function teeth(page: Page, w: WheelFigures, up: (x: number, y: number) => readonly [number, number], x: number, y: number, scale: number, tip: number): void {
  const outline = toothOutline(w.teeth, CHORD_MM);
  if (w.count <= 2 * SHOWN + 10) {
    polyline(page, outlineOn(up, outline), true);
    return;
  }
  const pitchRad = (2 * Math.PI) / w.count, reachRad = (SHOWN + 1e-6) * pitchRad;
  const shown: { readonly a: number; readonly x: number; readonly y: number }[] = [];
  for (let i = 0; i < outline.length; i += 2) {
    const a = Math.atan2(outline[i + 1]!, outline[i]!);
    if (Math.abs(a) <= reachRad) shown.push({ a, x: outline[i]!, y: outline[i + 1]! });
  }
  shown.sort((p, q) => p.a - q.a);
  polyline(page, shown.flatMap((p) => [...up(p.x, p.y)]), false);
  const edgeDeg = (reachRad * 180) / Math.PI;
  arc(page, x, y, tip, 90 + edgeDeg, 450 - edgeDeg);
  arc(page, x, y, (w.rootDiameter / 2) * scale, 90 + edgeDeg, 450 - edgeDeg, "narrow");
}

function lantern(page: Page, w: WheelFigures, up: (x: number, y: number) => readonly [number, number], x: number, y: number, scale: number): void {
  circle(page, x, y, ((w.outsideDiameter ?? w.blankDiameter) / 2) * scale);
  for (const outline of trundleOutlines(w.teeth, CHORD_MM)) polyline(page, outlineOn(up, outline), true);
}

/** The first arm as far past the tooth that stands upright as it shall be cut. */
export function onArms({ crossings: c }: WheelFigures, up: (x: number, y: number) => readonly [number, number]): (x: number, y: number) => readonly [number, number] {
  const past = ((c?.pastTooth ?? 0) * Math.PI) / 180, cos = Math.cos(past), sin = Math.sin(past);
  return (x, y) => up(x * cos - y * sin, x * sin + y * cos);
}

function crossings(page: Page, w: WheelFigures, up: (x: number, y: number) => readonly [number, number], x: number, y: number, scale: number, room: Box): void {
  const c = w.crossings;
  if (!c) return;
  const turned = onArms(w, up);
  for (const outline of crossingOutlines(c, w.rootDiameter / 2, CHORD_MM)) polyline(page, outlineOn(turned, outline), true);
  circle(page, x, y, c.inner * scale, "dashed");
  const half = Math.PI / c.arms, sawRadius = c.sawRadius * scale, sawHole = (c.sawDiameter / 2) * scale;
  if (sawHole > 0) {
    circle(page, x, y, sawRadius, "chain");
    for (let k = 0; k < c.arms; k++) {
      const [hx, hy] = turned(c.sawRadius * Math.cos((2 * k + 1) * half), c.sawRadius * Math.sin((2 * k + 1) * half));
      circle(page, hx, hy, sawHole, "narrow");
    }
  }
  const openingDeg = (k: number): number => 90 + c.pastTooth + ((2 * k + 1) * 180) / c.arms;
  // Each leader goes to the opening whose middle lies nearest to its own corner of the view.
  const nearest = (deg: number): number => Array.from({ length: c.arms }, (_, k) => openingDeg(k)).sort((a, b) => apart(a, deg) - apart(b, deg))[0]!;
  const on = (deg: number, radius: number): readonly [number, number] => [x + radius * Math.cos((deg * Math.PI) / 180), y + radius * Math.sin((deg * Math.PI) / 180)];
  const armDeg = Array.from({ length: c.arms }, (_, k) => 90 + c.pastTooth + (k * 360) / c.arms).filter((d) => Math.cos((d * Math.PI) / 180) > 0.3).sort((a, b) => apart(a, 30) - apart(b, 30))[0] ?? 90;
  leader(page, ...on(nearest(135), c.inner * scale), room.left + 22, room.top - 3, [`hub R${fixed(c.inner, 2)}`], "right");
  leader(page, ...on(armDeg, ((c.outer + c.inner) / 2) * scale), room.right - 12, room.top - 3, [`arm ${fixed(c.arm, 2)}`], "left");
  leader(page, ...on(nearest(225), c.outer * scale), room.left + 14, room.bottom + 3, [`R${fixed(c.outer, 2)}`], "right");
  if (sawHole > 0) {
    const deg = nearest(315), [hx, hy] = on(deg, sawRadius);
    leader(page, hx + sawHole * 0.7, hy - sawHole * 0.7, room.right - 24, room.bottom + 3, [`saw entry ø${fixed(c.sawDiameter, 1)}`, `on R${fixed(c.sawRadius, 2)}`], "left");
  }
}

const apart = (a: number, b: number): number => Math.abs((((a - b) % 360) + 540) % 360 - 180);
