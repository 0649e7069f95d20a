// The movement: a canvas that three.js draws, the marks over it, and the hands on it. React renders when the movement,
// the choice or the setting changes; motion never passes through here.
import { createRoot, type ReconcilerRoot } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useRef, useState, type RefObject } from "react";
import { boundOf } from "./bound.ts";
import { attachHands } from "./eye/hands.ts";
import { standingView, viewOfPlace } from "./eye/view.ts";
import { Fineness, fineness } from "./Fineness.tsx";
import { handsOn } from "./hold.ts";
import { Marks } from "./marks/Marks.tsx";
import { placeOf } from "./marks/quarrel.ts";
import { Room } from "./metal/Room.tsx";
import { REST_MS } from "./pace.ts";
import type { MovementViewProps } from "./props.ts";
import { createRenderer, kindOfCard } from "./renderer.ts";
import { Scene } from "./Scene.tsx";
import { attachSeeing } from "./seeing.ts";
import { liftsOf } from "./solids/lift.ts";
import { createStage, type Stage } from "./stage.ts";
import "./movement-view.css";

interface Drawing {
  readonly root: ReconcilerRoot<HTMLCanvasElement>;
  readonly plain: boolean;
}

export function MovementView(props: MovementViewProps) {
  const { movement, chosen, finding, letters, hidden, held = null, onChoose, theme, label, turns } = props;
  const host = useRef<HTMLDivElement>(null), hint = useRef<HTMLSpanElement>(null);
  const [stage] = useState(() => createStage(props));
  useLayoutEffect(() => { stage.props = props; });
  const drawing = useDrawing(stage, host);
  useLayoutEffect(() => {
    if (drawing === null || drawing === "refused") return;
    drawing.root.render(<><Room theme={theme} plain={drawing.plain} /><Fineness plain={drawing.plain} /><Scene {...props} stage={stage} plain={drawing.plain} /></>);
  });
  useEye(stage, props);
  useEffect(() => attachSeeing(stage), [stage]);
  useEffect(() => turns.subscribe(() => stage.redraw()), [turns, stage]);
  const height = held?.height;
  useEffect(() => height?.subscribe(() => stage.redraw()), [height, stage]);
  useEffect(() => (host.current && hint.current ? attachHands(host.current, handsOn(stage, hint.current)) : undefined), [stage]);

  return (
    <div className="movement-view" ref={host} data-theme={theme} tabIndex={0} role="application" aria-label={label}
      aria-roledescription="movement" aria-keyshortcuts="ArrowLeft ArrowRight ArrowUp ArrowDown + -">
      {drawing === "refused" && <p className="refused">This browser draws nothing in three dimensions: WebGL 2 is switched off or missing.</p>}
      <Marks stage={stage} movement={movement} letters={letters} chosen={chosen} finding={finding} hidden={hidden}
        held={held} onChoose={onChoose} />
      <span className="hint" ref={hint} aria-hidden="true" />
    </div>
  );
}

/** A canvas of its own for each mount: a canvas whose context was given up cannot be drawn on again. */
function useDrawing(stage: Stage, host: RefObject<HTMLDivElement | null>): Drawing | "refused" | null {
  const [drawing, setDrawing] = useState<Drawing | "refused" | null>(null);
  useEffect(() => {
    const element = host.current, kind = kindOfCard();
    if (!element) return;
    if (kind === null) { setDrawing("refused"); return; }
    const plain = kind === "plain";
    const canvas = document.createElement("canvas");
    element.prepend(canvas);
    const root = createRoot(canvas);
    let gone = false, first = true;
    const fit = () => {
      const { clientWidth: width, clientHeight: height } = element;
      if (gone || width === 0 || height === 0) return;
      const reshaped = stage.size.width / stage.size.height !== width / height;
      stage.size = { width, height };
      if (reshaped) stand(stage, true);
      const ready = root.configure({
        gl: () => createRenderer(canvas, plain), frameloop: "demand", dpr: fineness(plain), performance: { min: 0.5, debounce: REST_MS }, size: { width, height, top: 0, left: 0 },
        ...(plain ? {} : { shadows: "percentage" as const }), flat: false,
      });
      if (first) ready.then(() => { if (!gone) setDrawing({ root, plain }); }, () => { if (!gone) setDrawing("refused"); });
      first = false;
      stage.redraw();
    };
    const observer = new ResizeObserver(fit);
    observer.observe(element);
    fit();
    return () => {
      gone = true;
      observer.disconnect();
      root.unmount();
      canvas.remove();
      setDrawing(null);
    };
  }, [stage, host]);
  return drawing;
}

/** Sends the eye where the props ask: a standing view, the finding's place, the whole of what is lifted. */
function useEye(stage: Stage, { movement, sheet, standing, finding, lift, stillMotion }: MovementViewProps): void {
  const lifts = liftsOf(movement, sheet);
  const name = movement.instrument.name;
  // While an arbor is dragged the finding is found afresh at every step: only another one turns the view.
  const about = finding && [finding.code, ...finding.between].join(" ");
  useLayoutEffect(() => {
    stage.bound = boundOf(movement, lifts, lift);
  });
  useLayoutEffect(() => {
    stage.standing = "quarter";
    stage.place = null;
    stand(stage, true);
  }, [stage, name]);
  useLayoutEffect(() => { stand(stage, stillMotion); }, [stage, lift, stillMotion]);
  useLayoutEffect(() => {
    if (!standing) return;
    stage.standing = standing.view;
    stage.place = null;
    stand(stage, stage.props.stillMotion);
  }, [stage, standing]);
  useLayoutEffect(() => {
    const { finding, movement, stillMotion } = stage.props;
    const at = about !== null && finding ? placeOf(finding, movement) : null;
    if (!at) return;
    stage.standing = null;
    stage.place = { at, way: finding?.way };
    stand(stage, stillMotion);
  }, [stage, about]);
}

/** To the standing view or the place last asked for, unless the hand has turned from it. */
function stand(stage: Stage, still: boolean): void {
  const { standing, place, bound, size, eye } = stage;
  const aspect = size.width / size.height;
  if (place) eye.glideTo(viewOfPlace(place.at, place.way, eye.view(), bound, aspect), still);
  else if (standing) eye.glideTo(standingView(standing, bound, aspect), still);
  stage.redraw();
}
