// The crank along the foot. Turns never pass through React: what shows them hears the clock and writes into the page.
import { type KeyboardEvent, useCallback, useEffect, useState, useSyncExternalStore } from "react";
import { engagedTeeth } from "./teeth.ts";
import { toothOn } from "../state/clock.ts";
import { useBench, useNarrow, useNow, useStill } from "../state/hooks.ts";
import "./crank.css";
import { Rail } from "./Rail.tsx";
import { Shows } from "./Shows.tsx";

/** Turns a second. */
const SPEEDS = [
  { turns: 1 / 24, says: "a turn in 24 s" },
  { turns: 0.25, says: "a turn in 4 s" },
  { turns: 1, says: "a turn a second" },
  { turns: 5, says: "5 turns a second" },
  { turns: 30, says: "30 turns a second" },
] as const;

export function Crank() {
  const { clock } = useBench();
  const movement = useNow((s) => s.worked?.movement ?? null);
  const narrow = useNarrow();
  const [speed, setSpeed] = useState<number>(SPEEDS[1].turns);
  const teeth = movement ? engagedTeeth(movement) : 1;
  const days = movement?.instrument.input.days ?? 1;
  const onTooth = useCallback((by: number) => clock.set(toothOn(clock.turns(), teeth, by)), [clock, teeth]);
  const runs = useRuns(speed, teeth);
  useEffect(() => () => clock.stop(), [clock]);
  if (!movement) return <section className="crank" aria-label="Crank"><h2>Crank</h2><p className="note">waits for an arbor that turns</p></section>;
  const keyed = (event: KeyboardEvent) => {
    const turn = { ArrowRight: 1 / teeth, ArrowUp: 1 / teeth, ArrowLeft: -1 / teeth, ArrowDown: -1 / teeth, PageUp: 1, PageDown: -1 }[event.key];
    if (turn === undefined && event.key !== " " && event.key !== "Home") return;
    event.preventDefault();
    if (event.key === " ") runs.toggle();
    else if (event.key === "Home") clock.set(0);
    else if (turn !== undefined && Math.abs(turn) < 1) onTooth(Math.sign(turn));
    else clock.set(clock.turns() + Math.sign(turn ?? 0));
  };
  return (
    <section className="crank" aria-label="Crank">
      <h2>Crank</h2>
      {narrow && <Shows instrument={movement.instrument} month="short" />}
      {narrow && <Rail onKeyDown={keyed} />}
      <div className="row">
        <div className="joined">
          <button type="button" onClick={() => onTooth(-1)}>Back a tooth</button>
          <button type="button" onClick={() => onTooth(1)}>On a tooth</button>
        </div>
        <div className="joined">
          {!narrow && <button type="button" onClick={() => clock.set(clock.turns() + 1)}>A turn</button>}
          <button type="button" onClick={() => clock.set(clock.turns() + 1 / days)}>A day</button>
        </div>
        <RunButton runs={runs} />
        <label className="speed"><span className="unseen">Speed</span>
          <select value={speed} onChange={(event) => setSpeed(Number(event.target.value))}>
            {SPEEDS.map((s) => <option key={s.turns} value={s.turns}>{s.says}</option>)}
          </select>
        </label>
      </div>
      {!narrow && <Rail onKeyDown={keyed} />}
      {!narrow && <Shows instrument={movement.instrument} month="long" />}
    </section>
  );
}

interface Runs {
  readonly running: boolean;
  /** Reduced motion is asked for, so running waits for a yes. */
  readonly asking: boolean;
  toggle(): void;
  answer(yes: boolean): void;
}

/** Running and stopping. Under reduced motion the crank goes by whole teeth, and asks before it runs at all. */
function useRuns(speed: number, teeth: number): Runs {
  const { clock } = useBench();
  const still = useStill();
  const [asking, setAsking] = useState(false);
  const running = useSyncExternalStore(clock.subscribe, clock.running);
  const run = useCallback(() => clock.run(speed, still ? teeth : 0), [clock, speed, still, teeth]);
  useEffect(() => { if (clock.running()) run(); }, [clock, run]);
  return {
    running, asking,
    toggle: () => {
      if (running) clock.stop();
      else if (still) setAsking(true);
      else run();
    },
    answer: (yes) => {
      setAsking(false);
      if (yes) run();
    },
  };
}

function RunButton({ runs }: { readonly runs: Runs }) {
  if (runs.asking)
    return (
      <div className="joined" role="group" aria-label="Your system asks for less motion">
        <button type="button" className="strong" autoFocus onClick={() => runs.answer(true)}>Run, by the tooth</button>
        <button type="button" onClick={() => runs.answer(false)}>Leave it</button>
      </div>
    );
  return <button type="button" className="strong" onClick={runs.toggle}>{runs.running ? "Stop" : "Run"}</button>;
}
