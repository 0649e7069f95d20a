// The order of findings: fouls, then what is tight, then what is free; inside by how much is missing (what has no figure
// first), then by code, then by ids, so that one instrument always gives one order.
import { graver } from "../clearance/severity.ts";
import type { Finding } from "../finding.ts";

export function gravestFirst(a: Finding, b: Finding): number {
  return graver(b.severity, a.severity)
    || compare(spareOf(a), spareOf(b))
    || compare(a.code, b.code)
    || compare(a.between.join(" "), b.between.join(" "));
}

/** mm beyond what is wanted; nothing to spare at all where a finding has no figure. */
function spareOf({ worst, gap, wanted }: Finding): number {
  const stands = worst ?? gap;
  return stands === undefined || wanted === undefined ? -Infinity : stands - wanted;
}

const compare = <T extends number | string>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0);
