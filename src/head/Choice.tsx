// One of a few, as buttons side by side: a radio group in which the arrows choose.
import type { KeyboardEvent } from "react";

export interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly of: readonly T[];
  readonly now: T | null;
  readonly onChoose: (one: T) => void;
  /** What stands on the buttons, where it is not the word itself. */
  readonly words?: Readonly<Record<T, string>>;
}

export function Choice<T extends string>({ label, of, now, onChoose, words }: ChoiceProps<T>) {
  const keyed = (event: KeyboardEvent<HTMLDivElement>) => {
    const by = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : event.key === "ArrowLeft" || event.key === "ArrowUp" ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const focused = [...event.currentTarget.children].indexOf(document.activeElement as Element);
    const next = (Math.max(0, focused) + by + of.length) % of.length;
    (event.currentTarget.children[next] as HTMLElement | undefined)?.focus();
    const one = of[next];
    if (one !== undefined) onChoose(one);
  };
  return (
    <div className="joined" role="radiogroup" aria-label={label} onKeyDown={keyed}>
      {of.map((one, i) => (
        <button key={one} type="button" role="radio" aria-checked={one === now}
          tabIndex={one === now || (i === 0 && (now === null || !of.includes(now))) ? 0 : -1} onClick={() => onChoose(one)}>
          {words?.[one] ?? one}
        </button>
      ))}
    </div>
  );
}
