// The plan, seen from the dial side: plates and pillars wide, tip circles thin, pitch circles chain, a cross on every
// axis. Arbors are chosen and moved here, by hand or by keys.
import { useMemo, useState } from "react";
import { type Finding, type MayStand, type Movement, pitchRadius, type SmallestGap, type SweptThing, sweptThings } from "../../../geometry/index.ts";
import { cannotMove, type Place } from "../../commands/planting.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import type { Drag } from "../../state/state.ts";
import { arborOf } from "../words.tsx";
import { type AxisGroup, axesOf, engagedAxes } from "./axes.ts";
import type { Box } from "./callout.ts";
import { Callout } from "./Callout.tsx";
import { type Frame, fit, outlinePath } from "./frame.ts";
import { Handle } from "./Handle.tsx";
import { Hatches } from "./Hatches.tsx";
import { type LetterPlace, placeLetters } from "./letters.ts";
import { snapped } from "./snap.ts";
import { SlideArcs, Standing } from "./Standing.tsx";
import { type Size, useSize } from "./useSize.ts";

export interface PlanProps {
  readonly movement: Movement;
  readonly chosen: string | null;
  readonly finding: Finding | null;
  readonly drag: Drag | null;
  /** With a bar of known length under it, and the scale. */
  readonly scaled: boolean;
  /** Where the chosen arbor may stand, to be drawn. */
  readonly stand: MayStand | null;
  readonly snap: boolean;
  /** The smallest gap, to be named at its place. */
  readonly least: SmallestGap | null;
}

/** So near a place that would be chosen by eye, the hand stands there. */
const SNAP_PX = 7;

/** Sets the class by which a thing is marked as chosen, or as of the finding that is shown. */
type MarkOf = (ids: readonly string[]) => string;

export function Plan(props: PlanProps) {
  const [box, size] = useSize<HTMLDivElement>();
  return <div className="drawing" ref={box}>{size && size.width > 0 && <Drawn {...props} size={size} />}</div>;
}

function Drawn({ movement, chosen, finding, drag, scaled, stand, snap, least, size }: PlanProps & { readonly size: Size }) {
  const { choose } = useActions();
  const [near, setNear] = useState<string | null>(null);
  const frame = useMemo(() => fit(movement, size), [movement, size]);
  const things = useMemo(() => sweptThings(movement), [movement]);
  const axes = useMemo(() => axesOf(movement), [movement]);
  const letters = useMemo(() => placeLetters(axes.map((a) => ({ x: frame.x(a.x), y: frame.y(a.y), text: a.letters })), size), [axes, frame, size]);
  const keepClear = useMemo(() => [...crossBoxes(axes, frame), ...axes.map((a, i) => letterBox(a.letters, letters[i])), scaleBox(size)], [axes, frame, letters, size]);
  const chosenArbor = arborOf(movement, chosen);
  const snapTo = (arbor: string, to: Place) => {
    const { says, ...place } = snapped(movement, arbor, to, SNAP_PX / frame.k);
    setNear(says || null);
    return place;
  };
  const markOf: MarkOf = (ids) => (finding?.between.some((id) => ids.includes(id)) ? `is-${finding.severity}`
    : ids.some((id) => id === chosen || id === chosenArbor) ? "chosen" : "");
  return (
    <>
      <svg className="drawn" viewBox={`0 0 ${size.width} ${size.height}`} role="group" aria-label="Plan from the dial side"
        onClick={(event) => { if (event.target === event.currentTarget) choose(null); }}>
        <Hatches />
        <Frames movement={movement} frame={frame} markOf={markOf} />
        <clipPath id="in-plates">{movement.instrument.frame.plates.map((p) => <path key={p.id} d={outlinePath(p.outline, frame)} />)}</clipPath>
        {stand && <Standing stand={stand} frame={frame} />}
        {things.filter(isRound).map((t) => <Disc key={t.id} thing={t} movement={movement} frame={frame} markOf={markOf} />)}
        {engagedAxes(movement, axes).map(([a, b]) => <Centres key={`${a} ${b}`} a={axes[a]} b={axes[b]} frame={frame} />)}
        {axes.map((axis) => <Orbit key={axis.letters} things={things.filter((t) => isRound(t) && axis.arbors.includes(t.arbor))} frame={frame} />)}
        {stand && <SlideArcs stand={stand} frame={frame} />}
        {drag && <Former drag={drag} things={things} movement={movement} frame={frame} />}
        <Crosses movement={movement} axes={axes} frame={frame} letters={letters} markOf={markOf} chosenArbor={chosenArbor} snap={snap ? snapTo : null} />
        {least && <Callout least={least} frame={frame} size={size} keepClear={keepClear} />}
      </svg>
      {drag !== null && near !== null && <p className="near note" role="status">{near}</p>}
      {scaled && <Scale frame={frame} />}
    </>
  );
}

/** What the words about the smallest gap leave to be seen: what is taken hold of, the letters, the bar of known length. */
const crossBoxes = (axes: readonly AxisGroup[], frame: Frame): readonly Box[] => axes.map((a) => ({ x: frame.x(a.x) - 14, y: frame.y(a.y) - 14, width: 28, height: 28 }));
const letterBox = (letters: string, at: LetterPlace | undefined): Box => ({ x: (at?.x ?? 0) - letters.length * 5, y: (at?.y ?? 0) - 9, width: letters.length * 10, height: 18 });
const scaleBox = ({ width, height }: Size): Box => ({ x: 0, y: height - 34, width, height: 34 });

/** Pixels of the page in a millimetre, as browsers count them. */
const PAGE_PX_PER_MM = 96 / 25.4;

function Scale({ frame }: { readonly frame: Frame }) {
  const units = useNow((s) => s.units);
  const [mm, says] = units === "mm" ? [20, "20 mm"] : [25.4, "1 in"];
  const times = frame.k / PAGE_PX_PER_MM;
  return (
    <div className="scale note">
      <span><span className="bar" style={{ width: mm * frame.k }} /> {says}</span>
      <span>scale {times >= 1 ? `${times.toFixed(1)} : 1` : `1 : ${(1 / times).toFixed(1)}`}</span>
    </div>
  );
}

const ROUND: ReadonlySet<SweptThing["kind"]> = new Set(["wheel", "pinion", "lantern", "disc", "slot", "ratchet"]);
const isRound = (t: SweptThing): boolean => ROUND.has(t.kind);

function Frames({ movement, frame, markOf }: { readonly movement: Movement; readonly frame: Frame; readonly markOf: MarkOf }) {
  const { plates, pillars, case: housing } = movement.instrument.frame;
  const { choose } = useActions();
  return (
    <>
      {housing && <circle className="case" cx={frame.x(0)} cy={frame.y(0)} r={(housing.insideDiameter / 2) * frame.k} />}
      {plates.map((p) => <path key={p.id} className="ground" d={outlinePath(p.outline, frame)} onClick={() => choose(null)} />)}
      {plates.map((p) => (
        <g key={p.id} className={markOf([p.id])}>
          <path className="plate" d={outlinePath(p.outline, frame)} />
          {p.openings?.map((o, i) => <circle key={i} className="opening" cx={frame.x(o.x)} cy={frame.y(o.y)} r={(o.diameter / 2) * frame.k} />)}
        </g>
      ))}
      {pillars.map((p) => (
        <g key={p.id} className={markOf([p.id])}>
          <circle className="pillar tip pick" cx={frame.x(p.x)} cy={frame.y(p.y)} r={(p.diameter / 2) * frame.k} onClick={() => choose(p.id)}>
            <title>Pillar {p.id}</title>
          </circle>
        </g>
      ))}
    </>
  );
}

function Disc({ thing, movement, frame, markOf }: { readonly thing: SweptThing; readonly movement: Movement; readonly frame: Frame; readonly markOf: MarkOf }) {
  const { choose } = useActions();
  const at = movement.arbors[thing.arbor];
  const [cylinder] = thing.cylinders;
  if (!at || !cylinder) return null;
  const teeth = movement.teeth.get(thing.id);
  const tip = (cylinder.inner > 0 ? cylinder.inner : cylinder.radius) * frame.k;
  const place = { cx: frame.x(at.x), cy: frame.y(at.y) };
  return (
    <g className={`${markOf([thing.id])} pick`} onClick={() => choose(thing.id)}>
      <circle className="disc" {...place} r={cylinder.radius * frame.k} />
      {cylinder.inner > 0 && <circle className="tip" {...place} r={cylinder.radius * frame.k} />}
      <circle className="tip" {...place} r={tip} />
      {teeth && <circle className="pitch" {...place} r={pitchRadius(teeth) * frame.k} />}
      <title>{thing.id}</title>
    </g>
  );
}

function Centres({ a, b, frame }: { readonly a: AxisGroup | undefined; readonly b: AxisGroup | undefined; readonly frame: Frame }) {
  return a && b ? <line className="centres" x1={frame.x(a.x)} y1={frame.y(a.y)} x2={frame.x(b.x)} y2={frame.y(b.y)} /> : null;
}

/** As far out as an axis that is carried round takes anything of it. */
function Orbit({ things, frame }: { readonly things: readonly SweptThing[]; readonly frame: Frame }) {
  const [carried] = things.filter((t) => t.axis.swings.length > 0);
  if (!carried) return null;
  const { x, y, atRest } = carried.axis;
  const reach = Math.hypot(atRest.x - x, atRest.y - y) + Math.max(...things.flatMap((t) => t.cylinders.map((c) => c.radius)));
  return <circle className="orbit" cx={frame.x(x)} cy={frame.y(y)} r={reach * frame.k} />;
}

/** Where the arbor in hand was when it was taken up. */
function Former({ drag, things, movement, frame }: { readonly drag: Drag; readonly things: readonly SweptThing[]; readonly movement: Movement; readonly frame: Frame }) {
  const at = movement.arborIndex.get(drag.arbor);
  return things.filter((t) => t.arbor === at && isRound(t)).map((t) => (
    <circle key={t.id} className="former" cx={frame.x(drag.from.x)} cy={frame.y(drag.from.y)} r={(t.cylinders[0]?.radius ?? 0) * frame.k} />
  ));
}

function Crosses({ movement, axes, frame, letters, markOf, chosenArbor, snap }: {
  readonly snap: ((arbor: string, to: Place) => Place) | null;
  readonly letters: readonly LetterPlace[]; readonly movement: Movement; readonly axes: readonly AxisGroup[]; readonly frame: Frame; readonly markOf: MarkOf; readonly chosenArbor: string | null;
}) {
  return axes.map((axis, i) => {
    const ids = axis.arbors.map((a) => movement.arbors[a]?.id ?? "");
    const movable = ids.find((id) => id === chosenArbor && cannotMove(movement.instrument, id) === null)
      ?? ids.find((id) => cannotMove(movement.instrument, id) === null) ?? null;
    const x = frame.x(axis.x), y = frame.y(axis.y), place = letters[i] ?? { x, y };
    return (
      <g key={ids[0] ?? i} className={markOf(ids)}>
        <path className="cross" d={`M${x - 6} ${y}h12M${x} ${y - 6}v12M${x - 2.6} ${y}a2.6 2.6 0 1 0 5.2 0a2.6 2.6 0 1 0 -5.2 0`} />
        <Handle axis={axis} ids={ids} movable={movable} frame={frame} snap={snap} />
        <text className="letter" x={place.x} y={place.y}>{axis.letters}</text>
      </g>
    );
  });
}
