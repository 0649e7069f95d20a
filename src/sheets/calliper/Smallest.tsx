// The smallest gap in plan of the whole calliper, always named and figured.
import { useDeferredValue, useMemo } from "react";
import { type Movement, type SmallestGap, smallestGap } from "../../../geometry/index.ts";
import { length, unitName } from "../../state/figures.ts";
import { useNow } from "../../state/hooks.ts";
import { Mark } from "../Severity.tsx";
import { thingInWords } from "../words.tsx";

/** Worked out behind the hand, while it is wanted. */
export function useSmallest(movement: Movement | null): SmallestGap | null {
  const behind = useDeferredValue(movement);
  return useMemo(() => (behind === null ? null : smallestGap(behind)), [behind]);
}

export function Smallest({ movement, least }: { readonly movement: Movement; readonly least: SmallestGap | null }) {
  const units = useNow((s) => s.units);
  if (!least) return <p className="smallest"><b>Smallest gap</b> <span className="note">no two things share a height</span></p>;
  const named = (id: string) => { const { kind } = thingInWords(movement, id); return id === "case" ? kind : `${kind} ${id}`; };
  return (
    <p className="smallest">
      <b>Smallest gap</b> <span className={`nowrap ${least.severity}`}><Mark severity={least.severity} /> {named(least.between[0])} and {named(least.between[1])}</span>
      <span className="figure">{length(least.gap, units)} {unitName(units)}</span>
      <span className="note">at worst {length(least.worst, units)}, wanted {length(least.wanted, units)}</span>
    </p>
  );
}
