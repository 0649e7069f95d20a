// Making: everything in the instrument in one list, and the form of what is chosen. Each change is one step that can be
// undone; what the reader would refuse is not done.
import { type KeyboardEvent, useMemo, useState } from "react";
import type { Instrument, Movement } from "../../../geometry/index.ts";
import { addThing } from "../../commands/edit.ts";
import { type ArborKind, freshArbor, freshIn } from "../../commands/things.ts";
import { type Path, shapeAt, valueAt } from "../../document/index.ts";
import { Menu } from "../../head/Menu.tsx";
import { useActions, useBench, useNow } from "../../state/hooks.ts";
import { chosenBy, type Entry, pathOf, samePath, type Section, sectionsOf } from "./entries.ts";
import { Form } from "./Form.tsx";
import { Heading } from "./Heading.tsx";
import "./making.css";
import { PutInGear } from "./PutInGear.tsx";
import { WriteTrain } from "./WriteTrain.tsx";

const ARBORS: readonly ArborKind[] = ["arbor", "pipe", "stud", "post"];
const COUPLINGS = ["pin and slot", "click", "friction"];

/** What stands at the right: the form of a path, the train in one line, or two wheels to be put in gear. */
type Shown = { readonly path: Path } | "train" | "gear";

export function Making() {
  const movement = useNow((s) => s.worked?.movement ?? null);
  const chosen = useNow((s) => s.chosen);
  const { choose } = useActions();
  const [shown, setShown] = useState<Shown>({ path: [] });
  const instrument = movement?.instrument ?? null;
  // Only a new choice leads away from what is open; a change of the instrument does not.
  const [led, setLed] = useState<string | null>(null);
  if (chosen !== led && instrument !== null) {
    setLed(chosen);
    const path = chosen === null ? null : pathOf(instrument, chosen);
    if (path) setShown({ path });
  }
  if (!movement || !instrument) return null;
  const show = (entry: Entry) => {
    setShown({ path: entry.path });
    const id = chosenBy(entry);
    if (id !== null) choose(id);
  };
  const added = (list: Path, after: Instrument) => {
    const all = valueAt(after, list), path = [...list, Array.isArray(all) ? all.length - 1 : 0];
    setShown({ path });
    const id = valueAt(after, [...path, "id"]);
    if (typeof id === "string" && (path[0] === "arbors" || path[0] === "frame")) choose(id);
  };
  return (
    <div className="making">
      <List instrument={instrument} shown={shown} onShow={show} onAdded={added} onOther={setShown} />
      <div className="making-form">
        {shown === "train" ? <WriteTrain instrument={instrument} /> : shown === "gear" ? <PutInGear instrument={instrument} />
          : <Shows movement={movement} path={shown.path} onAdded={added} onGone={() => setShown({ path: [] })} />}
      </div>
    </div>
  );
}

function Shows({ movement, path, onAdded, onGone }: {
  readonly movement: Movement; readonly path: Path; readonly onAdded: (list: Path, after: Instrument) => void; readonly onGone: () => void;
}) {
  const { instrument } = movement;
  const open = path.length === 0 || path.every((key, i) => typeof key !== "number" || valueAt(instrument, path.slice(0, i + 1)) !== undefined) ? path : [];
  return (
    <>
      <Heading movement={movement} path={open} onAdded={onAdded} onGone={onGone} />
      <Form key={open.join(" ")} movement={movement} path={open} shape={shapeAt(instrument, open)} />
    </>
  );
}

function List({ instrument, shown, onShow, onAdded, onOther }: {
  readonly instrument: Instrument; readonly shown: Shown; readonly onShow: (entry: Entry) => void;
  readonly onAdded: (list: Path, after: Instrument) => void; readonly onOther: (to: Shown) => void;
}) {
  const sections = useMemo(() => sectionsOf(instrument), [instrument]);
  const here = (entry: Entry) => typeof shown !== "string" && samePath(shown.path, entry.path);
  const any = sections.some((s) => s.entries.some(here));
  const keyed = (event: KeyboardEvent<HTMLElement>) => {
    const by = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (by === 0 || !(event.target instanceof HTMLElement) || !event.target.classList.contains("thing")) return;
    const all = [...event.currentTarget.querySelectorAll<HTMLElement>(".thing")], next = all[all.indexOf(event.target) + by];
    event.preventDefault();
    next?.focus();
    next?.click();
  };
  return (
    <nav className="things" aria-label="Everything in the instrument" onKeyDown={keyed}>
      <h2 className="unseen">Everything in the instrument</h2>
      {sections.map((section, k) => (
        <section key={section.title} aria-label={section.title}>
          <div className="heading">
            <h3>{section.title}</h3>
            <span className="end row"><Adders section={section} instrument={instrument} onAdded={onAdded} onOther={onOther} /></span>
          </div>
          <ul>
            {section.entries.map((entry, i) => (
              <li key={entry.path.join(" ")}>
                <button type="button" className="plain thing" data-deep={entry.deep} aria-current={here(entry) ? "true" : undefined}
                  tabIndex={here(entry) || (!any && k === 0 && i === 0) ? 0 : -1} onClick={() => onShow(entry)}>
                  {entry.id !== "" && <b>{entry.id}</b>} {entry.says}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </nav>
  );
}

function Adders({ section: { title, list }, instrument, onAdded, onOther }: {
  readonly section: Section; readonly instrument: Instrument; readonly onAdded: (list: Path, after: Instrument) => void; readonly onOther: (to: Shown) => void;
}) {
  const { store, actions: { run, set } } = useBench();
  if (list === null) return null;
  const add = (thing: unknown, what: string) => {
    if (thing === null) return set({ saying: `There is nothing yet to make ${what} of.` });
    if (run(addThing, { list, thing })) onAdded(list, store.getState().instrument ?? instrument);
  };
  const chosen = store.getState().chosen;
  const on = instrument.arbors.find((a) => a.id === chosen || a.parts.some((p) => p.id === chosen))?.id ?? null;
  if (title === "Arbors")
    return (
      <>
        <button type="button" className="plain" onClick={() => onOther("train")}>Write a train</button>
        <Menu label="Add">{ARBORS.map((kind) => (
          <button key={kind} type="button" data-closes onClick={() => add(freshArbor(instrument, kind, on), `${kind}s`)}>{kind === "arbor" ? "An arbor" : `A ${kind}`}</button>
        ))}</Menu>
      </>
    );
  if (title === "In gear") return <button type="button" className="plain" onClick={() => onOther("gear")}>Put in gear</button>;
  if (title === "Couplings")
    return <Menu label="Add a coupling">{COUPLINGS.map((kind) => (
      <button key={kind} type="button" data-closes onClick={() => add(freshIn(instrument, "couplings", kind), kind)}>{kind}</button>
    ))}</Menu>;
  return <button type="button" className="plain" onClick={() => add(freshIn(instrument, String(list.at(-1))), title.toLowerCase())}>Add<span className="unseen"> to {title.toLowerCase()}</span></button>;
}
