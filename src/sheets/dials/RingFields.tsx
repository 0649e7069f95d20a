// Everything of one ring of a dial, each field as the file has it.
import type { DialRing, Movement } from "../../../geometry/index.ts";
import type { Path } from "../../document/index.ts";
import { FieldAt } from "../making/Field.tsx";
import { MarkTable } from "./MarkTable.tsx";

interface Props {
  readonly movement: Movement; readonly ring: DialRing; readonly at: Path; readonly place: number;
  readonly onSet: (field: keyof DialRing, to: unknown) => void;
  readonly onTakeAway: () => void;
}

export function RingFields({ movement, ring, at, place, onSet, onTakeAway }: Props) {
  const { displays = [], arbors } = movement.instrument;
  const name = ring.name ?? displays.find((d) => d.id === ring.display)?.name ?? `ring ${place}`;
  const typed = (label: string, field: keyof DialRing, width: string, says = label) =>
    <Line says={says}><FieldAt movement={movement} path={[...at, field]} label={`${label} of ${name}`} width={width} /></Line>;
  const pick = (label: string, field: keyof DialRing, now: string | undefined, otherwise: string, options: readonly (string | readonly [string, string])[], says = label) => (
    <Line says={says}><select aria-label={`${label} of ${name}`} value={now ?? ""} onChange={(e) => onSet(field, e.target.value === "" ? undefined : e.target.value)}>
      <option value="">{otherwise}</option>
      {options.map((o) => { const [value, words] = typeof o === "string" ? [o, o] : o; return <option key={value} value={value}>{words}</option>; })}
    </select></Line>
  );
  return (
    <fieldset className="ring-fields">
      <legend>Ring {place}, {name}</legend>
      <div className="lines">
        {typed("Name", "name", "16ch")}
        {pick("Pointer", "display", ring.display, "the eye only", displays.map((d) => [d.id, d.name] as const), "Read by")}
        {pick("Carrier", "carrier", ring.carrier, "stands", arbors.map((a) => a.id), "Carried by")}
        {typed("Inside", "insideDiameter", "7ch", "Inside ø")}{typed("Outside", "outsideDiameter", "7ch", "Outside ø")}
        {typed("Zero", "zero", "4ch", "0 stands at")}
        {pick("Sense", "sense", ring.sense, "as its pointer", ["clockwise", "anticlockwise"], "Numbered")}
        {pick("Marks", "follows", ring.follows, "even", ["calendar", "calendar by the Sun", "equation of time", "height of the tide"])}
        {typed("Divisions", "divisions", "7ch")}{typed("Parts", "parts", "5ch", "Parts of each")}{typed("Every", "every", "5ch", "Numeral every")}
        {pick("Numerals", "numerals", ring.numerals, "as is usual", ["arabic", "roman", "none"])}
        {typed("Words", "labels", "22ch", "Words, by commas")}
      </div>
      <MarkTable ring={ring} name={name} onKeep={(marks) => onSet("marks", marks)} />
      <button type="button" onClick={onTakeAway}>Take {name} away</button>
    </fieldset>
  );
}

const Line = ({ says, children }: { readonly says: string; readonly children: React.ReactNode }) =>
  <div className="line"><span className="soft">{says}</span>{children}</div>;
