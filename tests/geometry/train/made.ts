// Short ways to write the instruments of these tests.
import type { Arbor, Coupling, Display, Engagement, Instrument, Part, Rides, Sense } from "../../../geometry/instrument.ts";

/** A wheel named after its arbor; `more` adds fields. */
export const wheel = (id: string, teeth: number, more: Partial<Extract<Part, { kind: "wheel" }>> = {}): Part =>
  ({ kind: "wheel", id, z: 0, thickness: 2, teeth, ...more });
export const pin = (id: string, radius: number): Part => ({ kind: "pin", id, z: 0, thickness: 4, radius, angle: 0, diameter: 1 });
export const slot = (id: string): Part =>
  ({ kind: "slot", id, z: 2, thickness: 2, diameter: 60, radius: 10, angle: 0, length: 30, width: 1.1 });
export const ratchet = (id: string): Part => ({ kind: "ratchet", id, z: 5, thickness: 2, teeth: 24, diameter: 20, depth: 1 });

export const arbor = (id: string, parts: readonly Part[], more: Partial<Arbor> = {}): Arbor =>
  ({ id, diameter: 3, foot: 0, head: 30, parts, ...more });
export const pipeOn = (on: string): { rides: Rides } => ({ rides: { on, radius: 0, angle: 0 } });
export const studOn = (on: string, radius: number, angle = 0): { rides: Rides } => ({ rides: { on, radius, angle } });

export const gear = (driver: string, driven: string, more: Partial<Engagement> = {}): Engagement => ({ driver, driven, ...more });

export interface Extras {
  readonly input?: string;
  readonly days?: number;
  readonly sense?: Sense;
  readonly couplings?: readonly Coupling[];
  readonly displays?: readonly Display[];
}

export const instrument = (arbors: readonly Arbor[], engagements: readonly Engagement[], extras: Extras = {}): Instrument => ({
  endshake: 1, name: "made for a test", frame: { plates: [], pillars: [] }, arbors, engagements,
  input: { arbor: extras.input ?? arbors[0].id, days: extras.days ?? 1, sense: extras.sense ?? "clockwise" },
  ...(extras.couplings && { couplings: extras.couplings }), ...(extras.displays && { displays: extras.displays }),
});
