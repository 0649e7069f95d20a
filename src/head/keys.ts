// Keys that work wherever the maker is: undo, redo, save and open with the control key, Esc for what is in hand, and
// single keys for the sheets, which never act inside a field and can be turned off.
import { useEffect } from "react";
import { SHEETS } from "../sheets/Sheets.tsx";
import { type Bench, useBench } from "../state/hooks.ts";
import { pickFile, save } from "./files.ts";

export function useKeys(): void {
  const bench = useBench();
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      const act = actionOf(bench, event);
      if (!act) return;
      event.preventDefault();
      act();
    };
    document.addEventListener("keydown", hear);
    return () => document.removeEventListener("keydown", hear);
  }, [bench]);
}

function actionOf(bench: Bench, event: KeyboardEvent): (() => void) | null {
  const { actions, store } = bench;
  if (event.defaultPrevented || event.altKey) return null;
  const inField = event.target instanceof Element && event.target.closest("input:not([type=range]), textarea, select, [contenteditable]") !== null;
  if (event.ctrlKey || event.metaKey) {
    const key = event.key.toLowerCase();
    if (key === "s") return () => void save(bench, event.shiftKey);
    if (key === "o") return () => void pickFile(bench);
    if (inField) return null;
    if (key === "z") return event.shiftKey ? actions.redo : actions.undo;
    return key === "y" ? actions.redo : null;
  }
  const { drag, singleKeys, instrument } = store.getState();
  if (event.key === "Escape" && drag) return actions.putBack;
  const sheet = SHEETS[Number(event.key) - 1];
  return singleKeys && !inField && instrument && sheet ? () => actions.set({ sheet: sheet.name }) : null;
}
