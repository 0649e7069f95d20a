// What is open in the form: what it is called, what can be done with it as a whole, and what can be put on it.
import { type Instrument, isToothed, type Movement, type Part, type PartKind } from "../../../geometry/index.ts";
import { addThing, copyThing, putOn, setField, takeAway } from "../../commands/edit.ts";
import { asKind, freshCase, freshPart } from "../../commands/things.ts";
import { type Path, valueAt } from "../../document/index.ts";
import { Menu } from "../../head/Menu.tsx";
import { useActions, useBench } from "../../state/hooks.ts";
import { sectionsOf, samePath } from "./entries.ts";
import { PutInGear } from "./PutInGear.tsx";

const KINDS: readonly PartKind[] = ["wheel", "pinion", "lantern", "collet", "pointer", "disc", "pin", "slot", "arm", "ratchet", "square"];
const TITLES: Readonly<Record<string, string>> = { input: "Input", practice: "Practice", gearing: "Gearing", division: "Division" };

export function Heading({ movement, path, onAdded, onGone }: {
  readonly movement: Movement; readonly path: Path; readonly onAdded: (list: Path, after: Instrument) => void; readonly onGone: () => void;
}) {
  const { store, actions: { run } } = useBench();
  const { instrument } = movement, listed = typeof path.at(-1) === "number";
  const part = path.length === 4 && path[2] === "parts" ? (valueAt(instrument, path) as Part | undefined) : undefined;
  const arbor = path[0] === "arbors" && typeof path[1] === "number" ? instrument.arbors[path[1]] : undefined;
  const now = () => store.getState().instrument ?? instrument;
  const copy = () => {
    if (!run(copyThing, { path })) return;
    const list = path.slice(0, -1), copied = valueAt(now(), list);
    if (Array.isArray(copied)) onAdded(list, { ...now(), arbors: now().arbors });
  };
  return (
    <div className="making-head">
      <div className="heading">
        <h2>{titleOf(instrument, path)}</h2>
        {listed && (
          <span className="end row">
            <button type="button" onClick={copy}>Copy</button>
            <button type="button" onClick={() => { if (run(takeAway, { path })) onGone(); }}>Take away</button>
          </span>
        )}
        {samePath(path, ["frame", "case"]) && <Case instrument={instrument} />}
        {path.length === 1 && (path[0] === "division") && <Division instrument={instrument} />}
      </div>
      {part && arbor && (
        <div className="row">
          <label className="row">kind <select value={part.kind} onChange={(event) => run(setField, { path, to: asKind(instrument, arbor, part, event.target.value as PartKind) })}>
            {KINDS.map((kind) => <option key={kind}>{kind}</option>)}
          </select></label>
          <label className="row">on arbor <select value={arbor.id} onChange={(event) => { if (run(putOn, { part: part.id, arbor: event.target.value })) onGone(); }}>
            {instrument.arbors.map((a) => <option key={a.id}>{a.id}</option>)}
          </select></label>
        </div>
      )}
      {part && isToothed(part) && <PutInGear instrument={instrument} from={part.id} />}
      {arbor && !part && (
        <div className="row">
          <Menu label="Add a part">{KINDS.map((kind) => (
            <button key={kind} type="button" data-closes onClick={() => {
              const list = [...path, "parts"];
              if (run(addThing, { list, thing: freshPart(instrument, arbor, kind) })) onAdded(list, now());
            }}>{kind}</button>
          ))}</Menu>
        </div>
      )}
    </div>
  );
}

function Case({ instrument }: { readonly instrument: Instrument }) {
  const { run } = useActions();
  const has = instrument.frame.case !== undefined;
  return <span className="end"><button type="button" onClick={() => run(setField, { path: ["frame", "case"], to: has ? undefined : freshCase(instrument) })}>{has ? "Take away" : "Put in a case"}</button></span>;
}

/** A dividing head of 40 to 1, the ordinary one. */
const ORDINARY = { ratio: 40, circles: [15, 16, 17, 18, 19, 20] };

function Division({ instrument }: { readonly instrument: Instrument }) {
  const { run } = useActions();
  const has = instrument.division !== undefined;
  return <span className="end"><button type="button" onClick={() => run(setField, { path: ["division"], to: has ? undefined : ORDINARY })}>{has ? "Take away" : "Put in a dividing head"}</button></span>;
}

function titleOf(instrument: Instrument, path: Path): string {
  if (path.length === 0) return instrument.name;
  if (path.length === 1) return TITLES[String(path[0])] ?? String(path[0]);
  for (const { title, entries } of sectionsOf(instrument)) {
    const entry = entries.find((e) => samePath(e.path, path));
    if (entry) return title === "Case" ? "Case" : [entry.deep === 1 ? "" : SINGLE[title] ?? title, entry.id, entry.says].filter(Boolean).join(" ");
  }
  return "";
}

const SINGLE: Readonly<Record<string, string>> = {
  Plates: "Plate", Pillars: "Pillar", Arbors: "Arbor", "In gear": "In gear", Couplings: "Coupling", Displays: "Display", Dials: "Dial", Cutters: "Cutter",
};
