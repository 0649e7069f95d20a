// The instruments on the shelf of this browser: opened, named, copied, deleted, and put back.
import { type FormEvent, useState } from "react";
import { useBench, useNow } from "../../state/hooks.ts";
import { PUT_BACK_DAYS } from "../../state/keeper.ts";
import type { Held } from "../../state/shelf.ts";
import { whenInWords } from "./when.ts";
import { useShelf } from "./useShelf.ts";

export function Instruments({ onOpened }: { readonly onOpened: () => void }) {
  const { keeper } = useBench();
  const mine = useNow((s) => s.shelf);
  const { all, fault, again } = useShelf();
  const [naming, setNaming] = useState<string | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const act = async (work: Promise<string | null | void>) => {
    const refused = await work.catch(() => "The browser did not let that be done.");
    setSaid(refused ?? null);
    again();
  };
  const kept = all.filter((h) => h.deletedMs === null && (!h.passing || h.id === mine)), deleted = all.filter((h) => h.deletedMs !== null);
  const name = (id: string) => (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const to = String(new FormData(event.currentTarget).get("name") ?? "").trim();
    setNaming(null);
    if (to !== "") void act(keeper.rename(id, to));
  };
  return (
    <>
      <p className="note">Every step is kept in this browser as it is made. A file is yours to carry and to keep safe: save one now and then.</p>
      <p className="said tight" role="status">{fault ?? said}</p>
      {kept.length === 0 && <p>Nothing is kept yet. An instrument is kept from its first change on.</p>}
      <ul className="held" aria-label="Instruments kept in this browser">
        {kept.map((held) => (
          <li key={held.id} className={held.id === mine ? "here" : ""}>
            {naming === held.id ? (
              <form className="row" onSubmit={name(held.id)}>
                <label className="field named"><span className="unseen">New name</span><input name="name" defaultValue={held.name} autoFocus maxLength={200} /></label>
                <button type="submit" className="strong">Name it</button>
                <button type="button" onClick={() => setNaming(null)}>Leave it</button>
              </form>
            ) : (
              <>
                <span className="title"><i>{held.name}</i><span className="note">{stateOf(held, held.id === mine)}</span></span>
                <span className="row">
                  <button type="button" disabled={held.id === mine} onClick={() => void act(keeper.open(held.id).then(onOpened))}>
                    {held.id === mine ? "In hand" : "Open"}<span className="unseen"> {held.name}</span></button>
                  <button type="button" aria-label={`Rename ${held.name}`} onClick={() => setNaming(held.id)}>Rename</button>
                  <button type="button" aria-label={`Copy ${held.name}`} onClick={() => void act(keeper.copy(held.id))}>Copy</button>
                  <button type="button" aria-label={`Delete ${held.name}`} onClick={() => void act(keeper.remove(held.id))}>Delete</button>
                </span>
              </>
            )}
          </li>
        ))}
      </ul>
      {deleted.length > 0 && (
        <>
          <h3>Deleted</h3>
          <p className="note">Each can be put back for {PUT_BACK_DAYS} days.</p>
          <ul className="held" aria-label="Deleted instruments">
            {deleted.map((held) => (
              <li key={held.id}>
                <span className="title"><i>{held.name}</i><span className="note">deleted {whenInWords(held.deletedMs ?? 0)}</span></span>
                <span className="row">
                  <button type="button" aria-label={`Put back ${held.name}`} onClick={() => void act(keeper.putBack(held.id))}>Put back</button>
                  <button type="button" aria-label={`Delete ${held.name} for good`} onClick={() => void act(keeper.removeForGood(held.id))}>Delete for good</button>
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function stateOf({ touchedMs, file, savedAt, done, passing }: Held, here: boolean): string {
  const saved = file === null ? "in no file" : savedAt === done ? `saved as ${file}` : `changed since it was saved as ${file}`;
  if (passing) return here ? "in hand, unchanged" : "unchanged";
  return `${done === 1 ? "one step" : `${done} steps`}, last ${whenInWords(touchedMs)}; ${saved}`;
}
