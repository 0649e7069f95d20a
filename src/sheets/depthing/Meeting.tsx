// Two engaged parts where they meet, magnified: true teeth, path of contact, and a ring on every place where metal
// touches now. The driver is at the left and turns upward. The crank turns it without React: only transforms are written.
import { useLayoutEffect, useMemo, useRef } from "react";
import { drivenPlaceRad, pitchRadius, type Standing, type Teeth } from "../../../geometry/index.ts";
import { length } from "../../state/figures.ts";
import { useBench } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import type { Size } from "../calliper/useSize.ts";
import { type Sector, sectorOf } from "./sector.ts";
import { acrossOf, tipToRootEnds } from "./turning.ts";

export interface MeetingProps {
  readonly standing: Standing;
  /** Pitches of the driver past the line of centres, by turns of the crank. */
  readonly pitches: (turns: number) => number;
  /** Pixels in a millimetre. */
  readonly scale: number;
  readonly size: Size;
  readonly units: Units;
  /** With the names of its lines, and the clearance figured. */
  readonly lettered: boolean;
}

/** Where a place of the pair comes on the drawing, in pixels. */
interface Placing {
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
}

export function Meeting(props: MeetingProps) {
  const { standing, scale, size, lettered } = props;
  const { pair, path } = standing;
  const across = acrossOf(pair);
  const place: Placing = { x: (mm) => size.width / 2 + (mm - across.pitchPoint) * scale, y: (mm) => size.height / 2 - mm * scale };
  const touches = path.map(({ touch }) => `${place.x(touch.x).toFixed(1)},${place.y(touch.y).toFixed(1)}`).join(" ");
  const circles = [[0, pair.driver], [across.drivenAxis, pair.driven]] as const;
  const middle = size.height / 2;
  return (
    <svg className="meeting" viewBox={`0 0 ${size.width} ${size.height}`} aria-hidden="true">
      <Turning {...props} place={place} drivenAxis={across.drivenAxis} />
      {circles.map(([axis, side]) => (
        <g key={side.id}>
          <circle className="pitch" cx={place.x(axis)} cy={middle} r={pitchRadius(side.teeth) * scale} />
          <circle className="tip" cx={place.x(axis)} cy={middle} r={side.tipRadiusMm * scale} />
          <path className="axis" d={`M${place.x(axis) - 6} ${middle}h12M${place.x(axis)} ${middle - 6}v12`} />
        </g>
      ))}
      <line className="centres" x1={0} y1={middle} x2={size.width} y2={middle} />
      <polyline className="contact" points={touches} />
      {lettered && <Letters {...props} place={place} />}
      <Rings {...props} place={place} />
    </svg>
  );
}

/** The two sets of teeth, turned by the crank. */
function Turning({ standing, pitches, scale, size, place, drivenAxis }: MeetingProps & { readonly place: Placing; readonly drivenAxis: number }) {
  const { clock } = useBench();
  const { driver, driven, annulus } = standing.pair;
  const reach = Math.ceil(size.height / scale);
  const first = useSector(driver.teeth, reach), second = useSector(driven.teeth, reach);
  const driverGroup = useRef<SVGGElement>(null), drivenGroup = useRef<SVGGElement>(null);
  const x1 = place.x(0), x2 = place.x(drivenAxis), y = place.y(0);
  useLayoutEffect(() => {
    const set = (group: SVGGElement | null, x: number, deg: number) =>
      group?.setAttribute("transform", `translate(${x} ${y}) scale(${scale} ${-scale}) rotate(${deg})`);
    const turn = () => {
      const past = pitches(clock.turns()), share = past - Math.floor(past);
      set(driverGroup.current, x1, (share * 360) / driver.teeth.count);
      const deg = (drivenPlaceRad(standing, past) * 180) / Math.PI;
      set(drivenGroup.current, x2, annulus ? deg : 180 - deg);
    };
    turn();
    return clock.subscribe(turn);
  }, [clock, standing, pitches, scale, x1, x2, y, driver, annulus]);
  return (
    <>
      <Metal group={driverGroup} sector={first} name="driver" />
      <Metal group={drivenGroup} sector={second} name="driven" />
    </>
  );
}

function Metal({ group, sector, name }: { readonly group: React.RefObject<SVGGElement | null>; readonly sector: Sector; readonly name: "driver" | "driven" }) {
  return <g ref={group} className={name}><path className="metal" d={sector.metal} /><path className="edge" d={sector.edge} /></g>;
}

const useSector = (teeth: Teeth, reach: number): Sector => useMemo(() => sectorOf(teeth, reach), [teeth, reach]);

/** Rings enough for the greatest contact ratio that a pair of teeth comes to. */
const MOST_RINGS = 6;

function Rings({ standing: { path }, pitches, place }: MeetingProps & { readonly place: Placing }) {
  const { clock } = useBench();
  const group = useRef<SVGGElement>(null);
  useLayoutEffect(() => {
    const turn = () => {
      const rings = group.current?.children, first = path[0], last = path.at(-1);
      if (!rings) return;
      let ring = 0;
      const past = pitches(clock.turns()), share = past - Math.floor(past);
      for (let at = first ? share + Math.ceil(first.pitches - share) : 1; first && last && at <= last.pitches && ring < MOST_RINGS; at += 1) {
        const along = ((at - first.pitches) / (last.pitches - first.pitches || 1)) * (path.length - 1), i = Math.min(path.length - 2, Math.floor(along));
        const before = path[Math.max(0, i)], after = path[i + 1];
        if (!before?.bears || !after?.bears) continue;
        const a = before.touch, b = after.touch;
        const x = a.x + (along - i) * (b.x - a.x), y = a.y + (along - i) * (b.y - a.y);
        rings[ring]?.setAttribute("transform", `translate(${place.x(x)} ${place.y(y)})`);
        ring += 1;
      }
      for (let i = 0; i < rings.length; i++) rings[i]?.setAttribute("visibility", i < ring ? "visible" : "hidden");
    };
    turn();
    return clock.subscribe(turn);
  });
  return (
    <g ref={group} className="rings">
      {Array.from({ length: MOST_RINGS }, (_, i) => <g key={i} visibility="hidden"><circle r={6} /><circle className="dot" r={2} /></g>)}
    </g>
  );
}

function Letters({ standing, size, units, place }: MeetingProps & { readonly place: Placing }) {
  const { path, tipToRootMm, pair } = standing;
  const begins = path[0]?.touch, ends = path.at(-1)?.touch;
  return (
    <>
      <text className="blue" x={14} y={size.height / 2 - 8}>line of centres</text>
      {begins && <End at={{ x: place.x(begins.x), y: place.y(begins.y) }} way={-1} size={size} says="contact begins" />}
      {ends && <End at={{ x: place.x(ends.x), y: place.y(ends.y) }} way={1} size={size} says="contact ends" />}
      {tipToRootMm !== null && <Clearance ends={tipToRootEnds(pair)} says={`tip to root ${length(tipToRootMm, units, "distance")}`} size={size} place={place} />}
      <g className="legend">
        <line className="pitch" x1={14} x2={70} y1={size.height - 34} y2={size.height - 34} /><text x={78} y={size.height - 30}>pitch circles</text>
        <line className="tip" x1={14} x2={70} y1={size.height - 14} y2={size.height - 14} /><text x={78} y={size.height - 10}>tip circles</text>
      </g>
    </>
  );
}

/** Room for the words beside the path, px. */
const WORDS_PX = 100;

function End({ at, way, size, says }: { readonly at: { readonly x: number; readonly y: number }; readonly way: 1 | -1; readonly size: Size; readonly says: string }) {
  if (at.y < 0 || at.y > size.height) return null;
  const x = at.x + way * Math.min(78, size.width * 0.14), y = Math.min(size.height - 56, Math.max(44, at.y + way * 22));
  const fits = way > 0 ? x < size.width - WORDS_PX : x > WORDS_PX;
  return (
    <g className="end">
      <line className="cut" x1={at.x - 7} y1={at.y} x2={at.x + 7} y2={at.y} />
      {fits && <><line x1={at.x} y1={at.y} x2={x} y2={y} /><text x={x + way * 6} y={y + 4} textAnchor={way > 0 ? "start" : "end"}>{says}</text></>}
    </g>
  );
}

function Clearance({ ends, says, size, place }: { readonly ends: readonly [number, number] | null; readonly says: string; readonly size: Size; readonly place: Placing }) {
  if (!ends) return null;
  const [a, b] = ends.map(place.x) as [number, number], left = Math.min(a, b), right = Math.max(a, b), middle = size.height / 2;
  // The figure stands on the side away from the teeth that meet, clear of what else is written there.
  const isLeft = left < size.width / 2 - 20, y = isLeft ? 62 : size.height - 62, beyond = isLeft ? y - 8 : y + 8;
  return (
    <g className="clearance">
      <path d={`M${left} ${middle}V${beyond}M${right} ${middle}V${beyond}`} />
      <path d={`M${left - 20} ${y}H${left}M${right} ${y}H${right + 20}`} />
      <path className="arrow" d={`M${left} ${y}l-8 -3v6ZM${right} ${y}l8 -3v6Z`} />
      <text x={isLeft ? left - 26 : right + 26} y={y + 4} textAnchor={isLeft ? "end" : "start"}>{says}</text>
    </g>
  );
}
