// The head of the page: what is open and whether it is saved, undo and redo by name, opening, saving, units and look.
import { lazy, type ReactNode, Suspense, useState } from "react";
import { SHEETS } from "../sheets/Sheets.tsx";
import { isSaved } from "../state/history.ts";
import { useBench, useNarrow, useNow } from "../state/hooks.ts";
import type { Look, Units } from "../state/state.ts";
import { Choice } from "./Choice.tsx";
import { EXAMPLES } from "./examples.ts";
import { beginAfresh, openExample, pickFile, save } from "./files.ts";
import "./head.css";
import { Menu } from "./Menu.tsx";
import { Notices } from "./Notices.tsx";
import { Openings } from "./Openings.tsx";
import { STANDING_WORDS, STANDINGS, WAY_WORDS, WAYS } from "./ways.ts";

const Export = lazy(() => import("./export/Export.tsx").then((m) => ({ default: m.Export })));
const Kept = lazy(() => import("./kept/Kept.tsx").then((m) => ({ default: m.Kept })));
/** Steps in the menu, each way. */
const STEPS_SHOWN = 12;
const UNITS: readonly Units[] = ["mm", "inch"];
const LOOKS: readonly Look[] = ["as the system", "light", "dark"];

export function Head() {
  const narrow = useNarrow();
  const name = useNow((s) => s.instrument?.name ?? null);
  const [shelfOpen, setShelfOpen] = useState(false);
  const [exportOpen, setExportOpen] = useState(false);
  const open = useNow((s) => s.instrument !== null);
  const files = <button type="button" data-closes disabled={!open} onClick={() => setExportOpen(true)}>Export</button>;
  const kept = <button type="button" data-closes onClick={() => setShelfOpen(true)}>Kept work</button>;
  return (
    <div className="top">
      <header className="head">
        <h1>Endshake</h1>
        <div className="name">{name ?? "no instrument yet"}</div>
        {!narrow && <Standing />}
        <div className="does">
          {narrow ? (
            <Menu label="More"><Standing /><UndoRedo /><Steps most={3} /><Opening kept={kept} />{files}<UnitsChoice /><Views /><Openings /><Settings /></Menu>
          ) : (
            <>
              <UndoRedo />
              <Steps />
              <div className="row"><Opening kept={kept} />{files}</div>
              <UnitsChoice />
              <Menu label="Settings"><SaveAs /><Settings /></Menu>
            </>
          )}
        </div>
      </header>
      <Notices />
      {exportOpen && <Suspense fallback={null}><Export onClose={() => setExportOpen(false)} /></Suspense>}
      {shelfOpen && <Suspense fallback={null}><Kept onClose={() => setShelfOpen(false)} /></Suspense>}
    </div>
  );
}

/** Saved or not, what is in hand, and the last thing said to the maker. */
function Standing() {
  const saying = useNow((s) => s.saying);
  const drag = useNow((s) => s.drag?.arbor ?? null);
  const way = useNow((s) => s.way);
  const hold = useNow((s) => s.drag?.holds ?? null);
  const saved = useNow((s) => isSaved(s.history));
  const untouched = useNow((s) => s.file === null && s.history.past.length === 0);
  const open = useNow((s) => s.instrument !== null);
  const kept = useNow((s) => s.kept);
  const [elsewhere, notKept] = [useNow((s) => s.elsewhere), useNow((s) => s.notKept !== null)];
  if (saying) return <div className="state saying" role="status">{saying}</div>;
  if (!open) return null;
  const words = drag === null ? (untouched ? "unchanged" : saved ? "saved" : "not saved")
    : hold ?? (way === "in gear" ? `moving ${drag}; Esc puts it back` : "trying the depth, not yet kept; Esc puts it back");
  return (
    <div className="states">
      <div className={drag !== null && hold !== null ? "state saying" : "state"} role="status">{words}</div>
      {drag === null && !untouched && !saved && <div className="keeping">{elsewhere || notKept ? "" : kept ? "kept in this browser" : "being kept"}</div>}
    </div>
  );
}

function UndoRedo() {
  const { actions } = useBench();
  const last = useNow((s) => s.history.past.at(-1)?.says ?? null);
  const next = useNow((s) => s.history.future[0]?.says ?? null);
  const drag = useNow((s) => s.drag !== null);
  return (
    <>
      <button type="button" className="plain" disabled={last === null && !drag} onClick={actions.undo}>{last === null ? "Undo" : `Undo: ${last}`}</button>
      <button type="button" className={next === null ? "" : "plain"} disabled={next === null || drag} onClick={actions.redo}>{next === null ? "Redo" : `Redo: ${next}`}</button>
    </>
  );
}

function Opening({ kept }: { readonly kept: ReactNode }) {
  const bench = useBench();
  const narrow = useNarrow();
  const open = useNow((s) => s.instrument !== null);
  const examples = EXAMPLES.map((example) => (
    <button key={example.file} type="button" data-closes onClick={() => void openExample(bench, example)}>{example.name}</button>
  ));
  return (
    <>
      <button type="button" data-closes onClick={() => void pickFile(bench)}>Open</button>
      {kept}
      {narrow ? examples : <Menu label="Examples">{examples}</Menu>}
      <button type="button" data-closes disabled={!open} onClick={() => beginAfresh(bench)}>Begin afresh</button>
      <button type="button" data-closes disabled={!open} onClick={() => void save(bench)}>Save</button>
      {narrow && <SaveAs />}
    </>
  );
}

function SaveAs() {
  const bench = useBench();
  const open = useNow((s) => s.instrument !== null);
  return <button type="button" data-closes disabled={!open} onClick={() => void save(bench, true)}>Save as another file</button>;
}

function UnitsChoice() {
  const units = useNow((s) => s.units);
  const { actions } = useBench();
  return <Choice label="Lengths in" of={UNITS} now={units} onChoose={(to) => actions.set({ units: to })} />;
}

/** The last steps by name, the newest first, with those undone above them: choosing one goes there. */
function Steps({ most = STEPS_SHOWN }: { readonly most?: number }) {
  const { actions } = useBench();
  const narrow = useNarrow();
  const { past, future } = useNow((s) => s.history);
  if (past.length + future.length === 0) return null;
  const coming = future.slice(0, most).map((step, i) => ({ says: step.says, at: past.length + i + 1, undone: true })).reverse();
  const made = past.slice(-most).map((step, i, shown) => ({ says: step.says, at: past.length - shown.length + i + 1, undone: false })).reverse();
  const list = (
    <>
      {[...coming, ...made].map(({ says, at, undone }) => (
        <button key={at} type="button" data-closes className={undone ? "undone" : ""} aria-current={at === past.length ? "step" : undefined}
          onClick={() => actions.goTo(at)}>{undone ? `Undone: ${says}` : says}</button>
      ))}
      <button type="button" data-closes aria-current={past.length === 0 ? "step" : undefined} onClick={() => actions.goTo(Math.max(0, past.length - most))}>
        {past.length > most ? `Before these ${most}` : "As it was at first"}
      </button>
    </>
  );
  return narrow ? list : <Menu label="Steps">{list}</Menu>;
}

/** Where there is no room for them over the movement. */
function Views() {
  const { actions } = useBench();
  const way = useNow((s) => s.way);
  const standing = useNow((s) => s.standing?.view ?? null);
  return (
    <>
      <div className="choice"><Choice label="Standing views" of={STANDINGS} words={STANDING_WORDS} now={standing} onChoose={actions.stand} /></div>
      <div className="choice"><Choice label="How an arbor is dragged" of={WAYS} words={WAY_WORDS} now={way} onChoose={(to) => actions.set({ way: to })} /></div>
    </>
  );
}

function Settings() {
  const { actions } = useBench();
  const look = useNow((s) => s.look);
  const singleKeys = useNow((s) => s.singleKeys);
  return (
    <>
      <div className="choice"><span>Look</span><Choice label="Look" of={LOOKS} now={look} onChoose={(to) => actions.set({ look: to })} /></div>
      <div className="choice">
        <span>Single keys, 1 to {SHEETS.length} for the sheets</span>
        <Choice label="Single keys" of={["on", "off"]} now={singleKeys ? "on" : "off"} onChoose={(to) => actions.set({ singleKeys: to === "on" })} />
      </div>
    </>
  );
}
