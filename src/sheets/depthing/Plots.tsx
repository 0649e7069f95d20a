// How the driven runs ahead and behind over one pitch, and how much free arc there is round the whole cycle of the pair.
import type { Cycle, Standing } from "../../../geometry/index.ts";
import { fixed, length, unitName } from "../../state/figures.ts";
import type { Units } from "../../state/state.ts";
import type { Depthed } from "../../workers/depthing.ts";
import { type Curve, Plot } from "./Plot.tsx";

/** Arcminutes within which a pair is steady to the eye and to the hand. */
const STEADY_ARCMIN = 0.005;
const ARCMIN = (180 * 60) / Math.PI;

interface Led { readonly at: string; readonly points: readonly (readonly [number, number])[]; readonly least: number; readonly most: number }

/** From half a pitch before the line of centres to half a pitch after it. */
function leadOf({ contact, pair }: Standing, units: Units): Led | null {
  if (!contact) return null;
  const n = contact.phases, half = n >> 1;
  const points = Array.from({ length: n + 1 }, (_, i) => [(i - half) / n, (contact.leadRad[(i - half + n) % n] ?? 0) * ARCMIN] as const);
  const leads = points.map((p) => p[1]);
  return { at: length(pair.distanceMm, units, "distance"), points, least: Math.min(...leads), most: Math.max(...leads) };
}

const inWords = ({ least, most }: Led): string => (most - least < STEADY_ARCMIN ? "steady" : `${fixed(least, 2)} to ${fixed(most, 2)}`);

export function LeadPlot({ stands, computed, units }: { readonly stands: Standing; readonly computed: Standing | null; readonly units: Units }) {
  const now = leadOf(stands, units), there = computed && computed.pair.distanceMm.toFixed(3) !== stands.pair.distanceMm.toFixed(3) ? leadOf(computed, units) : null;
  const title = `Lead and lag of ${stands.pair.driven.id}`;
  if (!now) return <Nothing title={title} says="The teeth do not meet here, so there is no rate." />;
  const curves: Curve[] = [{ kind: "stands", points: now.points, says: `at ${now.at}, ${inWords(now)}` }];
  if (there) curves.push({ kind: "computed", points: there.points, says: `at ${there.at}, ${inWords(there)}` });
  const every = Math.max(1, Math.floor((now.points.length - 1) / 12));
  const rows = now.points.flatMap(([at, lead], i) => (i % every === 0 ? [[fixed(at, 2), fixed(lead, 3), ...(there ? [fixed(there.points[i]?.[1] ?? 0, 3)] : [])]] : []));
  return (
    <Plot title={title} beside="arcminutes, one pitch" along="pitches from the line of centres" range={[-0.5, 0.5]} atLeast={[-0.02, 0.02]} curves={curves}
      says={`${title}, in arcminutes over one pitch: ${curves.map((c) => c.says).join("; ")}.`}
      table={{ heads: ["pitches", `at ${now.at}`, ...(there ? [`computed, ${there.at}`] : [])], rows }} />
  );
}

export function CyclePlot({ heard, driver, leaves, units, behind }: {
  readonly heard: Depthed | null; readonly driver: string; readonly leaves: number; readonly units: Units; readonly behind: boolean;
}) {
  const title = "Free arc", cycle = heard?.cycle ?? null;
  if (!cycle) return <Nothing title={title} says={heard ? "At the run-outs of this pair there is no free arc everywhere." : "Being worked out."} />;
  const turns = cycle.teeth / leaves, inch = units === "inch" ? 25.4 : 1, written = (mm: number) => length(mm, units, "distance");
  const points = Array.from(cycle.freeArcMm, (mm, i) => [(i / cycle.freeArcMm.length) * turns, mm / inch] as const);
  const wanted = heard?.wanted;
  return (
    <Plot title={title} beside={`${unitName(units)}, with both run-outs`} along={`turns of ${driver}, one whole cycle`} range={[0, turns]} behind={behind}
      atLeast={spanWith(cycle, wanted ?? null).map((mm) => mm / inch) as [number, number]} curves={[{ kind: "stands", points, says: `${written(cycle.tightest)} to ${written(cycle.slackest)}` }]}
      {...(wanted ? { band: { from: wanted[0] / inch, to: wanted[1] / inch, says: `wanted, ${written(wanted[0])} to ${written(wanted[1])}` } } : {})}
      says={`${title}, in ${unitName(units)} over ${turns} turns of ${driver}: ${written(cycle.tightest)} to ${written(cycle.slackest)}.`} table={tableOf(cycle, turns, driver, written)} />
  );
}

/** The free arcs, with the nearer limit of what is wanted where they lie outside it. */
function spanWith({ tightest, slackest }: Cycle, wanted: readonly [number, number] | null): readonly [number, number] {
  if (!wanted) return [tightest, slackest];
  return [Math.min(tightest, wanted[1]), Math.max(slackest, wanted[0])];
}

/** Rows of the table of a cycle: few enough to be read, evenly spread. */
const ROWS = 24;

function tableOf(cycle: Cycle, turns: number, driver: string, written: (mm: number) => string) {
  const n = cycle.freeArcMm.length, rows = Math.min(ROWS, n);
  return {
    heads: [`turns of ${driver}`, "free arc"],
    rows: Array.from({ length: rows }, (_, r) => {
      const i = Math.floor((r * n) / rows);
      return [fixed((i / n) * turns, 2), written(cycle.freeArcMm[i] ?? 0)];
    }),
  };
}

/** How the two are best put together, and what the worst way would give. */
export function assemblyInWords({ best, worst }: Cycle, units: Units): string {
  const how = best === 0 ? "Best put together high place against high place" : `Best put together with the driven ${best} ${best === 1 ? "space" : "spaces"} on from high place against high place`;
  return `${how}; put together at the worst the free arc would be ${length(worst.tightest, units, "distance")} to ${length(worst.slackest, units, "distance")}.`;
}

function Nothing({ title, says }: { readonly title: string; readonly says: string }) {
  return <figure className="plot"><figcaption><h3>{title}</h3></figcaption><p className="note">{says}</p></figure>;
}
