// The Dials sheet: the dials as they are drawn, turning with the crank, what each pointer reads; its error against the sky;
// setting up for a date; and making the dials.
import { useMemo, useRef, useState } from "react";
import { facesOf, type Movement, pointerOf, type SettingUp as SettingRow, type Sheet } from "../../../geometry/index.ts";
import { fixed } from "../../state/figures.ts";
import { useActions, useNow } from "../../state/hooks.ts";
import { arborOf } from "../words.tsx";
import "./dials.css";
import { DialFace, handOf, wanderDeg } from "./Face.tsx";
import { useLive, write } from "./live.ts";
import { Making } from "./Making.tsx";
import { readsAs } from "./reads.ts";
import { dateAndTime, SettingUp } from "./SettingUp.tsx";
import { Sky } from "./Sky.tsx";

export function Dials() {
  const worked = useNow((s) => s.worked);
  const chosen = useNow((s) => s.chosen);
  const [picked, setPicked] = useState<string | null>(null);
  const root = useRef<HTMLDivElement>(null);
  const movement = worked?.movement ?? null;
  const faces = useMemo(() => (movement ? facesOf(movement) : []), [movement]);
  const display = movement ? displayFor(movement, picked, arborOf(movement, chosen)) : 0;
  useLive(movement, root, (now, turns) => { if (movement) writeNow(root.current, movement, now, turns); });
  if (!worked || !movement) return null;
  if (movement.displays.length === 0) return <p className="note">This instrument has no displays yet: nothing is to be shown.</p>;
  const [main, ...others] = faces;
  return (
    <div className="dials" ref={root}>
      <div className="columns">
        <section>
          <div className="heading"><h2>{main?.name ?? "Dials"}</h2><span className="beside">turns with the crank</span>
            {main && <span className="end soft">Ø {fixed(2 * main.radiusMm, 1)} mm</span>}</div>
          {main && <div className="main-face"><DialFace movement={movement} sheet={worked.sheet} face={main} /></div>}
          {others.length > 0 && <div className="faces">{others.map((f) => <figure key={f.id}><DialFace movement={movement} sheet={worked.sheet} face={f} /><figcaption><h3>{f.name}</h3></figcaption></figure>)}</div>}
        </section>
        <Sky key={movement.displays[display]?.id ?? ""} movement={movement} display={display} />
      </div>
      <Readings movement={movement} sheet={worked.sheet} here={display} onPick={setPicked} />
      <SettingUp movement={movement} />
      <Making movement={movement} />
    </div>
  );
}

/** The one picked, else that of the chosen arbor, else the first that names something of the sky. */
function displayFor(movement: Movement, picked: string | null, arbor: string | null): number {
  const by = (is: (i: number) => boolean) => movement.displays.findIndex((_, i) => is(i));
  const own = by((i) => movement.displays[i]?.id === picked), chosen = by((i) => movement.arbors[movement.displays[i]?.arbor ?? -1]?.id === arbor);
  const sky = by((i) => movement.instrument.displays?.[i]?.shows !== undefined);
  return own >= 0 ? own : chosen >= 0 ? chosen : Math.max(0, sky);
}

/** The row for now. */
function writeNow(root: HTMLElement | null, movement: Movement, now: SettingRow | null, turns: number): void {
  if (!root || !now) return;
  write(root, '[data-now="date"]', dateAndTime(now.day));
  write(root, '[data-now="turns"]', fixed(turns, 2));
  now.pointers.forEach((p, i) => {
    write(root, `[data-now="shown ${i}"]`, readsAs(movement, i, p.part, true));
    write(root, `[data-now="true ${i}"]`, p.truePart === null ? "" : readsAs(movement, i, p.truePart, true));
  });
}

function Readings({ movement, sheet, here, onPick }: { readonly movement: Movement; readonly sheet: Sheet; readonly here: number; readonly onPick: (id: string) => void }) {
  const { choose } = useActions();
  return (
    <section>
      <div className="scroll-x" tabIndex={0} role="group" aria-label="Readings, a wide table">
        <table aria-label="Readings">
          <thead>
            <tr><th>pointer</th><th>reads</th><th className="figure">lost motion</th><th className="figure">wander</th><th className="figure">drift a year</th><th>sense</th><th className="figure">turned</th></tr>
          </thead>
          <tbody>
            {movement.displays.map((d, i) => {
              const id = movement.arbors[d.arbor]?.id ?? "", lost = sheet.displays[i]?.lostMotion ?? null, pointer = pointerOf(movement, i);
              const pick = () => { onPick(d.id); choose(id); };
              return (
                <tr key={d.id} className={`pick ${i === here ? "here" : ""}`} onClick={pick}>
                  <td><button type="button" className="plain named" onClick={(e) => { e.stopPropagation(); pick(); }}><span className={`swatch ${handOf(movement, i)}`} />{d.name}</button></td>
                  <td className="figure start" data-reading={i} />
                  <td className="figure">{lost === null ? "–" : `${fixed(lost, 2)}°`}</td>
                  <td className="figure">{pointer ? `${fixed(wanderDeg(movement, i, pointer), 2)}°` : "–"}</td>
                  <td className="figure">{d.degreesPerYear === null ? "–" : `${d.degreesPerYear === 0 ? "0" : fixed(d.degreesPerYear, 4)}°`}</td>
                  <td>{d.sense ?? "does not turn"}</td>
                  <td className="figure" data-angle={i} data-display={d.id} />
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p className="note">The pale arc at a pointer’s tip is its arc of doubt: the lost motion, drawn true; the thin line beyond it adds the wander of its tip.</p>
    </section>
  );
}
