// Dividing: how the maker's own head gives each count of the instrument, or any count typed, with the running check and the
// opposite-tooth check; and angles.
import { useMemo, useState } from "react";
import {
  angleSettings, cannotDivideSays, countOf, decimalRatio, divide, type Head, headOf, isToothed, type Movement, nearSettings, oppositeCheck, ORDINARY_HEAD, type PlainSetting,
  runningCheck, writeRatio,
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
        <p>{angleSettings(degrees, head).slice(0, 3).map((s) => `${s.holes === 0 ? `${turnsOf(s.turns)} on the circle of ${s.circle}` : plainSays([s])}${s.errorDeg === 0 ? "" : `, ${fixed(60 * s.errorDeg, 2)}′ out`}`).join("; or ")}</p>
      )}
      <table aria-label="Counts of this instrument and how they are divided">
        <thead><tr><th className="figure">count</th><th>how</th></tr></thead>
        <tbody>{counts.map((n) => <tr key={n} className="pick" onClick={() => setTyped(String(n))}><td className="figure"><button type="button" className="plain" onClick={() => setTyped(String(n))}>{n}</button></td><td>{says(n)}</td></tr>)}</tbody>
      </table>
    </section>
  );
}

const MOST_WAYS = 6;

const turnsOf = (n: number): string => (n === 1 ? "1 turn" : `${n} turns`);
const partOf = (holes: number, circle: number): string => `${holes < 0 ? "−" : "+"} ${Math.abs(holes)} of ${circle}`;
/** "2 turns and 4 of 18, or 6 of 27", "20 of 21", "2 turns on any circle". */
function plainSays([first, ...others]: readonly PlainSetting[]): string {
  if (!first) return "";
  if (first.holes === 0) return `${turnsOf(first.turns)} on any circle`;
  return `${first.turns === 0 ? "" : `${turnsOf(first.turns)} and `}${[first, ...others].map((s) => `${s.holes} of ${s.circle}`).join(", or ")}`;
}

/** Every way, in the order in which a maker would choose: plain, compound, differential; none where the head does not give it. */
export function waysOfDividing(count: number, head: Head): string[] {
  const { plain, compound, differential } = divide(count, head);
  return [
    ...(plain.length > 0 ? [plainSays(plain)] : []),
    ...compound.map(({ turns, a, b }) => `compound: ${turns === 0 ? "" : `${turnsOf(turns)} `}${partOf(a.holes, a.circle)} ${partOf(b.holes, b.circle)}`),
    ...differential.map((d) => `differential: set for ${d.settingFor}, ${plainSays([d])}; gears ${d.gears.join(", ")} (${writeRatio(d.ratio).replace("-", "−")}), the plate ${d.ratio.s < 0n ? "against" : "with"} the crank`),
  ];
}

const howDivided = (count: number, head: Head): string => waysOfDividing(count, head)[0] ?? cannotDivideSays(count, head) ?? "";

/** One count: every way, the nearest on other circles, and the checks to tick off. */
function Card({ count, head }: { readonly count: number; readonly head: Head }) {
  const { plain } = divide(count, head), ways = waysOfDividing(count, head);
  const near = nearSettings(count, head).filter((s) => s.closesDeg !== 0).slice(0, 3);
  const setting = plain[0];
  return (
    <div className="card">
      <p><b>{count}</b>: {howDivided(count, head)}</p>
      {ways.slice(1, MOST_WAYS).map((way) => <p key={way}>or {way}</p>)}
      {ways.length > MOST_WAYS && <p className="soft">and {ways.length - MOST_WAYS} ways more</p>}
      {near.map((s) => <p key={s.circle} className="soft">near, {plainSays([s])}: {s.says}</p>)}
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
