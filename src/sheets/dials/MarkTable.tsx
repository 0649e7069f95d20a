// The uneven marks of a ring as a block of text to type or paste into, a line a mark, each line checked as it is typed; or
// written out from a law, to be changed from there.
import { useEffect, useId, useState } from "react";
import { type DialRing, marksBy } from "../../../geometry/index.ts";
import { type Marks, readMarks, writtenMarks } from "./marks.ts";

const MOST_FAULTS = 6;

export function MarkTable({ ring, name, onKeep }: { readonly ring: DialRing; readonly name: string; readonly onKeep: (marks: Marks | undefined) => void }) {
  const stands = writtenMarks(ring.marks ?? []);
  const [text, setText] = useState(stands), id = useId();
  useEffect(() => setText(stands), [stands]);
  const { marks, faults } = readMarks(text), law = ring.follows;
  const written = () => { if (law) setText(writtenMarks(marksBy(law).map(({ at, label }) => ({ at: at * 360, ...(label === undefined ? {} : { label }) })))); };
  return (
    <details className="mark-table">
      <summary>{ring.marks ? `A table of ${ring.marks.length} marks` : "Marks from a table"}</summary>
      <p className="note">A line a mark: degrees from the 0 mark, then what is written there. Lines of three are a value, its degrees and what is written. Without words it is a short mark.</p>
      <textarea rows={8} spellCheck={false} aria-label={`Table of marks of ${name}`} aria-invalid={faults.length > 0} aria-describedby={id} value={text} onChange={(e) => setText(e.target.value)} />
      <p id={id} role="status" className={faults.length > 0 ? "foul" : "note"}>
        {faults.length > 0 ? `${faults.slice(0, MOST_FAULTS).join(" ")}${faults.length > MOST_FAULTS ? ` And ${faults.length - MOST_FAULTS} more.` : ""}` : says(marks)}
      </p>
      <div className="row">
        <button type="button" disabled={faults.length > 0 || marks.length === 0 || text === stands} onClick={() => onKeep(marks)}>Keep these marks</button>
        {text !== stands && <button type="button" onClick={() => setText(stands)}>Put back</button>}
        {law !== undefined && ring.marks === undefined && <button type="button" onClick={written}>Write out {law}</button>}
        {ring.marks && <button type="button" onClick={() => onKeep(undefined)}>Take the table away</button>}
      </div>
    </details>
  );
}

function says(marks: Marks): string {
  const [first] = marks, named = marks.filter((m) => m.label !== undefined).length;
  if (!first) return "No marks yet.";
  return `${marks.length === 1 ? "One mark" : `${marks.length} marks`}, ${named} with words; the first at ${first.at}°${first.label === undefined ? "" : `, “${first.label}”`}.`;
}
