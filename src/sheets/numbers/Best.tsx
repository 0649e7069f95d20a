// The best fractions without cutting in mind: convergents, each with how near it is and the prime that is in the way; and
// the path of mediants to the wanted ratio for those who think that way; and what stands near it that can be cut.
import { useMemo } from "react";
import { continuedFraction, convergents, inTheWay, mediantPath, standNear, toNumber, writeRatio } from "../../../geometry/index.ts";
import { read } from "../../workers/numbering.ts";
import { oneIn } from "./words.ts";

const MOST_CONVERGENTS = 7, MOST_STEPS = 24, MOST_QUOTIENTS = 10;

/** A period is shown as days over turns, as makers say it. */
export function Best({ wanted, period, largest, fromDays }: { readonly wanted: string; readonly period: boolean; readonly largest: number; readonly fromDays: number }) {
  const day = fromDays === 1;
  const value = useMemo(() => (period && day ? read(wanted).inverse() : read(wanted)), [wanted, period, day]);
  const best = useMemo(() => convergents(continuedFraction(value, 40)).filter((c) => c.n !== 0n).map((c) => {
    const error = toNumber(c.div(value)) - 1;
    return { text: writeRatio(c), error, exact: c.equals(value), way: largest > 0 ? inTheWay(c, largest) : null, size: c.d };
  }).filter((c) => c.size > 1n || c.exact).slice(0, MOST_CONVERGENTS), [value, largest]);
  const quotients = useMemo(() => continuedFraction(value, MOST_QUOTIENTS + 1).map(String), [value]);
  const path = useMemo(() => mediantPath(value, MOST_STEPS), [value]);
  const near = useMemo(() => (largest >= 2 ? standNear(value, largest, 6) : []), [value, largest]);
  return (
    <div className="best">
      <h3 id="best">Best fractions, without cutting in mind</h3>
      <p className="figure quotients">[{quotients[0]}{quotients.length > 1 ? `; ${quotients.slice(1, MOST_QUOTIENTS).join(", ")}` : ""}{quotients.length > MOST_QUOTIENTS ? ", …" : ""}]</p>
      <table aria-labelledby="best">
        <thead className="unseen"><tr><th>fraction</th><th>how near</th><th>what is in the way</th></tr></thead>
        <tbody>{best.map((c) => (
          <tr key={c.text}>
            <td className="figure start">{c.text}</td>
            <td>{nearSays(c.exact ? 0 : c.error)}</td>
            <td className="soft">{c.way === null ? "can be cut" : `${c.way} ${c.way === largestPrimeOf(c.text) ? "is prime" : "is in the way"}`}</td>
          </tr>
        ))}</tbody>
      </table>
      <details>
        <summary>Near it, with no prime over {largest}</summary>
        <table aria-label="Ratios that can be cut">
          <tbody>{near.map((n) => (
            <tr key={writeRatio(n.ratio)}><td className="figure start">{writeRatio(n.ratio)}</td><td>{nearSays(n.error)}</td>
              <td className="soft">{n.factors.map((f) => f.join(".") || "1").join(" over ")}</td></tr>
          ))}</tbody>
        </table>
      </details>
      <details>
        <summary>The path of mediants</summary>
        <table aria-label="Mediants on the way">
          <thead><tr><th>mediant</th><th>error</th><th>goes</th></tr></thead>
          <tbody>{path.map((s) => (
            <tr key={writeRatio(s.ratio)}><td className="figure start">{writeRatio(s.ratio)}</td><td className="nowrap">{nearSays(toNumber(s.ratio.sub(value).div(value)))}</td><td>{s.turn}</td></tr>
          ))}</tbody>
        </table>
        {path.at(-1)?.turn !== "met" && <p className="note">It goes on beyond {MOST_STEPS} steps.</p>}
      </details>
    </div>
  );
}

const nearSays = (error: number): string => (error === 0 ? "exact" : `${error < 0 ? "short" : "long"} ${oneIn(error)}`);

/** The term itself, where a term of the fraction is what is in the way. */
function largestPrimeOf(text: string): bigint {
  const terms = text.split("/").map(BigInt);
  const value = terms.reduce((a, b) => (b > a ? b : a), 0n);
  return inTheWay(read(value.toString()), 2) ?? value;
}
