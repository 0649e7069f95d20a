// Letters on leaders and the mark of the chosen finding, over the picture. React writes them when the movement or the
// choice changes; every frame only moves them, by their own elements. Letters never turn. Each letter is a button and a
// handle: Enter chooses its arbor, a drag moves it.
import { useEffect, useLayoutEffect, useMemo, useRef, type KeyboardEvent } from "react";
import type { Finding, Movement } from "../../geometry/index.ts";
import type { Held } from "../props.ts";
import type { Stage } from "../stage.ts";
import { createMarker, type Marker } from "./marker.ts";
import { arborOf, thingsIn } from "./quarrel.ts";
import { figureOf, headingOf, nameOf } from "./words.ts";

/** More than so many letters at once would cover the movement: of larger ones, those that matter first. */
const LETTERS_AT_MOST = 48;

interface Props {
  readonly stage: Stage;
  readonly movement: Movement;
  readonly letters: boolean;
  readonly chosen: string | null;
  readonly finding: Finding | null;
  readonly hidden: ReadonlySet<string> | undefined;
  readonly held: Held | null;
  readonly onChoose: (id: string | null) => void;
}

export function Marks({ stage, movement, letters, chosen, finding, hidden, held, onChoose }: Props) {
  const over = useRef<HTMLDivElement>(null);
  const marker = useRef<Marker>(null);
  const quarrels = useMemo(() => new Set(finding ? thingsIn(finding, movement).map((id) => arborOf(id, movement)) : []), [finding, movement]);
  const chosenArbor = chosen === null ? -1 : arborOf(chosen, movement);
  const first = useMemo(() => new Set([...quarrels, chosenArbor]), [quarrels, chosenArbor]);
  const lettered = useMemo(() => {
    const all = movement.arbors.map((_, i) => i).filter((i) => !hidden?.has(movement.arbors[i]?.id ?? ""));
    const others = letters ? all.filter((i) => !first.has(i)) : [];
    return [...all.filter((i) => first.has(i)), ...others].slice(0, LETTERS_AT_MOST).sort((a, b) => a - b);
  }, [movement, letters, first, hidden]);

  useLayoutEffect(() => {
    if (!over.current) return;
    marker.current = createMarker(over.current, { lettered, first, movement, finding, held: held?.id ?? null }, marker.current);
    stage.drawMarks = marker.current.draw;
    if (stage.frame) marker.current.draw(stage.frame);
    stage.redraw();
  }, [stage, lettered, first, movement, finding, held?.id]);
  useEffect(() => () => { stage.drawMarks = null; }, [stage]);

  return (
    <div className="marks" ref={over}>
      <svg aria-hidden="true">
        {lettered.map((i) => <g key={movement.arbors[i]?.id} className={toneOf(i, quarrels, finding, chosenArbor)}><line /><circle r="2.5" /></g>)}
        {held && <g className="held"><line className="chain" /><path d="M-5-8 0 0 5-8" /></g>}
        {finding && (
          <g className={`place ${finding.severity}`}>
            <circle className="halo" r="19" /><circle className="ring" r="19" />
            <line className="halo" /><line className="ring" />
          </g>
        )}
      </svg>
      <div className="letters" role="group" aria-label="Arbors" onKeyDown={walkLetters}>
        {lettered.map((i, n) => {
          const id = movement.arbors[i]?.id ?? "";
          return (
            <button key={id} type="button" tabIndex={n === 0 ? 0 : -1} data-arbor={id} aria-pressed={i === chosenArbor}
              aria-label={nameOf(id, movement)} className={toneOf(i, quarrels, finding, chosenArbor)} onClick={() => onChoose(id)}>{id}</button>
          );
        })}
      </div>
      {finding && <Caption finding={finding} />}
    </div>
  );
}

function Caption({ finding }: { readonly finding: Finding }) {
  const figure = figureOf(finding);
  return (
    <p className={`caption ${finding.severity}`}>
      <Shape severity={finding.severity} />
      <span className="severity">{finding.severity}: </span>
      <strong>{headingOf(finding)}</strong>
      {figure && <span className="figure">{figure}</span>}
    </p>
  );
}

function Shape({ severity }: { readonly severity: Finding["severity"] }) {
  return (
    <svg className="shape" viewBox="0 0 12 12" aria-hidden="true">
      {severity === "foul" && <path d="M6 0 12 6 6 12 0 6Z" />}
      {severity === "tight" && <path d="M12 1V12H1Z" />}
      {severity === "free" && <circle cx="6" cy="6" r="5" />}
    </svg>
  );
}

const toneOf = (arbor: number, quarrels: ReadonlySet<number>, finding: Finding | null, chosenArbor: number) =>
  quarrels.has(arbor) && finding ? finding.severity : arbor === chosenArbor ? "chosen" : "plain";

/** Arrows walk along the letters, as in any list. */
function walkLetters(event: KeyboardEvent<HTMLDivElement>): void {
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  if (step === undefined) return;
  const all = [...event.currentTarget.querySelectorAll("button")];
  const to = all[(all.indexOf(event.target as HTMLButtonElement) + step + all.length) % all.length];
  event.preventDefault();
  event.stopPropagation();
  for (const button of all) button.tabIndex = button === to ? 0 : -1;
  to?.focus();
}
