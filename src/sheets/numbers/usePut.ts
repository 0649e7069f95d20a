// Putting a found train in: at once where it leaves no more amiss than there was, else after places and levels are worked
// again on a worker, for all arbors that are not steady. However it ends it is one step of undo.
import { useEffect, useMemo, useState } from "react";
import { examine, type Instrument, type Movement, workOut } from "../../../geometry/index.ts";
import { isRefused } from "../../commands/command.ts";
import { takeFound } from "../../commands/edit.ts";
import { putTrain, type PutTrain } from "../../commands/numbers.ts";
import { useActions } from "../../state/hooks.ts";
import { type Searcher, searcherOn } from "../../workers/searching.ts";

export interface Putting {
  /** 0 to 1 while places and levels are worked again; null: nothing is on the way. */
  readonly done: number | null;
  put(args: PutTrain): void;
  /** Takes the best so far. */
  enough(): void;
}

interface InHand { readonly asked: Instrument; readonly best: Instrument; readonly says: string; readonly done: number }

export function usePut(onDone: () => void): Putting {
  const { run } = useActions();
  const searcher = useMemo((): Searcher => searcherOn(() => new Worker(new URL("../../workers/searching.worker.ts", import.meta.url), { type: "module" })), []);
  const [hand, setHand] = useState<InHand | null>(null);
  useEffect(() => () => searcher.stop(), [searcher]);
  const take = (of: InHand) => {
    setHand(null);
    if (run(takeFound, { asked: of.asked, found: of.best, says: of.says })) onDone();
  };
  return {
    done: hand?.done ?? null,
    put(args) {
      const asked = args.movement.instrument, outcome = putTrain.run(asked, args);
      if (isRefused(outcome) || !leavesMoreAmiss(args.movement, outcome.instrument)) {
        if (run(putTrain, args)) onDone();
        return;
      }
      let now: InHand = { asked, best: outcome.instrument, says: outcome.says, done: 0 };
      setHand(now);
      searcher.begin({ kind: "settling", instrument: outcome.instrument },
        (step) => { if (step.kind === "settling") setHand(now = { ...now, best: step.best.instrument, done: step.done }); }, () => take(now));
    },
    enough() {
      searcher.stop();
      if (hand) take(hand);
    },
  };
}

function leavesMoreAmiss(movement: Movement, next: Instrument): boolean {
  const was = examine(movement).counts, is = examine(workOut(next)).counts;
  return is.foul > was.foul || (is.foul === was.foul && is.tight > was.tight);
}
