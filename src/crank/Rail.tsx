// The rail: thirty turns of the crank on a scale, dragged by hand or by keys. Past either end the next thirty come in.
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import { standsFor } from "../state/dates.ts";
import { fixed } from "../state/figures.ts";
import { useBench } from "../state/hooks.ts";

const LENGTH = 30;

export function Rail({ onKeyDown }: { readonly onKeyDown: (event: KeyboardEvent) => void }) {
  const { clock, store } = useBench();
  const rail = useRef<HTMLDivElement>(null);
  const hand = useRef<HTMLDivElement>(null);
  const held = useRef(false);
  const [start, setStart] = useState(0);
  useEffect(() => {
    const show = () => {
      const turns = clock.turns();
      const from = held.current && turns === start + LENGTH ? start : Math.floor(turns / LENGTH) * LENGTH;
      setStart(from);
      if (hand.current) hand.current.style.left = `${((turns - from) / LENGTH) * 100}%`;
      const { instrument } = store.getState();
      rail.current?.setAttribute("aria-valuenow", String(Math.round(turns * 100) / 100));
      rail.current?.setAttribute("aria-valuetext", `${fixed(turns, 2)} turns${instrument ? `, ${standsFor(instrument, turns)}` : ""}`);
    };
    show();
    return clock.subscribe(show);
  }, [clock, start, store]);
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (!held.current) return;
    const box = event.currentTarget.getBoundingClientRect();
    const part = Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
    clock.set(start + Math.round(part * LENGTH * 100) / 100);
  };
  return (
    <div className="rail" ref={rail} role="slider" tabIndex={0} aria-label="Turns" aria-valuemin={start} aria-valuemax={start + LENGTH}
      aria-valuenow={0} onKeyDown={onKeyDown} onPointerMove={drag}
      onPointerDown={(event) => { clock.stop(); held.current = true; event.currentTarget.setPointerCapture(event.pointerId); drag(event); }}
      onPointerUp={() => { held.current = false; }} onPointerCancel={() => { held.current = false; }}>
      <Scale start={start} />
      <div className="hand" ref={hand} />
    </div>
  );
}

function Scale({ start }: { readonly start: number }) {
  const ticks = Array.from({ length: 2 * LENGTH + 1 }, (_, i) => i / 2);
  return (
    <svg aria-hidden="true">
      <line x1="0" x2="100%" y1="36" y2="36" />
      {ticks.map((t) => (
        <line key={t} x1={`${(t / LENGTH) * 100}%`} x2={`${(t / LENGTH) * 100}%`} y1={t % 5 === 0 ? 21 : t % 1 === 0 ? 29 : 32} y2="36" />
      ))}
      {ticks.filter((t) => t % 5 === 0).map((t) => <text key={t} x={`${(t / LENGTH) * 100}%`} y="50">{String(start + t).replace("-", "−")}</text>)}
    </svg>
  );
}
