// The day book of the instrument in hand: what was done and when, the newest first, and whether it goes into the file.
import { useBench, useNow } from "../../state/hooks.ts";
import { wishedInFile } from "../../state/book.ts";
import { Choice } from "../Choice.tsx";
import { whenInWords } from "./when.ts";

/** Entries shown at once; the whole book goes into the file. */
const SHOWN = 500;

export function DayBook() {
  const { actions } = useBench();
  const book = useNow((s) => s.book);
  const inFile = useNow((s) => s.instrument?.dayBook !== undefined);
  const wish = (wished: boolean) => actions.run({
    name: "Keep the day book in the file",
    run: (instrument) => ({ instrument: wishedInFile(instrument, wished), says: wished ? "day book put in the file" : "day book left out of the file" }),
  }, null);
  return (
    <>
      <div className="row asks">
        <span>In the file</span>
        <Choice label="Day book in the file" of={["left out", "written"]} now={inFile ? "written" : "left out"} onChoose={(to) => wish(to === "written")} />
        <span className="note">It is always kept in this browser.</span>
      </div>
      {book.length === 0 ? <p>Nothing has been done yet.</p> : (
        <table>
          <thead><tr><th>when</th><th>what was done</th></tr></thead>
          <tbody>
            {book.slice(-SHOWN).reverse().map((entry, i) => <tr key={book.length - i}><td className="soft nowrap">{whenInWords(Date.parse(entry.at))}</td><td>{entry.says}</td></tr>)}
          </tbody>
        </table>
      )}
    </>
  );
}
