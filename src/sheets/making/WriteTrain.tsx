// A train in one line, drivers over followers, made into arbors, wheels and pinions in gear.
import { useId, useState } from "react";
import type { Instrument } from "../../../geometry/index.ts";
import { plantTrain, readStages } from "../../commands/train.ts";
import { useActions } from "../../state/hooks.ts";
import { TypedBox } from "../Typed.tsx";

export function WriteTrain({ instrument }: { readonly instrument: Instrument }) {
  const { run } = useActions();
  const [text, setText] = useState("");
  const [from, setFrom] = useState(instrument.input.arbor);
  const read = readStages(text), id = useId();
  const fault = text !== "" && "fault" in read ? read.fault : null;
  const first = instrument.arbors.some((a) => a.id === from) ? from : instrument.input.arbor;
  const put = () => { if ("stages" in read && run(plantTrain, { stages: read.stages, from: first })) setText(""); };
  return (
    <div className="train">
      <h2>Write a train</h2>
      <p className="note" id={id}>Counts as makers write them: drivers over followers, as 42/17 × 41/19. The first driver goes on the arbor chosen, each follower on a new one.</p>
      <div className="row">
        <label className="row">from arbor <select value={first} onChange={(event) => setFrom(event.target.value)}>
          {instrument.arbors.map((a) => <option key={a.id}>{a.id}</option>)}
        </select></label>
        <TypedBox label="Train" describedBy={id} words placeholder="42/17 × 41/19" text={text} read={fault === null ? null : { fault }} onText={setText}
          onKeyDown={(event) => { if (event.key === "Enter") put(); }} />
        <button type="button" className="strong" disabled={!("stages" in read)} onClick={put}>Plant it</button>
      </div>
    </div>
  );
}
