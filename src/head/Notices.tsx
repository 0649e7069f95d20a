// What must be said until it is settled: that nothing is kept, that another tab has the same instrument, that a newer
// build waits. Each in words, with what can be done about it.
import type { ReactNode } from "react";
import { copyName } from "../state/keeper.ts";
import { useBench, useNow } from "../state/hooks.ts";
import { save } from "./files.ts";

export function Notices() {
  const bench = useBench();
  const { actions, keeper } = bench;
  const notKept = useNow((s) => s.notKept);
  const elsewhere = useNow((s) => s.elsewhere);
  const newer = useNow((s) => s.newer);
  const name = useNow((s) => s.instrument?.name ?? null);
  return (
    <div className="notices" role="status">
      {notKept !== null && (
        <Notice says={notKept} grave>
          {name !== null && <button type="button" onClick={() => void save(bench)}>Save to a file</button>}
          {name !== null && <button type="button" onClick={keeper.again}>Try again</button>}
        </Notice>
      )}
      {elsewhere && name !== null && (
        <Notice says="This instrument is open in another tab, which keeps it; here it is shown. If you change it here, a copy is made.">
          <button type="button" onClick={() => actions.becomeCopy(copyName(name))}>Make a copy now</button>
        </Notice>
      )}
      {newer && (
        <Notice says="A newer Endshake is here; it opens at the next visit.">
          <button type="button" onClick={() => void import("../offline/offline.ts").then((m) => m.openNewer(bench))}>Open it now</button>
          <button type="button" className="plain" onClick={() => bench.store.setState({ newer: false })}>Later</button>
        </Notice>
      )}
    </div>
  );
}

function Notice({ says, grave = false, children }: { readonly says: string; readonly grave?: boolean; readonly children: ReactNode }) {
  return <div className={grave ? "notice grave" : "notice"}><span>{says}</span><span className="row">{children}</span></div>;
}
