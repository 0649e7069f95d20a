// The form of anything in the file, driven by the file's own definition: a row for every field with what stands there,
// its default and where that comes from, and what it means; groups and lists inside it in the same way.
import { Fragment, useId } from "react";
import type { Movement } from "../../../geometry/index.ts";
import { addThing, copyThing, fieldInWords, setField, takeAway } from "../../commands/edit.ts";
import { freshIn } from "../../commands/things.ts";
import { type Path, valueAt } from "../../document/index.ts";
import { meaning } from "../../document/schema.ts";
import type { Field as FieldOf, FieldsShape, Shape } from "../../document/shape.ts";
import { fieldsOf } from "../../document/walk.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { type Default, defaultFor } from "./defaults.ts";
import { Field, written } from "./Field.tsx";
import { freshGroup, shapeToo } from "./groups.ts";

/** Fields that are things of their own in the list, or that the program sees to. */
const ELSEWHERE: ReadonlySet<string> = new Set([
  "endshake", "kind", "frame", "arbors", "parts", "engagements", "couplings", "displays", "dials", "cutters", "practice", "gearing", "input", "division", "dayBook",
]);

export interface FormProps { readonly movement: Movement; readonly path: Path; readonly shape: Shape | undefined }

export function Form({ movement, path, shape }: FormProps) {
  const value = valueAt(movement.instrument, path);
  const fields = fieldsOf(value ?? {}, shape);
  if (!fields) return null;
  const shown = Object.entries(fields.fields).filter(([name]) => !ELSEWHERE.has(name) || (path.length > 0 && name === "endshake") || (path[0] === "dials" && name === "parts"));
  const unknown = Object.keys(Object(value)).filter((name) => !Object.hasOwn(fields.fields, name));
  return (
    <div className="form">
      {fields.oneOf ? <OneOf movement={movement} path={path} shape={fields} /> : shown.map(([name, field]) => (
        <Row key={name} movement={movement} path={[...path, name]} field={field} kind={valueAt(value, ["kind"])} />
      ))}
      {unknown.length > 0 && <p className="note">Kept as it came, not understood: {unknown.join(", ")}</p>}
    </div>
  );
}

function Row({ movement, path, field, kind }: { readonly movement: Movement; readonly path: Path; readonly field: FieldOf; readonly kind: unknown }) {
  const { shape } = field, value = valueAt(movement.instrument, path), id = useId();
  const says = meaning(path.filter((key): key is string => typeof key === "string"), typeof kind === "string" ? kind : undefined);
  if (shape.is === "fields" || shape.is === "kinds" || isListOfThings(shape))
    return <Group movement={movement} path={path} field={field} says={says} />;
  const usual = defaultFor(movement, path);
  return (
    <div className="form-row">
      <span className="name">{fieldInWords(String(path.at(-1)))}</span>
      <Field instrument={movement.instrument} path={path} shape={shape} value={value} optional={field.when !== "always"} usual={usual} describedBy={says === undefined ? undefined : id} />
      <Standing path={path} value={value} shape={shape} usual={usual} optional={field.when !== "always"} />
      <span className="note" id={id}>{says}</span>
    </div>
  );
}

/** Where what stands there comes from, and the way back to the default; a measured figure beside the drawn one. */
function Standing({ path, value, shape, usual, optional }: {
  readonly path: Path; readonly value: unknown; readonly shape: Shape; readonly usual: Default | null; readonly optional: boolean;
}) {
  const { run } = useActions();
  const units = useNow((s) => s.units);
  if (!optional || (value === undefined && usual === null)) return <MeasuredBy value={value} usual={usual} shape={shape} />;
  if (value === undefined) return <span className="soft">{usual?.from}</span>;
  return (
    <span className="soft">
      {usual === null || usual.value === value ? null : <>{usual.from} {written(usual.value, shape, units)} </>}
      <MeasuredBy value={value} usual={usual} shape={shape} />
      <button type="button" className="plain" onClick={() => run(setField, { path, to: undefined })}>{usual === null ? "Without" : usual.value === value ? "Leave open" : "By default"}<span className="unseen">: {fieldInWords(String(path.at(-1)))}</span></button>
    </span>
  );
}

function MeasuredBy({ value, usual, shape }: { readonly value: unknown; readonly usual: Default | null; readonly shape: Shape }) {
  const units = useNow((s) => s.units);
  if (usual?.from !== "drawn" || typeof value !== "number" || typeof usual.value !== "number") return <span />;
  const by = value - usual.value;
  return <span className="figure">{by > 0 ? "+" : ""}{written(Math.round(by * 1e4) / 1e4, shape, units)}</span>;
}

/** A list whose items are things with fields, or places. */
const isListOfThings = (shape: Shape): boolean => shape.is === "list" && (shape.of.is === "fields" || shape.of.is === "kinds" || shape.of.is === "pair");

/** Fields that stand inside another: there or not, with what they are under them. */
function Group({ movement, path, field, says }: { readonly movement: Movement; readonly path: Path; readonly field: FieldOf; readonly says: string | undefined }) {
  const { run } = useActions();
  const { instrument } = movement, value = valueAt(instrument, path), name = fieldInWords(String(path.at(-1)));
  const list = field.shape.is === "list";
  const fresh = list ? null : freshGroup(movement, path);
  return (
    <fieldset className="group">
      <legend>{name}</legend>
      <span className="note">{says}</span>
      {!list && value === undefined && fresh !== null && (
        <button type="button" onClick={() => run(setField, { path, to: fresh })}>Put in<span className="unseen">: {name}</span></button>
      )}
      {!list && value !== undefined && field.when !== "always" && (
        <button type="button" className="plain" onClick={() => run(setField, { path, to: undefined })}>Take away<span className="unseen">: {name}</span></button>
      )}
      {list ? <Items movement={movement} path={path} shape={field.shape} name={name} />
        : (value !== undefined || fresh === null) && <Form movement={movement} path={path} shape={field.shape} />}
    </fieldset>
  );
}

function Items({ movement, path, shape, name }: { readonly movement: Movement; readonly path: Path; readonly shape: Shape; readonly name: string }) {
  const { run } = useActions();
  const { instrument } = movement, items = valueAt(instrument, path);
  if (shape.is !== "list") return null;
  const all: readonly unknown[] = Array.isArray(items) ? items : [], one = name.replace(/ies$/, "y").replace(/s$/, "");
  const last = all.at(-1);
  const fresh = shape.of.is === "pair" ? (Array.isArray(last) ? last.map((mm: unknown) => Number(mm) + 5) : [0, 0]) : freshIn(instrument, String(path.at(-1)));
  return (
    <>
      {all.map((item, i) => (
        <Fragment key={i}>
          <div className="item-head">
            <span className="name">{shape.of.is === "pair" ? `corner ${i + 1}` : `${one} ${i + 1}`}</span>
            {shape.of.is === "pair" && (
              <Field instrument={instrument} path={[...path, i]} shape={shape.of} value={item} optional={false} usual={null} describedBy={undefined} label={`corner ${i + 1}, x and y`} />
            )}
            <button type="button" className="plain" onClick={() => run(copyThing, { path: [...path, i] })}>Copy<span className="unseen"> {one} {i + 1}</span></button>
            <button type="button" className="plain" onClick={() => run(takeAway, { path: [...path, i] })}>Take away<span className="unseen"> {one} {i + 1}</span></button>
          </div>
          {shape.of.is !== "pair" && <Form movement={movement} path={[...path, i]} shape={shape.of} />}
        </Fragment>
      ))}
      <button type="button" onClick={() => run(addThing, { list: path, thing: fresh })}>Add {shape.of.is === "pair" ? "a corner" : /^[aeiou]/.test(one) ? `an ${one}` : `a ${one}`}</button>
    </>
  );
}

/** One of a few, such as the edge of a plate; the other is begun about as large. */
function OneOf({ movement, path, shape }: { readonly movement: Movement; readonly path: Path; readonly shape: FieldsShape }) {
  const { run } = useActions();
  const value = valueAt(movement.instrument, path), now = shape.oneOf?.find((name) => valueAt(value, [name]) !== undefined);
  const field = now === undefined ? undefined : shape.fields[now];
  return (
    <>
      <div className="form-row">
        <span className="name">shape</span>
        <select aria-label="shape" value={now ?? ""} onChange={(event) => run(setField, { path, to: shapeToo(value, event.target.value) })}>
          {shape.oneOf?.map((name) => <option key={name} value={name}>{name}</option>)}
        </select>
      </div>
      {now !== undefined && field && (field.shape.is === "list" ? <Items movement={movement} path={[...path, now]} shape={field.shape} name="corners" />
        : <Form movement={movement} path={[...path, now]} shape={field.shape} />)}
    </>
  );
}
