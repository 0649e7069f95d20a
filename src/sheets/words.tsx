// How things and findings are named on the sheets. A finding's own sentence comes from the kernel; here ids are set
// bold, and a gap is named by its two things and the way that decides.
import { Fragment, type ReactNode } from "react";
import { type Finding, type Movement, countOf, isToothed, type Part } from "../../geometry/index.ts";

/** "wheel D1", "arbor G", "pipe E", "pillar P3", "back plate", "the case": the kind, and its id where it has one to show. */
export function thingInWords(movement: Movement, id: string): { readonly kind: string; readonly id: string } {
  if (id === "case") return { kind: "the case", id: "" };
  const part = partOf(movement, id);
  if (part) return { kind: part.kind, id };
  const at = movement.arborIndex.get(id);
  const arbor = at === undefined ? undefined : movement.arbors[at]?.arbor;
  if (arbor) return { kind: arbor.rides?.radius === 0 ? "pipe" : arbor.fixed ? "post" : "arbor", id };
  if (movement.instrument.frame.pillars.some((p) => p.id === id)) return { kind: "pillar", id };
  if (movement.instrument.frame.plates.some((p) => p.id === id)) return { kind: "plate", id };
  return { kind: "engagement", id };
}

export const partOf = (movement: Movement, id: string): Part | undefined => {
  const at = movement.partIndex.get(id);
  return at && movement.arbors[at.arbor]?.arbor.parts[at.part];
};

/** The arbor a thing is, or stands on. */
export function arborOf(movement: Movement, id: string | null): string | null {
  if (id === null) return null;
  const at = movement.arborIndex.get(id) ?? movement.partIndex.get(id)?.arbor;
  return at === undefined ? null : movement.arbors[at]?.id ?? null;
}

/** What a finding is about, with its ids bold. */
export function FindingTitle({ movement, finding, short }: {
  readonly movement: Movement; readonly finding: Finding; readonly short: boolean;
}): ReactNode {
  const [a, b] = finding.between;
  if (finding.code !== "gap" || a === undefined || b === undefined) return <WithIds text={finding.says} ids={finding.between} />;
  return (
    <>
      <Thing {...thingInWords(movement, a)} first /> and <Thing {...thingInWords(movement, b)} />
      {!short && finding.way ? `, in ${finding.way}` : ""}
    </>
  );
}

function Thing({ kind, id, first = false }: { readonly kind: string; readonly id: string; readonly first?: boolean }) {
  const word = first ? kind.charAt(0).toUpperCase() + kind.slice(1) : kind;
  return id === "" ? <b>{word}</b> : <>{word} <b>{id}</b></>;
}

/** A sentence in which every one of these ids that stands as a word of its own is bold. */
export function WithIds({ text, ids }: { readonly text: string; readonly ids: readonly string[] }): ReactNode {
  if (ids.length === 0) return text;
  const wanted = [...ids].sort((a, b) => b.length - a.length).map((id) => id.replace(/[.\-]/g, "\\$&"));
  const pieces = text.split(new RegExp(`(?<![A-Za-z0-9_.-])(${wanted.join("|")})(?![A-Za-z0-9_-])`));
  return pieces.map((piece, i) => (i % 2 === 1 ? <b key={i}>{piece}</b> : <Fragment key={i}>{piece}</Fragment>));
}

/** Teeth of an engaged pair as a maker writes them: "48 : 24". */
export function pairCounts(movement: Movement, driver: string, driven: string): string {
  return [driver, driven].map((id) => {
    const part = partOf(movement, id);
    return part && isToothed(part) ? countOf(part) : "–";
  }).join(" : ");
}
