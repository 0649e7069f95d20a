// A field in which a figure or a word is typed. It is read at every key, and what is wrong is said in words beside it;
// Enter or leaving it takes it, Escape puts back what stood there.
import { type KeyboardEvent, useEffect, useId, useState } from "react";

/** What was typed: what it comes to, what was wanted instead, or one sentence why it cannot be. */
export type Read<T> = { readonly value: T } | { readonly fault: string } | { readonly refused: string };

export const isRead = <T,>(read: Read<T>): read is { readonly value: T } => "value" in read;

interface Box {
  /** What it is called by those who cannot see where it stands. */
  readonly label: string;
  /** Written in the field before and after the figure. */
  readonly before?: string;
  readonly unit?: string;
  /** For words and lists: as wide as there is room, unless a width is given. */
  readonly words?: boolean;
  readonly width?: string;
  readonly placeholder?: string;
  readonly describedBy?: string | undefined;
  readonly autoFocus?: boolean;
}

export interface TypedProps<T> extends Box {
  readonly stands: string;
  readonly read: (text: string) => Read<T>;
  /** False: it was not done. */
  readonly take: (value: T) => boolean;
  /** What is done on leaving the field, where that is another thing than taking it. */
  readonly leave?: (value: T) => void;
}

export function Typed<T>({ stands, read, take, leave, ...box }: TypedProps<T>) {
  const [text, setText] = useState<string | null>(null);
  useEffect(() => setText(null), [stands]);
  const typed = text === null || text === stands ? null : read(text);
  const entered = () => { if (typed && isRead(typed) && take(typed.value)) setText(null); };
  const left = () => {
    if (typed && isRead(typed)) (leave ?? take)(typed.value);
    if (typed === null || isRead(typed)) setText(null);
  };
  const keyed = (event: KeyboardEvent) => {
    if (event.key === "Enter") entered();
    if (event.key === "Escape" && text !== null) { setText(null); event.stopPropagation(); }
  };
  return <TypedBox {...box} text={text ?? stands} read={typed} onText={setText} onKeyDown={keyed} onBlur={left} />;
}

/** The field itself, for one who keeps what is typed. */
export function TypedBox<T>({ label, before, unit, words = false, width, placeholder, describedBy, autoFocus, text, read, onText, onKeyDown, onBlur }: Box & {
  readonly text: string; readonly read: Read<T> | null; readonly onText: (text: string) => void;
  readonly onKeyDown?: (event: KeyboardEvent) => void; readonly onBlur?: () => void;
}) {
  const id = useId();
  const says = read === null || isRead(read) ? null : "fault" in read ? `wanted: ${read.fault}` : read.refused;
  return (
    <span className={words ? `written words${width === undefined ? " long" : ""}` : "written"}>
      <label className="field" data-wrong={says !== null}>
        {before !== undefined && <span className="soft">{before}</span>}
        <input aria-label={label} aria-invalid={says !== null} aria-describedby={says === null ? describedBy : id} value={text} spellCheck={false} autoFocus={autoFocus}
          placeholder={placeholder} style={width === undefined ? undefined : { width }} onChange={(event) => onText(event.target.value)} onKeyDown={onKeyDown} onBlur={onBlur} />
        {unit !== undefined && unit !== "" && <span className="soft">{unit}</span>}
      </label>
      {says !== null && <span className="fault foul" id={id} role="status">{says}</span>}
    </span>
  );
}
