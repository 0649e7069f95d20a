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
const point = new Vector3();

export function createMarker(over: HTMLElement, lettered: readonly number[], movement: Movement, finding: Finding | null, before: Marker | null): Marker {
  const buttons = [...over.querySelectorAll<HTMLElement>(".letters button")];
  const leaders = [...over.querySelectorAll<SVGGElement>("svg g:not(.place)")].filter((g) => g.querySelector("line"));
  const sizes = buttons.map((b) => ({ width: b.offsetWidth || 22, height: b.offsetHeight || 22 }));
  const caption = over.querySelector<HTMLElement>(".caption");
  const captionSize = caption && { width: caption.offsetWidth, height: caption.offsetHeight };
  const place = finding && placeOf(finding, movement);
  const lifter = finding ? arborOf(finding.between[0] ?? "", movement) : -1;
  const ring = over.querySelector<SVGGElement>(".place");
  const slots = before?.slots ?? new Map<string, Slot>();

  return {
    slots,
    draw({ camera, size, poses, raised }) {
      const behind = camera.getWorldDirection(point).z > 0.2;
      const middle = { x: size.width / 2, y: size.height / 2 };
      const anchors = lettered.map((i, n): Anchor & { id: string } => {
        const worked = movement.arbors[i];
        const end = (behind ? worked?.arbor.foot : worked?.arbor.head) ?? 0;
        const at = onScreen(poses[POSE_STRIDE * i] ?? 0, poses[POSE_STRIDE * i + 1] ?? 0, end + (raised[i] ?? 0), camera, size);
        return { ...at, ...(sizes[n] ?? { width: 22, height: 22 }), id: worked?.id ?? "" };
      });
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
      placed.forEach((letter, n) => {
        const button = buttons[n], leader = leaders[n], anchor = anchors[n];
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

type Point = { readonly x: number; readonly y: number };

function onScreen(x: number, y: number, z: number, camera: Camera, { width, height }: Size): Point {
  point.set(x, y, z).project(camera);
  return { x: (0.5 + point.x / 2) * width, y: (0.5 - point.y / 2) * height };
}

/** The caption stands below the place and to the side that has room. */
function captionBox(at: Point, box: { width: number; height: number }, size: Size): Box {
  const gap = Math.min(110, 0.2 * size.width), side = at.x + gap + box.width < size.width - 8 ? 1 : -1;
  const below = at.y + gap + box.height < size.height - 8 ? 1 : -1;
  const fit = (x: number, half: number, whole: number) => Math.min(whole - half - 8, Math.max(half + 8, x));
  return {
    x: fit(at.x + side * (gap + box.width / 2), box.width / 2, size.width),
    y: fit(at.y + below * (gap + box.height / 2), box.height / 2, size.height),
    ...box,
  };
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
