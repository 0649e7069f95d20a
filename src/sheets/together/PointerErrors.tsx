// The error at each pointer, cause by cause and the greatest first, in degrees, divisions and what it shows; how the dial
// is read can be stated; and the phases of assembly that make wander least. Placed on this sheet, and wherever dials are.
import { useMemo, useState } from "react";
import { type HowRead, HOW_READ, type Movement, type PointerError, pointerErrors } from "../../../geometry/index.ts";
import { fixed, length, unitName } from "../../state/figures.ts";
import { useNow } from "../../state/hooks.ts";
import { anAngle, aNumber, between, lengthIn } from "../reading.ts";
import { Typed } from "../Typed.tsx";
import "./together.css";

const FIELDS: readonly { readonly key: keyof HowRead; readonly says: string; readonly unit: string; readonly most: number }[] = [
  { key: "eye", says: "eye aside by", unit: "°", most: 85 }, { key: "gap", says: "pointer over the dial", unit: "mm", most: 100 },
  { key: "offCentre", says: "dial off centre by", unit: "mm", most: 50 }, { key: "years", says: "drift over", unit: "years", most: 10_000 },
];

export function PointerErrors({ movement }: { readonly movement: Movement }) {
  const [how, setHow] = useState<HowRead>(HOW_READ);
  const errors = useMemo(() => pointerErrors(movement, how), [movement, how]);
  if (errors.length === 0) return null;
  return (
    <section aria-label="Error at the pointer" className="pointer-errors">
      <div className="heading ruled"><h2>Error at the pointer</h2><span className="beside">to either side, the greatest cause first</span></div>
      <div className="row">
        {FIELDS.map(({ key, says, unit, most }) => <Stated key={key} says={says} unit={unit} most={most} value={how[key]} take={(v) => setHow({ ...how, [key]: v })} />)}
      </div>
      <div className="scroll-x">
        <table aria-label="Error at each pointer">
          <thead><tr><th>pointer</th><th>cause</th><th className="figure">degrees</th><th className="figure">divisions</th><th className="figure">shows</th></tr></thead>
          <tbody>{errors.map((e, i) => <Causes key={e.display} error={e} name={movement.displays[i]?.name ?? e.display} />)}</tbody>
        </table>
      </div>
      {errors.map((e, i) => <Phases key={e.display} error={e} name={movement.displays[i]?.name ?? e.display} />)}
    </section>
  );
}

function Stated({ says, unit, most, value, take }: {
  readonly says: string; readonly unit: string; readonly most: number; readonly value: number; readonly take: (value: number) => void;
}) {
  const units = useNow((s) => s.units);
  const isLength = unit === "mm", stated = (v: number) => (isLength ? length(v, units, "distance") : String(v));
  const read = between(isLength ? lengthIn(units) : unit === "°" ? anAngle : aNumber, 0, most, `from 0 to ${stated(most)}`);
  return <Typed label={says} before={says} stands={stated(value)} unit={isLength ? unitName(units) : unit} read={read} take={(v) => { take(v); return true; }} />;
}

/** Degrees. What is less would be written as nothing. */
const NOTHING_DEG = 0.0005;

function Causes({ error, name }: { readonly error: PointerError; readonly name: string }) {
  const causes = error.causes.filter((c) => c.degrees >= NOTHING_DEG);
  if (causes.length === 0) return <tr><td><b>{name}</b></td><td colSpan={4} className="soft">{error.wander ? "nothing to be found" : "is not driven"}</td></tr>;
  return causes.map((c, i) => (
    <tr key={c.cause}>
      <td>{i === 0 && <b>{name}</b>}</td><td>{c.cause}</td><td className="figure">{fixed(c.degrees, 3)}</td><td className="figure">{fixed(c.divisions, 3)}</td>
      <td className="figure">{c.days === null ? "–" : shown(c.days)}</td>
    </tr>
  ));
}

/** A time that is shown falsely, in the largest unit that leaves a figure before the point. */
function shown(days: number): string {
  const minutes = days * 1440;
  return days >= 1 ? `${fixed(days, 2)} d` : minutes >= 60 ? `${fixed(minutes / 60, 2)} h` : minutes >= 1 ? `${fixed(minutes, 1)} min` : `${fixed(minutes * 60, 1)} s`;
}

/** Less saved than this part of it is not worth marking teeth for. */
const WORTH = 0.05;

function Phases({ error: { wander }, name }: { readonly error: PointerError; readonly name: string }) {
  if (!wander || wander.most - wander.least < WORTH * wander.most || wander.most === 0) return null;
  const set = wander.wavers.filter((w) => w.best !== null).slice(0, 6);
  return (
    <p className="note"><b>{name}</b>: wander falls from {fixed(wander.most, 3)}° to {fixed(wander.least, 3)}° if the high teeth stand, the crank at 0, at{" "}
      {set.map((w) => `${w.part} ${fixed(w.best ?? 0, 0)}°`).join(", ")}.</p>
  );
}
