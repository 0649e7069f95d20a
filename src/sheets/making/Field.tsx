// One field of the file as it is typed or chosen, by what the definition says it is. It is checked at every key with the
// words of the reader; Enter or leaving it keeps it, Escape puts back what stood there.
import { type KeyboardEvent, useEffect, useId, useState } from "react";
import type { Instrument } from "../../../geometry/index.ts";
import { fieldInWords, faultWith, rename, setField } from "../../commands/edit.ts";
import { type Dimension, typedFigure } from "../../commands/typed.ts";
import type { Path } from "../../document/index.ts";
import type { Shape } from "../../document/shape.ts";
import { Choice } from "../../head/Choice.tsx";
import { unitName } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { choicesFor } from "./choices.ts";
import type { Default } from "./defaults.ts";

const MM_PER_INCH = 25.4;

export interface FieldProps {
  readonly instrument: Instrument;
  readonly path: Path;
  readonly shape: Shape;
  readonly value: unknown;
  /** It may be absent. */
  readonly optional: boolean;
  readonly usual: Default | null;
  /** Of what stands under it. */
  readonly describedBy: string | undefined;
  /** What it is called, where its name in the file does not say it. */
  readonly label?: string;
}

export function Field(props: FieldProps) {
  const { path, shape, value, optional, usual } = props;
  const { run } = useActions();
  const label = props.label ?? fieldInWords(String(path.at(-1)));
  if (shape.is === "flag")
    return <Choice label={label} of={["Yes", "No"]} now={(value ?? usual?.value) === true ? "Yes" : "No"}
      onChoose={(to) => run(setField, { path, to: to === "Yes" ? true : optional ? undefined : false })} />;
  if (shape.is === "word" || shape.is === "reference") return <Chosen {...props} label={label} />;
  return <Written {...props} label={label} />;
}

function Chosen({ instrument, path, shape, value, optional, usual, describedBy, label }: FieldProps & { readonly label: string }) {
  const { run } = useActions();
  const choices = choicesFor(instrument, path, shape);
  return (
    <select aria-label={label} aria-describedby={describedBy} value={typeof value === "string" ? value : ""}
      onChange={(event) => run(setField, { path, to: event.target.value === "" ? undefined : event.target.value })}>
      {optional && <option value="">{usual ? `${String(usual.value)}, ${usual.from}` : "none"}</option>}
      {choices.map(({ id, says }) => <option key={id} value={id}>{says}</option>)}
    </select>
  );
}

function Written({ instrument, path, shape, value, optional, usual, describedBy, label }: FieldProps & { readonly label: string }) {
  const units = useNow((s) => s.units);
  const { run } = useActions();
  const stands = written(value, shape, units);
  const [text, setText] = useState<string | null>(null);
  const faultId = useId();
  useEffect(() => setText(null), [stands, path]);
  const read = text === null || text === stands ? null : readField(text, shape, units, optional);
  const fault = read === null ? null : "fault" in read ? read.fault
    : shape.is === "id" && typeof value === "string" ? renameFault(instrument, value, read.value) : faultWith(instrument, path, read.value);
  const take = () => {
    if (read === null || fault !== null || "fault" in read) return false;
    const done = shape.is === "id" && typeof value === "string" ? run(rename, { from: value, to: String(read.value) }) : run(setField, { path, to: read.value });
    if (done) setText(null);
    return done;
  };
  const keyed = (event: KeyboardEvent) => {
    if (event.key === "Enter") take();
    if (event.key === "Escape" && text !== null) { setText(null); event.stopPropagation(); }
  };
  const long = shape.is === "text" || shape.is === "lists" || shape.is === "list";
  return (
    <span className="written">
      <span className={long ? "field long" : "field"} data-wrong={fault !== null}>
        <input aria-label={label} aria-invalid={fault !== null} aria-describedby={fault === null ? describedBy : faultId} value={text ?? stands} spellCheck={false}
          placeholder={usual === null ? "" : written(usual.value, shape, units)} onChange={(event) => setText(event.target.value)} onKeyDown={keyed}
          onBlur={() => { if (!take() && fault === null) setText(null); }} />
        {unitOf(shape, units) !== "" && <span className="soft">{unitOf(shape, units)}</span>}
      </span>
      {fault !== null && <span className="fault foul" id={faultId} role="status">wanted: {fault}</span>}
    </span>
  );
}

const renameFault = (instrument: Instrument, from: string, to: unknown): string | null => {
  const outcome = rename.run(instrument, { from, to: String(to) });
  return "refused" in outcome ? (/expected (.*)\.$/.exec(outcome.refused)?.[1] ?? outcome.refused) : null;
};

/** The unit that stands beside a field. */
function unitOf(shape: Shape, units: Units): string {
  const unit = shape.is === "number" ? shape.unit : shape.is === "pair" && shape.of.is === "number" ? shape.of.unit : "";
  return unit === "mm" ? unitName(units) : unit;
}

const dimensionOf = (unit: string): Dimension => (unit === "mm" ? "length" : unit === "degrees" ? "angle" : "number");

/** A value as it stands in its field. */
export function written(value: unknown, shape: Shape, units: Units): string {
  if (value === undefined) return "";
  if (Array.isArray(value)) {
    const inside: Shape = shape.is === "pair" || shape.is === "list" || shape.is === "lists" ? shape.of : { is: "text" };
    return value.map((one) => written(one, inside, units)).join(value.some(Array.isArray) ? "; " : ", ");
  }
  if (typeof value !== "number") return String(value);
  const mm = shape.is === "number" && shape.unit === "mm";
  const shown = mm && units === "inch" ? Math.round((value / MM_PER_INCH) * 1e6) / 1e6 : Math.round(value * 1e9) / 1e9;
  return String(shown).replace("-", "−");
}

type ReadField = { readonly value: unknown } | { readonly fault: string };

/** What was typed, as the file wants it. */
function readField(text: string, shape: Shape, units: Units, optional: boolean): ReadField {
  if (text.trim() === "" && optional) return { value: undefined };
  switch (shape.is) {
    case "number": {
      const read = typedFigure(text, dimensionOf(shape.unit), units === "inch" ? MM_PER_INCH : 1);
      return "fault" in read ? read : { value: Math.round(read.value * 1e9) / 1e9 || 0 };
    }
    case "pair":
    case "list": return readAll(text, shape.of, units);
    case "lists": return text.includes(";") ? listsOf(text, shape.of, units) : readAll(text, shape.of, units);
    default: return { value: shape.is === "id" ? text.trim() : text };
  }
}

function listsOf(text: string, of: Shape, units: Units): ReadField {
  const all = text.split(";").map((part) => readAll(part, of, units));
  return all.find((one) => "fault" in one) ?? { value: all.map((one) => ("value" in one ? one.value : null)) };
}

/** Several, parted by commas, or by semicolons where there are any. */
function readAll(text: string, of: Shape, units: Units): ReadField {
  const all = text.split(text.includes(";") ? ";" : ",").map((part) => part.trim()).filter((part) => part !== "").map((part) => readField(part, of, units, false));
  return all.find((one) => "fault" in one) ?? { value: all.map((one) => ("value" in one ? one.value : null)) };
}
