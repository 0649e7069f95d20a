// Every engagement as an equation of rates. Two wheels turn against the arbor k on which both their axes stand still
// (none: the frame): (rate a − rate k) × teeth a = ∓ (rate b − rate k) × teeth b, plus for an annulus (Willis).
// Which axes are one axis is said from outside, as whole numbers, so that nothing here is measured.
import { countOf, type Instrument, type ToothedPart } from "../instrument.ts";
import type { Layout } from "./layout.ts";
import type { Row } from "./solve.ts";

export interface Axes {
  /** The axis each arbor turns about; arbors that stand in line have the same. */
  readonly axisOf: readonly number[];
  /** By axis: the arbor that carries it round, or null: it stands still in the frame. */
  readonly homeOf: readonly (number | null)[];
}

export interface Mesh {
  /** Index of the engagement. */
  readonly engagement: number;
  readonly a: number;
  readonly b: number;
  readonly teethA: number;
  /** Below 0 where the two turn against one another; above 0 with an annulus. */
  readonly teethB: number;
  /** Where both axes stand still; undefined: nowhere, if any of `turning` turns. */
  readonly carrier: number | null | undefined;
  /** The arbors whose turning would change the distance. */
  readonly turning: readonly number[];
}

export function meshesOf(instrument: Instrument, layout: Layout, axes: Axes): Mesh[] {
  return instrument.engagements.map((e, engagement) => {
    const driver = layout.partIndex.get(e.driver), driven = layout.partIndex.get(e.driven);
    if (driver === undefined || driven === undefined) throw new Error(`engagement of an unknown part: ${e.driver}, ${e.driven}`);
    const one = instrument.arbors[driver.arbor].parts[driver.part] as ToothedPart;
    const other = instrument.arbors[driven.arbor].parts[driven.part] as ToothedPart;
    const inside = isAnnulus(one) || isAnnulus(other);
    const between = carrierBetween(axes, driver.arbor, driven.arbor);
    return {
      engagement, a: driver.arbor, b: driven.arbor,
      teethA: countOf(one), teethB: inside ? countOf(other) : -countOf(other), ...between,
    };
  });
}

/** Where two arbors' axes both stand still, or else the arbors whose turning moves them apart. */
export function carrierBetween(axes: Axes, a: number, b: number): Pick<Mesh, "carrier" | "turning"> {
  const { axisOf, homeOf } = axes;
  const homeA = homeOf[axisOf[a]], homeB = homeOf[axisOf[b]];
  if (homeA === homeB) return { carrier: homeA, turning: [] };
  if (homeA !== null && axisOf[homeA] === axisOf[b]) return { carrier: homeA, turning: [] };
  if (homeB !== null && axisOf[homeB] === axisOf[a]) return { carrier: homeB, turning: [] };
  return { carrier: undefined, turning: [...homesAbove(axes, homeA), ...homesAbove(axes, homeB)] };
}

/** (rate a − rate k) teethA − (rate b − rate k) teethB = 0, the same arbor never twice. */
export function rowOf(mesh: Mesh, carrier: number | null): Row {
  const terms = new Map<number, number>([[mesh.a, mesh.teethA]]);
  const add = (v: number, c: number) => terms.set(v, (terms.get(v) ?? 0) + c);
  add(mesh.b, -mesh.teethB);
  if (carrier !== null) add(carrier, mesh.teethB - mesh.teethA);
  const vars = [...terms.keys()].filter((v) => terms.get(v) !== 0);
  return { vars, coefs: vars.map((v) => terms.get(v) as number), engagement: mesh.engagement };
}

function homesAbove(axes: Axes, home: number | null): number[] {
  const homes: number[] = [];
  for (let h = home; h !== null && !homes.includes(h); h = axes.homeOf[axes.axisOf[h]]) homes.push(h);
  return homes;
}

const isAnnulus = (part: ToothedPart): boolean => part.kind !== "lantern" && part.internal === true;
