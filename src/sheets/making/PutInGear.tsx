// Choosing two wheels and putting them in gear.
import { useState } from "react";
import { type Instrument, isToothed } from "../../../geometry/index.ts";
import { putInGear } from "../../commands/gear.ts";
import { useActions } from "../../state/hooks.ts";
import { type ChoiceOf, partsWhere } from "./choices.ts";

/** `from`: one of the two is chosen already. */
export function PutInGear({ instrument, from }: { readonly instrument: Instrument; readonly from?: string }) {
  const { run } = useActions();
  const own = instrument.arbors.find((a) => a.parts.some((p) => p.id === from));
  const all = partsWhere(instrument, isToothed);
  const others = all.filter(({ id }) => !own?.parts.some((p) => p.id === id));
  const [one, setOne] = useState("");
  const [other, setOther] = useState("");
  const driver = from ?? (all.some((p) => p.id === one) ? one : all[0]?.id ?? "");
  const driven = others.some((p) => p.id === other) ? other : "";
  if (all.length < 2) return from === undefined ? <p className="note">Two wheels on two arbors are needed, and there are not two yet.</p> : null;
  return (
    <div className="gear">
      {from === undefined && <h2>Put in gear</h2>}
      <div className="row">
        {from === undefined && <Wheels label="driver" of={all} now={driver} onChoose={setOne} />}
        <Wheels label={from === undefined ? "driven" : "in gear with"} of={[{ id: "", says: "choose a wheel" }, ...others]} now={driven} onChoose={setOther} />
        <button type="button" disabled={driven === ""} onClick={() => run(putInGear, { driver, driven })}>{from === undefined ? "Put in gear" : `${from} drives it`}</button>
        {from !== undefined && <button type="button" disabled={driven === ""} onClick={() => run(putInGear, { driver: driven, driven: from })}>It drives {from}</button>}
      </div>
      {from === undefined && <p className="note">The one that nothing holds yet is brought to its distance and to the height of the other.</p>}
    </div>
  );
}

function Wheels({ label, of, now, onChoose }: { readonly label: string; readonly of: readonly ChoiceOf[]; readonly now: string; readonly onChoose: (id: string) => void }) {
  return (
    <label className="row">{label} <select value={now} onChange={(event) => onChoose(event.target.value)}>
      {of.map(({ id, says }) => <option key={id} value={id}>{says}</option>)}
    </select></label>
  );
}
