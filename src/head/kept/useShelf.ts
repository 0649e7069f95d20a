// What stands on the shelf, the last touched first, asked again whenever something was done to it.
import { useCallback, useEffect, useState } from "react";
import { useBench, useNow } from "../../state/hooks.ts";
import type { Held } from "../../state/shelf.ts";

export function useShelf(): { readonly all: readonly Held[]; readonly fault: string | null; readonly again: () => void } {
  const { keeper } = useBench();
  const kept = useNow((s) => s.kept);
  const shelf = useNow((s) => s.shelf);
  const [all, setAll] = useState<readonly Held[]>([]);
  const [fault, setFault] = useState<string | null>(null);
  const again = useCallback(() => {
    keeper.list().then(
      (list) => { setAll([...list].sort((a, b) => b.touchedMs - a.touchedMs)); setFault(null); },
      () => setFault("The browser does not show what it keeps."));
  }, [keeper]);
  useEffect(again, [again, kept, shelf]);
  return { all, fault, again };
}
