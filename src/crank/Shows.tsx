// The count of turns, which can be typed, and the date or days that it stands for.
import { useEffect, useRef } from "react";
import type { Instrument } from "../../geometry/index.ts";
import { standsFor } from "../state/dates.ts";
import { fixed, typedNumber } from "../state/figures.ts";
import { useBench } from "../state/hooks.ts";

export function Shows({ instrument, month }: { readonly instrument: Instrument; readonly month: "long" | "short" }) {
  const { clock } = useBench();
  const field = useRef<HTMLInputElement>(null);
  const date = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const show = () => {
      const turns = clock.turns();
      if (field.current && document.activeElement !== field.current) field.current.value = fixed(turns, 2);
      if (date.current) date.current.textContent = standsFor(instrument, turns, month);
    };
    show();
    return clock.subscribe(show);
  }, [clock, instrument, month]);
  const take = () => {
    const typed = typedNumber(field.current?.value ?? "");
    if (typed !== null) clock.set(typed);
    if (field.current) field.current.value = fixed(clock.turns(), 2);
  };
  return (
    <div className="shows">
      <label className="field">
        <span className="unseen">Turns of the crank</span>
        <input ref={field} inputMode="decimal" onFocus={clock.stop} onBlur={take}
          onKeyDown={(event) => { if (event.key === "Enter") take(); }} />
        <span>turns</span>
      </label>
      <div className="date" ref={date} />
    </div>
  );
}
