// What a coupling gives to an arbor that nothing else drives. A coupling closes no ring and contradicts nothing: where
// both its arbors have a rate it gives none.
import { engagementId, type Coupling, type Instrument, type Sense } from "../instrument.ts";
import { signOf, ZERO, type Ratio } from "../numeric/ratio.ts";
import type { Layout } from "./layout.ts";
import { carrierBetween, type Axes, type Mesh } from "./meshes.ts";

/** A rate given, and by which arbor. */
export interface Given {
  readonly to: number;
  readonly by: number;
  readonly rate: Ratio;
}

/** A coupling in indices. */
export type Link =
  | { readonly kind: "friction"; readonly a: number; readonly b: number }
  | { readonly kind: "click"; readonly ratchet: number; readonly on: number; readonly carrier: number | null; readonly passes: -1 | 1 }
  | { readonly kind: "pin and slot"; readonly id: string; readonly driver: number; readonly driven: number; readonly encloses: boolean } & Pick<Mesh, "carrier" | "turning">;

/** `encloses` says of each coupling whether its pin's circle goes round the slot's axis. */
export function linksOf(instrument: Instrument, layout: Layout, axes: Axes, encloses: readonly boolean[]): Link[] {
  const arborOf = (part: string): number => layout.partIndex.get(part)?.arbor ?? -1;
  return (instrument.couplings ?? []).map((c: Coupling, i): Link => {
    if (c.kind === "friction") {
      return { kind: "friction", a: layout.arborIndex.get(c.between[0]) ?? -1, b: layout.arborIndex.get(c.between[1]) ?? -1 };
    }
    if (c.kind === "pin and slot") {
      const driver = arborOf(c.driver), driven = arborOf(c.driven);
      return { kind: "pin and slot", id: engagementId(c), driver, driven, encloses: encloses[i], ...carrierBetween(axes, driver, driven) };
    }
    const ratchet = arborOf(c.ratchet), on = layout.arborIndex.get(c.on) ?? -1;
    const carrier = axes.homeOf[axes.axisOf[ratchet]];
    return { kind: "click", ratchet, on: holderOf(axes, ratchet, on), carrier, passes: signed(c.passes, instrument.input.sense) };
  });
}

/** What a coupling gives as things stand, or null. A pin and slot whose axes part gives nothing. */
export function givenBy(link: Link, rate: (arbor: number) => Ratio | null, still: (arbor: number) => boolean): Given | null {
  if (link.kind === "friction") return across(link.a, link.b, rate);
  if (link.kind === "click") return heldBy(link, rate);
  const driver = rate(link.driver);
  if (driver === null || rate(link.driven) !== null || parts(link, still)) return null;
  if (link.encloses) return { to: link.driven, by: link.driver, rate: driver };
  const swings = typeof link.carrier === "number" ? rate(link.carrier) : ZERO;
  return swings === null ? null : { to: link.driven, by: link.driver, rate: swings };
}

/** Whether the axes of a pin and slot change their distance. */
export const parts = (link: Link, still: (arbor: number) => boolean): boolean =>
  link.kind === "pin and slot" && link.carrier === undefined && !link.turning.every(still);

/** A click on a stud that is carried round the ratchet's axis holds for the arbor that carries it. */
function holderOf(axes: Axes, ratchet: number, on: number): number {
  const home = axes.homeOf[axes.axisOf[on]];
  return axes.axisOf[on] !== axes.axisOf[ratchet] && home !== null && axes.axisOf[home] === axes.axisOf[ratchet] ? home : on;
}

function across(a: number, b: number, rate: (arbor: number) => Ratio | null): Given | null {
  const rateA = rate(a), rateB = rate(b);
  if ((rateA === null) === (rateB === null)) return null;
  return rateA !== null ? { to: b, by: a, rate: rateA } : { to: a, by: b, rate: rateB as Ratio };
}

/** The other of the two is taken along where, if it stood, the ratchet would turn the held way against the click. */
function heldBy(link: Extract<Link, { kind: "click" }>, rate: (arbor: number) => Ratio | null): Given | null {
  const given = across(link.ratchet, link.on, rate);
  const standing = link.carrier === null ? ZERO : rate(link.carrier);
  if (given === null || standing === null) return null;
  const turns = signOf(given.rate.sub(standing));
  const ratchetAgainstClick = given.by === link.ratchet ? turns : -turns;
  return ratchetAgainstClick === -link.passes ? given : null;
}

const signed = (sense: Sense, input: Sense): -1 | 1 => (sense === input ? 1 : -1);
