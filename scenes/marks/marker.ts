// Moves the marks over the picture, frame by frame: finds where heads (from behind: feet) and places fall on the screen, has the letters
// placed, and writes positions straight to the elements. Pixels, y downwards.
import { Vector3, type Camera } from "three";
import { POSE_STRIDE, type Finding, type Movement } from "../../geometry/index.ts";
import type { Frame, Size } from "../stage.ts";
import { edgeTowards, placeLetters, type Anchor, type Box, type Slot } from "./place.ts";
import { arborOf, placeOf } from "./quarrel.ts";

export interface Marker {
  draw(frame: Frame): void;
  /** Places the letters took, by arbor id. */
  readonly slots: Map<string, Slot>;
}

/** Room at the top for what the screen lays over the picture. */
const HEAD_PX = 8;
const RING_PX = 19;
const EDGE_PX = 8;
/** A letter wants so much of the picture, in px²; those that matter least give way in a small one. */
const LETTER_ROOM = 9000;
const point = new Vector3();

export interface Marked {
  readonly movement: Movement;
  /** Indices of the arbors that have letters, in the order of their elements. */
  readonly lettered: readonly number[];
  /** Those that never give way. */
  readonly first: ReadonlySet<number>;
  readonly finding: Finding | null;
  /** Id of the arbor that hangs over its place. */
  readonly held: string | null;
}

export function createMarker(over: HTMLElement, marked: Marked, before: Marker | null): Marker {
  const { movement, lettered, first, finding } = marked;
  const buttons = [...over.querySelectorAll<HTMLElement>(".letters button")];
  const leaders = [...over.querySelectorAll<SVGGElement>("svg g:not(.place, .held)")].filter((g) => g.querySelector("line"));
  const sizes = buttons.map((b) => ({ width: b.offsetWidth || 22, height: b.offsetHeight || 22 }));
  const caption = over.querySelector<HTMLElement>(".caption");
  const captionSize = caption && { width: caption.offsetWidth, height: caption.offsetHeight };
  const place = finding && placeOf(finding, movement);
  const lifter = finding ? arborOf(finding.between[0] ?? "", movement) : -1;
  const ring = over.querySelector<SVGGElement>(".place");
  const slots = before?.slots ?? new Map<string, Slot>();

  return {
    slots,
    draw(frame) {
      const { camera, size, poses, raised } = frame;
      const behind = camera.getWorldDirection(point).z > 0.2;
      const middle = { x: size.width / 2, y: size.height / 2 };
      drawHeld(over, marked, frame);
      const room = shownIn(size, lettered, first);
      const anchors = lettered.map((i, n): Anchor & { id: string; n: number } => {
        const worked = movement.arbors[i];
        const end = (behind ? worked?.arbor.foot : worked?.arbor.head) ?? 0;
        const at = onScreen(poses[POSE_STRIDE * i] ?? 0, poses[POSE_STRIDE * i + 1] ?? 0, end + (raised[i] ?? 0), camera, size);
        return { ...at, ...(sizes[n] ?? { width: 22, height: 22 }), id: worked?.id ?? "", n };
      }).filter(({ n }) => room.has(n));
      const taken: Box[] = [];
      if (place && ring && caption && captionSize) {
        const lift = lifter < 0 ? 0 : raised[lifter] ?? 0;
        const at = onScreen(place[0], place[1], place[2] + lift, camera, size);
        const box = captionBox(at, captionSize, size);
        taken.push(box, { ...at, width: 2 * RING_PX, height: 2 * RING_PX });
        move(caption, box);
        drawRing(ring, at, box);
      }
      const placed = placeLetters(anchors, { ...size, top: HEAD_PX, middle }, anchors.map((a) => slots.get(a.id)), taken);
      buttons.forEach((button, n) => { button.style.visibility = room.has(n) ? "" : "hidden"; });
      leaders.forEach((leader, n) => { leader.style.visibility = room.has(n) ? "" : "hidden"; });
      placed.forEach((letter, k) => {
        const anchor = anchors[k], button = buttons[anchor?.n ?? -1], leader = leaders[anchor?.n ?? -1];
        if (!button || !leader || !anchor) return;
        const box = { x: letter.x, y: letter.y, width: anchor.width, height: anchor.height };
        slots.set(anchor.id, letter.slot);
        move(button, box);
        drawLine(leader.querySelector("line"), edgeTowards(box, anchor), anchor);
        setAt(leader.querySelector("circle"), anchor);
      });
    },
  };
}

/** Which of the letters (by place in the list) a picture of that size has room for. */
function shownIn({ width, height }: Size, lettered: readonly number[], first: ReadonlySet<number>): ReadonlySet<number> {
  const room = Math.floor((width * height) / LETTER_ROOM);
  const order = lettered.map((_, n) => n).sort((a, b) => Number(first.has(lettered[b] ?? -1)) - Number(first.has(lettered[a] ?? -1)) || a - b);
  return new Set(order.filter((n, k) => k < room || first.has(lettered[n] ?? -1)));
}

type Point = { readonly x: number; readonly y: number };

function onScreen(x: number, y: number, z: number, camera: Camera, { width, height }: Size): Point {
  point.set(x, y, z).project(camera);
  return { x: (0.5 + point.x / 2) * width, y: (0.5 - point.y / 2) * height };
}

/** The caption stands below the place, or over it, and to the side, as there is room. */
function captionBox(at: Point, box: { width: number; height: number }, size: Size): Box {
  const gap = Math.min(110, 0.16 * size.width), side = at.x + gap + box.width < size.width - EDGE_PX ? 1 : -1;
  const below = at.y + RING_PX + EDGE_PX + box.height < size.height - EDGE_PX ? 1 : -1;
  const fit = (x: number, half: number, whole: number) => Math.min(whole - half - EDGE_PX, Math.max(half + EDGE_PX, x));
  return {
    x: fit(at.x + side * (gap + box.width / 2), box.width / 2, size.width),
    y: fit(at.y + below * (gap + box.height / 2), box.height / 2, size.height),
    ...box,
  };
}

/** The chain line from the foot of what hangs, or the lower face of a part, to where it goes in. */
function drawHeld(over: HTMLElement, { movement, held }: Marked, { camera, size, poses, held: by }: Frame): void {
  const chain = over.querySelector<SVGGElement>(".held"), part = held === null ? undefined : movement.partIndex.get(held);
  const i = part?.arbor ?? (held === null ? undefined : movement.arborIndex.get(held)), arbor = movement.arbors[i ?? -1]?.arbor;
  if (!chain) return;
  chain.style.visibility = arbor === undefined ? "hidden" : "";
  if (i === undefined || arbor === undefined) return;
  const x = poses[POSE_STRIDE * i] ?? 0, y = poses[POSE_STRIDE * i + 1] ?? 0, low = (part && arbor.parts[part.part]?.z) ?? arbor.foot;
  const seat = onScreen(x, y, low, camera, size);
  drawLine(chain.querySelector("line"), onScreen(x, y, low + by, camera, size), seat);
  chain.querySelector("path")?.setAttribute("transform", `translate(${seat.x.toFixed(1)} ${seat.y.toFixed(1)})`);
}

function drawRing(ring: SVGGElement, at: Point, box: Box): void {
  const from = edgeTowards(box, at), d = Math.max(1e-6, Math.hypot(from.x - at.x, from.y - at.y));
  const rim = { x: at.x + (RING_PX * (from.x - at.x)) / d, y: at.y + (RING_PX * (from.y - at.y)) / d };
  for (const circle of ring.querySelectorAll("circle")) setAt(circle, at);
  for (const line of ring.querySelectorAll("line")) drawLine(line, from, rim);
}

const move = (element: HTMLElement, box: Box) => {
  element.style.transform = `translate(${Math.round(box.x - box.width / 2)}px, ${Math.round(box.y - box.height / 2)}px)`;
};
function drawLine(line: SVGLineElement | null, a: Point, b: Point): void {
  line?.setAttribute("x1", a.x.toFixed(1));
  line?.setAttribute("y1", a.y.toFixed(1));
  line?.setAttribute("x2", b.x.toFixed(1));
  line?.setAttribute("y2", b.y.toFixed(1));
}
function setAt(circle: SVGCircleElement | null, at: Point): void {
  circle?.setAttribute("cx", at.x.toFixed(1));
  circle?.setAttribute("cy", at.y.toFixed(1));
}
