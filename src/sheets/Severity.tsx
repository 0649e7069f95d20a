// The three severities, each by shape, colour and word: foul a lozenge, tight a wedge, free a disc.
import type { Severity } from "../../geometry/index.ts";

export const SHAPES: Record<Severity, string> = {
  foul: "M6 0 12 6 6 12 0 6Z",
  tight: "M12 1V12H0Z",
  free: "M6 1a5 5 0 1 0 0 10A5 5 0 1 0 6 1Z",
};

export function Mark({ severity }: { readonly severity: Severity }) {
  return <svg className={`mark ${severity}`} viewBox="0 0 12 12" aria-hidden="true"><path d={SHAPES[severity]} /></svg>;
}

export function Counts({ counts }: { readonly counts: Readonly<Record<Severity, number>> }) {
  return (
    <p className="counts" aria-live="polite">
      {(["foul", "tight", "free"] as const).map((severity) => (
        <span key={severity} className={`${severity} nowrap`}><Mark severity={severity} /> {counts[severity]} {severity}</span>
      ))}
    </p>
  );
}
