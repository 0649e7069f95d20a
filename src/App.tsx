// The screen put together: head, movement, sheets, examiner's sheet and crank, in that order for the keys.
import { lazy, Suspense, useEffect, useState, type DragEvent } from "react";
import { Crank } from "./crank/Crank.tsx";
import { openFile } from "./head/files.ts";
import { Head } from "./head/Head.tsx";
import { useKeys } from "./head/keys.ts";
import { MovementPane } from "./MovementPane.tsx";
import { Examiner } from "./sheets/Examiner.tsx";
import { Sheets } from "./sheets/Sheets.tsx";
import { useBench, useDark, useNarrow, useNow } from "./state/hooks.ts";
import type { State } from "./state/state.ts";

const Refusal = lazy(() => import("./sheets/Refusal.tsx").then((m) => ({ default: m.Refusal })));
const Beginning = lazy(() => import("./sheets/Beginning.tsx").then((m) => ({ default: m.Beginning })));

/** Sheets that need room take the wide layout. */
const isWide = ({ instrument, refusal, sheet, planting }: State): boolean =>
  instrument !== null && refusal === null && (sheet === "calliper" ? planting : sheet !== "together");

/** While an arbor is in hand to be depthed the layout stays as it is, so that what the hand holds does not move from under it. */
function useHeldInHand(wide: boolean): boolean {
  const inHand = useNow((s) => s.drag !== null && s.sheet === "depthing");
  const [held, setHeld] = useState(wide);
  if (!inHand && held !== wide) setHeld(wide);
  return inHand ? held : wide;
}

export function App() {
  const bench = useBench();
  const dark = useDark();
  const narrow = useNarrow();
  const wide = useHeldInHand(useNow(isWide));
  const open = useNow((s) => s.instrument !== null);
  const refusal = useNow((s) => s.refusal);
  const [reading, setReading] = useState(false);
  const [dropping, setDropping] = useState(false);
  useKeys();
  useEffect(() => { document.documentElement.dataset.look = dark ? "dark" : "light"; }, [dark]);
  const over = (event: DragEvent) => {
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    setDropping(true);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setDropping(false);
    const [file] = event.dataTransfer.files;
    if (file) void openFile(bench, file);
  };
  const classes = ["bench", wide ? "wide" : "", narrow && reading ? "reading" : "", refusal ? "refusing" : "", dropping ? "dropping" : "", open ? "" : "empty"];
  return (
    <div className={classes.filter(Boolean).join(" ")} onDragOver={over} onDrop={drop}
      onDragLeave={(event) => { if (event.target === event.currentTarget) setDropping(false); }}>
      <Head />
      <main className="contents">
        {open ? <MovementPane /> : <section className="movement" aria-label="Beginning"><Suspense fallback={null}><Beginning /></Suspense></section>}
        {refusal ? <Suspense fallback={null}><Refusal refusal={refusal} /></Suspense> : open && <Sheets />}
        <Examiner short={wide} reading={reading} onRead={() => setReading(!reading)} />
      </main>
      <Crank />
    </div>
  );
}
