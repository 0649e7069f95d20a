// One sheet at a time, by its tab. The sheets come on demand, after the picture; only the tabs are in the first load.
import { type ComponentType, type KeyboardEvent, lazy, Suspense } from "react";
import { pictureDrawn } from "../picture.ts";
import { useActions, useNow } from "../state/hooks.ts";
import type { SheetName } from "../state/state.ts";

/** A sheet comes when it is asked for, and not before the picture. */
const onDemand = (load: () => Promise<ComponentType>) => lazy(() => pictureDrawn().then(load).then((Sheet) => ({ default: Sheet })));

export const SHEETS: readonly { readonly name: SheetName; readonly title: string; readonly Part: ComponentType }[] = [
  { name: "numbers", title: "Numbers", Part: onDemand(() => import("./numbers/Numbers.tsx").then((m) => m.Numbers)) },
  { name: "calliper", title: "Calliper", Part: onDemand(() => import("./calliper/Calliper.tsx").then((m) => m.Calliper)) },
  { name: "depthing", title: "Depthing", Part: onDemand(() => import("./depthing/Depthing.tsx").then((m) => m.Depthing)) },
  { name: "dials", title: "Dials", Part: onDemand(() => import("./dials/Dials.tsx").then((m) => m.Dials)) },
  { name: "together", title: "Putting together", Part: onDemand(() => import("./together/Together.tsx").then((m) => m.Together)) },
  { name: "workshop", title: "Workshop", Part: onDemand(() => import("./workshop/Workshop.tsx").then((m) => m.Workshop)) },
  { name: "making", title: "Making", Part: onDemand(() => import("./making/Making.tsx").then((m) => m.Making)) },
];

export function Sheets() {
  const now = useNow((s) => s.sheet);
  const { set } = useActions();
  const keyed = (event: KeyboardEvent<HTMLDivElement>) => {
    const at = SHEETS.findIndex((s) => s.name === now);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1 + SHEETS.length, Home: 0, End: SHEETS.length - 1 }[event.key];
    const next = to === undefined ? undefined : SHEETS[to % SHEETS.length];
    if (!next) return;
    event.preventDefault();
    set({ sheet: next.name });
    document.getElementById(`tab-${next.name}`)?.focus();
  };
  const { title, Part } = SHEETS.find((s) => s.name === now) ?? SHEETS[1]!;
  return (
    <section className="sheets" aria-label="Sheets">
      <div className="tabs" role="tablist" aria-label="Sheets" onKeyDown={keyed}>
        {SHEETS.map((s) => (
          <button key={s.name} type="button" id={`tab-${s.name}`} role="tab" aria-selected={s.name === now} aria-controls="sheet"
            tabIndex={s.name === now ? 0 : -1} onClick={() => set({ sheet: s.name })}>{s.title}</button>
        ))}
      </div>
      <div className="sheet" id="sheet" role="tabpanel" aria-label={title} tabIndex={0}>
        <Suspense fallback={null}><Part /></Suspense>
      </div>
    </section>
  );
}
