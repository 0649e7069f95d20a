// Making and changing the dials: what each pointer stands for, the date at input 0, and every ring of every dial. Each change
// is one command and one step of undo.
import { type Dial, type DialRing, dialsFor, type Movement, QUANTITIES } from "../../../geometry/index.ts";
import { setField } from "../../commands/edit.ts";
import type { Path } from "../../document/index.ts";
import { useActions } from "../../state/hooks.ts";
import { FieldAt } from "../making/Field.tsx";

export function Making({ movement }: { readonly movement: Movement }) {
  const { run } = useActions();
  const { dials, displays } = movement.instrument;
  const set = (path: readonly (string | number)[], to: unknown) => run(setField, { path, to });
  return (
    <section>
      <div className="heading ruled"><h2>Making the dials</h2><span className="beside">what each shows, and its rings</span>
        {dials === undefined && <span className="end"><button type="button" onClick={() => set(["dials"], dialsFor(movement))}>Draw them into the instrument</button></span>}
      </div>
      <div className="scroll-x"><table aria-label="What each pointer shows">
        <thead><tr><th>pointer</th><th>shows</th><th>divisions</th><th>date at input 0</th></tr></thead>
        <tbody>{displays?.map((d, i) => (
          <tr key={d.id}><td><h3>{d.name}</h3></td>
            <td><select aria-label={`What ${d.name} shows`} value={d.shows ?? ""} onChange={(e) => set(["displays", i, "shows"], e.target.value === "" ? undefined : e.target.value)}>
              <option value="">nothing of the sky</option>
              {d.shows !== undefined && !QUANTITIES.some((q) => q.name === d.shows) && <option value={d.shows}>{d.shows}</option>}
              {QUANTITIES.map((q) => <option key={q.name} value={q.name}>{q.name}</option>)}
            </select></td>
            <td><FieldAt movement={movement} path={["displays", i, "divisions"]} label={`Divisions of ${d.name}`} width="6ch" /></td>
            <td><FieldAt movement={movement} path={["displays", i, "epoch"]} label={`Date of ${d.name} at input 0`} width="22ch" /></td>
          </tr>
        ))}</tbody>
      </table></div>
      {dials?.map((dial, i) => <Rings key={dial.id} dial={dial} movement={movement} at={["dials", i]} onSet={(path, to) => set(["dials", i, ...path], to)} />)}
    </section>
  );
}

function Rings({ dial, movement, at, onSet }: { readonly dial: Dial; readonly movement: Movement; readonly at: Path; readonly onSet: (path: readonly (string | number)[], to: unknown) => void }) {
  const outside = Math.max(0, ...dial.rings.map((r) => r.outsideDiameter));
  return (
    <div>
      <div className="row"><h3>{dial.name ?? dial.id}</h3>
        <button type="button" onClick={() => onSet(["rings"], [...dial.rings, { insideDiameter: outside + 2, outsideDiameter: outside + 12, divisions: 12 }])}>Another ring</button></div>
      <div className="scroll-x"><table aria-label={`Rings of ${dial.name ?? dial.id}`}>
        <thead><tr><th>ring</th><th>read by</th><th>carried by</th><th>inside</th><th>outside</th><th>parts</th><th>numeral every</th><th>numerals</th><th>0 stands at</th><th>marks</th></tr></thead>
        <tbody>{dial.rings.map((ring, k) => <RingRow key={k} ring={ring} movement={movement} at={[...at, "rings", k]} onSet={(name, to) => onSet(["rings", k, name], to)} />)}</tbody>
      </table></div>
    </div>
  );
}

function RingRow({ ring, movement, at, onSet }: { readonly ring: DialRing; readonly movement: Movement; readonly at: Path; readonly onSet: (name: keyof DialRing, to: unknown) => void }) {
  const name = ring.name ?? ring.display ?? "ring";
  const pick = (label: string, field: keyof DialRing, now: string | undefined, otherwise: string, options: readonly string[]) => (
    <select aria-label={`${label} of ${name}`} value={now ?? ""} onChange={(e) => onSet(field, e.target.value === "" ? undefined : e.target.value)}>
      <option value="">{otherwise}</option>{options.map((o) => <option key={o} value={o}>{o}</option>)}
    </select>
  );
  const typed = (label: string, field: keyof DialRing, width = "7ch") => <FieldAt movement={movement} path={[...at, field]} label={`${label} of ${name}`} width={width} />;
  return (
    <tr>
      <td>{typed("Name", "name", "14ch")}</td>
      <td>{pick("Pointer", "display", ring.display, "the eye", (movement.instrument.displays ?? []).map((d) => d.id))}</td>
      <td>{pick("Carrier", "carrier", ring.carrier, "stands", movement.arbors.map((a) => a.id))}</td>
      <td>{typed("Inside", "insideDiameter")}</td><td>{typed("Outside", "outsideDiameter")}</td>
      <td>{typed("Parts", "parts")}</td><td>{typed("Every", "every")}</td>
      <td>{pick("Numerals", "numerals", ring.numerals, "as is usual", ["arabic", "roman", "none"])}</td>
      <td>{typed("Zero", "zero")}</td>
      <td>{pick("Marks", "follows", ring.follows, "even", ["calendar", "calendar by the Sun", "equation of time"])}</td>
    </tr>
  );
}
