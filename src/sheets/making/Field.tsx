// One field of the file as it is typed or chosen, by what the definition says it is. It is checked at every key with the
// words of the reader; Enter or leaving it keeps it, Escape puts back what stood there.
import type { Instrument, Movement } from "../../../geometry/index.ts";
import { fieldInWords, faultWith, rename, setField } from "../../commands/edit.ts";
import { type Dimension, typedFigure } from "../../commands/typed.ts";
import { type Path, shapeAt, valueAt } from "../../document/index.ts";
import type { Shape } from "../../document/shape.ts";
import { fieldsOf } from "../../document/walk.ts";
import { Choice } from "../../head/Choice.tsx";
import { mmOf, unitName } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import type { Units } from "../../state/state.ts";
import { isRead, type Read, Typed } from "../Typed.tsx";
import { choicesFor } from "./choices.ts";
import { type Default, defaultFor } from "./defaults.ts";

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
  readonly width?: string;
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

/** A field by where it stands in the file, wherever on the sheets it is. */
export function FieldAt({ movement, path, label, width }: { readonly movement: Movement; readonly path: Path; readonly label: string; readonly width?: string }) {
  const { instrument } = movement, whole = path.slice(0, -1), name = String(path.at(-1));
  const field = fieldsOf(valueAt(instrument, whole), shapeAt(instrument, whole))?.fields[name];
  if (!field) return null;
  return <Field instrument={instrument} path={path} shape={field.shape} value={valueAt(instrument, path)} optional={field.when !== "always"} usual={defaultFor(movement, path)}
    describedBy={undefined} label={label} {...(width === undefined ? {} : { width })} />;
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

function Written({ instrument, path, shape, value, optional, usual, describedBy, label, width }: FieldProps & { readonly label: string }) {
  const units = useNow((s) => s.units);
  const { run } = useActions();
  const named = shape.is === "id" && typeof value === "string" ? value : null;
  const read = (text: string): Read<unknown> => {
    const typed = readField(text, shape, units, optional);
    if (!isRead(typed)) return typed;
    const fault = named === null ? faultWith(instrument, path, typed.value) : renameFault(instrument, named, typed.value);
    return fault === null ? typed : { fault };
  };
  const take = (to: unknown) => (named === null ? run(setField, { path, to }) : run(rename, { from: named, to: String(to) }));
  return (
    <Typed key={path.join(" ")} label={label} stands={written(value, shape, units)} read={read} take={take} unit={unitOf(shape, units)} describedBy={describedBy}
      {...(width === undefined ? {} : { width })} words={shape.is === "text" || shape.is === "lists" || shape.is === "list"} placeholder={usual === null ? "" : written(usual.value, shape, units)} />
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
  const shown = mm && units === "inch" ? Math.round((value / mmOf(units)) * 1e6) / 1e6 : Math.round(value * 1e9) / 1e9;
  return String(shown).replace("-", "−");
}

/** What was typed, as the file wants it. */
function readField(text: string, shape: Shape, units: Units, optional: boolean): Read<unknown> {
  if (text.trim() === "" && optional) return { value: undefined };
  switch (shape.is) {
    case "number": {
      const read = typedFigure(text, dimensionOf(shape.unit), mmOf(units));
      return "fault" in read ? read : { value: Math.round(read.value * 1e9) / 1e9 || 0 };
    }
    case "pair":
    case "list": return readAll(text, shape.of, units);
    case "lists": return text.includes(";") ? listsOf(text, shape.of, units) : readAll(text, shape.of, units);
    default: return { value: shape.is === "id" ? text.trim() : text };
  }
}

function listsOf(text: string, of: Shape, units: Units): Read<unknown> {
  const all = text.split(";").map((part) => readAll(part, of, units));
  return all.find((one) => !isRead(one)) ?? { value: all.map((one) => (isRead(one) ? one.value : null)) };
}

/** Several, parted by commas, or by semicolons where there are any. */
function readAll(text: string, of: Shape, units: Units): Read<unknown> {
  const all = text.split(text.includes(";") ? ";" : ",").map((part) => part.trim()).filter((part) => part !== "").map((part) => readField(part, of, units, false));
  return all.find((one) => !isRead(one)) ?? { value: all.map((one) => (isRead(one) ? one.value : null)) };
}
