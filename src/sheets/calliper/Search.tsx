// The searches for places and for levels: asked for, followed, stopped at any moment, and taken as one step. They run in a
// worker; what they show is never worse than what stands.
import { useEffect, useRef, useState } from "react";
import type { Instrument } from "../../../geometry/index.ts";
import { takeFound } from "../../commands/edit.ts";
import { length, unitName } from "../../state/figures.ts";
import { useBench, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { searcherOn, type SearchStep } from "../../workers/searching.ts";
import { Counts } from "../Severity.tsx";

type Kind = "places" | "heights";
const TITLES: Record<Kind, string> = { places: "Search for places", heights: "Search for levels" };
const DONE: Record<Kind, string> = { places: "places found", heights: "levels found" };

interface InHand { readonly asked: Instrument; readonly running: boolean; readonly step: Extract<SearchStep, { kind: Kind }> | null; readonly fault: string | null }

export function Search({ kind }: { readonly kind: Kind }) {
  const { store, actions } = useBench();
  const instrument = useNow((s) => s.instrument);
  const units = useNow((s) => s.units);
  const searcher = useRef<ReturnType<typeof searcherOn> | null>(null);
  const [hand, setHand] = useState<InHand | null>(null);
  useEffect(() => () => searcher.current?.stop(), []);
  const begin = () => {
    actions.keep();
    const asked = store.getState().instrument;
    if (!asked) return;
    searcher.current ??= searcherOn(() => new Worker(new URL("../../workers/searching.worker.ts", import.meta.url), { type: "module" }));
    setHand({ asked, running: true, step: null, fault: null });
    searcher.current.begin({ kind, instrument: asked },
      (step) => { if (step.kind === kind) setHand((now) => now && { ...now, step: step as InHand["step"] }); },
      (fault) => setHand((now) => now && { ...now, running: false, fault }));
  };
  const stop = () => {
    searcher.current?.stop();
    setHand((now) => now && { ...now, running: false });
  };
  const best = hand?.step?.best ?? null;
  const better = hand !== null && best !== null && best.instrument !== hand.asked;
  const take = () => {
    if (hand === null || best === null) return;
    searcher.current?.stop();
    if (actions.run(takeFound, { asked: hand.asked, found: best.instrument, says: DONE[kind] })) setHand(null);
  };
  if (hand === null || (hand.asked !== instrument && !hand.running)) return <button type="button" onClick={begin}>{TITLES[kind]}</button>;
  return (
    <div className="search" role="group" aria-label={TITLES[kind]}>
      <progress aria-label={`${TITLES[kind]}, done`} max={1} value={hand.running ? hand.step?.done ?? 0 : 1} />
      {best && <Counts counts={best.counts} />}
      {hand.step && <p className="note">{bestInWords(hand.step, better, units)}</p>}
      {hand.fault !== null && <p className="note foul">It could not go on: {hand.fault}.</p>}
      <div className="row">
        {hand.running && <button type="button" onClick={stop}>Stop</button>}
        <button type="button" className="strong" disabled={!better || hand.asked !== instrument} onClick={take}>Take it</button>
        <button type="button" onClick={() => { stop(); setHand(null); }}>Leave it</button>
      </div>
    </div>
  );
}

function bestInWords(step: NonNullable<InHand["step"]>, better: boolean, units: Units): string {
  const mm = (value: number) => `${length(value, units)} ${unitName(units)}`;
  if (step.kind === "places") {
    const { smallest, quarrel } = step.best;
    const least = smallest ? `least gap ${mm(smallest.gap)}, ${smallest.between.join(" and ")}` : "no two share a height";
    return `${better ? "Best so far" : "Nothing better than it stands"}: ${least}.${quarrel ? ` ${quarrel.says}${quarrel.says.endsWith(".") ? "" : "."}` : ""}`;
  }
  const { height, proved, says } = step.best;
  return `${better ? "Best so far" : "Nothing lower than it stands"}${height === null ? "" : `: ${mm(height)} between the plates`}${proved ? ", and no order of levels is lower" : ""}.${says ? ` ${says}.` : ""}`;
}
