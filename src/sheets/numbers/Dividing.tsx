// Dividing: how the maker's own head gives each count of the instrument, or any count typed, with the running check and the
// opposite-tooth check; and angles.
import { useMemo, useState } from "react";
import {
  angleSettings, cannotDivideSays, countOf, decimalRatio, divide, headOf, isToothed, type Movement, nearSettings, oppositeCheck, ORDINARY_HEAD, runningCheck, writeRatio,
} from "../../../geometry/index.ts";
import { fixed } from "../../state/figures.ts";

export function Dividing({ movement }: { readonly movement: Movement }) {
  const [typed, setTyped] = useState("");
  const [angle, setAngle] = useState("");
  const { division } = movement.instrument;
  const head = useMemo(() => (division ? headOf(division) : ORDINARY_HEAD), [division]);
  const counts = useMemo(() => [...new Set(movement.arbors.flatMap((a) => a.arbor.parts.flatMap((p) =>
    (isToothed(p) ? [countOf(p)] : p.kind === "ratchet" ? [p.teeth] : []))))].sort((a, b) => a - b), [movement]);
  const count = /^\d{1,4}$/.test(typed) && Number(typed) >= 2 ? Number(typed) : null;
  const says = (n: number) => howDivided(n, head);
  const degrees = /^\d{1,3}(\.\d{1,6})?$/.test(angle) ? decimalRatio(angle) : null;
  return (
    <section>
      <div className="heading ruled"><h2>Dividing</h2><span className="beside">{division ? `the maker’s head, ${head.ratio} to 1` : `an ordinary head, ${head.ratio} to 1`}</span>
        <span className="end row">
          <label className="field"><span className="soft">count</span><input style={{ width: "5ch" }} value={typed} onChange={(e) => setTyped(e.target.value)} /></label>
          <label className="field"><span className="soft">angle</span><input style={{ width: "7ch" }} value={angle} onChange={(e) => setAngle(e.target.value)} /><span className="soft">°</span></label>
        </span>
      </div>
      {count !== null && <Card count={count} head={head} />}
      {degrees && (
        <p>{angleSettings(degrees, head).slice(0, 3).map((s) => `${s.turns} turns and ${s.holes} of ${s.circle}${s.errorDeg === 0 ? "" : `, ${fixed(60 * s.errorDeg, 2)}′ out`}`).join("; or ")}</p>
      )}
      <table aria-label="Counts of this instrument and how they are divided">
        <thead><tr><th className="figure">count</th><th>how</th></tr></thead>
        <tbody>{counts.map((n) => <tr key={n} className="pick" onClick={() => setTyped(String(n))}><td className="figure"><button type="button" className="plain" onClick={() => setTyped(String(n))}>{n}</button></td><td>{says(n)}</td></tr>)}</tbody>
      </table>
    </section>
  );
}

function howDivided(count: number, head: typeof ORDINARY_HEAD): string {
  const { plain, compound, differential } = divide(count, head);
  const part = (holes: number, circle: number) => `${holes < 0 ? "−" : "+"} ${Math.abs(holes)} of ${circle}`;
  if (plain[0]) return `${plain[0].turns} turns and ${plain.map((s) => `${s.holes} of ${s.circle}`).join(", or ")}`;
  if (compound[0]) return `compound: ${compound[0].turns} turns ${part(compound[0].a.holes, compound[0].a.circle)} ${part(compound[0].b.holes, compound[0].b.circle)}`;
  const [d] = differential;
  if (d) return `differential: set for ${d.settingFor}, ${d.turns} turns and ${d.holes} of ${d.circle}; gears ${d.gears.join(", ")} (${writeRatio(d.ratio).replace("-", "−")}), the plate ${d.ratio.s < 0n ? "against" : "with"} the crank`;
  return cannotDivideSays(count, head) ?? "";
}

/** One count: every way, the nearest on other circles, and the checks to tick off. */
function Card({ count, head }: { readonly count: number; readonly head: typeof ORDINARY_HEAD }) {
  const { plain } = divide(count, head);
  const near = nearSettings(count, head).filter((s) => s.closesDeg !== 0).slice(0, 3);
  const setting = plain[0];
  return (
    <div className="card">
      <p><b>{count}</b>: {howDivided(count, head)}</p>
      {near.map((s) => <p key={s.circle} className="soft">near, {s.turns} turns and {s.holes} of {s.circle}: {s.says}</p>)}
      {setting && (
        <>
          <p>{oppositeCheck(count, setting).says} There the crank has made {oppositeCheck(count, setting).turns} turns and {oppositeCheck(count, setting).hole} holes.</p>
          <div className="scroll-x"><table aria-label={`Running check for ${count} on the ${setting.circle} circle`}>
            <thead><tr><th>tooth</th>{runningCheck(count, setting, head.ratio).map((c) => <th key={c.tooth} className="figure">{c.tooth}</th>)}</tr></thead>
            <tbody><tr><td>turns and holes of {setting.circle}</td>{runningCheck(count, setting, head.ratio).map((c) => <td key={c.tooth} className="figure">{c.turns} + {c.hole}</td>)}</tr></tbody>
          </table></div>
        </>
      )}
    </div>
  );
}
