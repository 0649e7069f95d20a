// Making and changing the dials: what each pointer stands for, the date at input 0, and every ring of every dial. Each change
// is one command and one step of undo.
import { type Dial, dialsFor, type Movement, QUANTITIES } from "../../../geometry/index.ts";
import { addThing, setField, takeAway } from "../../commands/edit.ts";
import { idsIn, type Path } from "../../document/index.ts";
import { useActions } from "../../state/hooks.ts";
import { FieldAt } from "../making/Field.tsx";
import { ApertureFields } from "./ApertureFields.tsx";
import { RingFields } from "./RingFields.tsx";

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
      {dials?.map((dial, i) => <DialFields key={dial.id} dial={dial} movement={movement} at={["dials", i]} />)}
      {dials !== undefined && <div className="row"><button type="button" onClick={() => run(addThing, { list: ["dials"], thing: freshDial(movement) })}>Another dial</button></div>}
    </section>
  );
}

function DialFields({ dial, movement, at }: { readonly dial: Dial; readonly movement: Movement; readonly at: Path }) {
  const { run } = useActions();
  const name = dial.name ?? dial.id, outside = Math.max(0, ...dial.rings.map((r) => r.outsideDiameter));
  const typed = (label: string, field: string, width: string) => <label className="row"><span className="soft">{label}</span><FieldAt movement={movement} path={[...at, field]} label={`${label} of ${name}`} width={width} /></label>;
  return (
    <section className="dial-fields" aria-label={name}>
      <div className="row"><h3>{name}</h3>{typed("Called", "name", "16ch")}{typed("Centre x", "x", "8ch")}{typed("Centre y", "y", "8ch")}
        <button type="button" onClick={() => run(takeAway, { path: at })}>Take the dial away</button></div>
      {dial.rings.map((ring, k) => (
        <RingFields key={k} ring={ring} movement={movement} place={k + 1} at={[...at, "rings", k]} onSet={(field, to) => run(setField, { path: [...at, "rings", k, field], to })}
          onTakeAway={() => run(takeAway, { path: [...at, "rings", k] })} />
      ))}
      <div className="row"><button type="button" onClick={() => run(addThing, { list: [...at, "rings"], thing: { insideDiameter: outside + 2, outsideDiameter: outside + 12, divisions: 12 } })}>Another ring</button></div>
      <ApertureFields movement={movement} dial={dial} at={at} name={name} />
    </section>
  );
}

/** One ring for the first display that no dial shows yet. */
function freshDial({ instrument }: Movement): Dial {
  const taken = new Set(idsIn(instrument)), shown = new Set((instrument.dials ?? []).flatMap((d) => d.rings).map((r) => r.display));
  const display = instrument.displays?.find((d) => !shown.has(d.id));
  let n = 1;
  while (taken.has(`dial${n}`)) n += 1;
  return { id: `dial${n}`, name: display?.name ?? "Dial", rings: [{ ...(display ? { display: display.id } : {}), insideDiameter: 20, outsideDiameter: 30 }] };
}
