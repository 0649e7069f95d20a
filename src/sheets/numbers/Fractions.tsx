// A train written as a maker writes it, in any of three ways: wheels over pinions one after another, in two lines, or in
// columns with the quotients multiplied down. Screen readers hear "49 over 23".
export type Writing = "fractions" | "two lines" | "columns";
export const WRITINGS: readonly Writing[] = ["fractions", "two lines", "columns"];
export const WRITING_WORDS: Readonly<Record<Writing, string>> = { "fractions": "Fractions", "two lines": "Two lines", "columns": "Columns" };

/** Driven over driver: turns of the crank for one turn grow by it. */
export interface Over { readonly over: number; readonly under: number }

export function Train({ of, way, from = null }: { readonly of: readonly Over[]; readonly way: Writing; readonly from?: string | null }) {
  if (of.length === 0) return <>{from ?? "—"}</>;
  const lead = from === null ? null : <span className="lead">{from}</span>;
  if (way === "columns") return <Columns of={of} lead={lead} />;
  if (way === "two lines") return (
    <span className="nowrap">{lead}
      <span className="fraction lines"><span>{of.map((f) => f.over).join(" ")}</span><span className="unseen"> over </span><span>{of.map((f) => f.under).join(" ")}</span></span>
    </span>
  );
  return (
    <span className="nowrap">{lead}{of.map((f, i) => (
      <span key={i}>
        {i > 0 && <span className="times">×</span>}
        <span className="fraction"><span>{f.over}</span><span className="unseen"> over </span><span>{f.under}</span></span>
      </span>
    ))}</span>
  );
}

/** One line a mesh: pinion ) wheel ( quotient, the quotients multiplied down. */
function Columns({ of, lead }: { readonly of: readonly Over[]; readonly lead: React.ReactNode }) {
  const turns = of.map((_, i) => of.slice(0, i + 1).reduce((t, f) => (t * f.over) / f.under, 1));
  return (
    <span className="columns">{lead}{of.map((f, i) => (
      <span key={i} className="figure">{f.under} ) {f.over} ( {(f.over / f.under).toFixed(4)} <span className="soft">{(turns[i] ?? 1).toFixed(4)}</span></span>
    ))}</span>
  );
}
