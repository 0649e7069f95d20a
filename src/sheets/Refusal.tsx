// A refused file: every fault with where it is, what stands there and what was expected. What was open stays.
import { useEffect, useRef, useState } from "react";
import { pickFile } from "../head/files.ts";
import { useBench } from "../state/hooks.ts";
import type { Refusal as Refused } from "../state/state.ts";
import "./refusal.css";
import { Mark } from "./Severity.tsx";

export function Refusal({ refusal }: { readonly refusal: Refused }) {
  const bench = useBench();
  const [copied, setCopied] = useState(false);
  const { file, faults } = refusal;
  const sheet = useRef<HTMLElement>(null);
  useEffect(() => sheet.current?.focus({ preventScroll: true }), [refusal]);
  const copy = async () => {
    const list = faults.map((f) => `${f.path || "the file"}: ${f.found}; expected ${f.expected}`).join("\n");
    await navigator.clipboard.writeText(`${file}\n${list}\n`);
    setCopied(true);
  };
  return (
    <section ref={sheet} className="refusal" aria-labelledby="refused" role="alert" tabIndex={-1}>
      <div className="heading"><Mark severity="foul" /><h2 id="refused">This file was refused</h2></div>
      <h3>{file}</h3>
      <p>
        It was read to the end and has <b>{faults.length === 1 ? "one fault" : `${faults.length} faults`}</b>. Nothing was taken from it,
        and what you had open is as it was.
      </p>
      <table>
        <thead><tr><th><span className="unseen">number</span></th><th>where</th><th>what stands there</th><th>what was expected</th></tr></thead>
        <tbody>
          {faults.map((fault, i) => (
            <tr key={i}>
              <td className="soft">{i + 1}</td>
              <td className="figure"><Path path={fault.path} /></td>
              <td className="figure foul">{fault.found}</td>
              <td>{fault.expected}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="row">
        <button type="button" className="strong" onClick={() => void pickFile(bench)}>Open another</button>
        <button type="button" onClick={() => void copy()}>{copied ? "Copied" : "Copy the list"}</button>
        <button type="button" onClick={bench.actions.closeRefusal}>Close</button>
      </div>
    </section>
  );
}

/** A path breaks, where it must, after its dots. */
function Path({ path }: { readonly path: string }) {
  if (path === "") return <span className="soft">the file as a whole</span>;
  return path.split(/(?<=\.)/).map((piece, i) => <span key={i}>{i > 0 && <wbr />}{piece}</span>);
}
