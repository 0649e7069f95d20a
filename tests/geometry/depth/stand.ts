// A bare test stand: arbors at given places in one movement, nothing worked out but what depth and its findings read.
import { type Arbor, type Engagement, engagementId, type Instrument, isToothed, type Part, practiceOf, type Practice } from "../../../geometry/instrument.ts";
import type { Movement, WorkedArbor } from "../../../geometry/movement.ts";
import { ONE, type Ratio } from "../../../geometry/numeric/ratio.ts";
import { teethOf } from "../../../geometry/teeth/toothing.ts";
import { workingDistance } from "../../../geometry/teeth/forms.ts";

export type Given = Partial<Omit<Arbor, "parts">> & { readonly id: string; readonly x: number; readonly y: number; readonly parts: readonly Part[] };

export const wheel = (id: string, teeth: number, more: object = {}): Part =>
  ({ id, kind: "wheel", z: 2, thickness: 2, teeth, ...more }) as Part;
export const pinion = (id: string, leaves: number, more: object = {}): Part =>
  ({ id, kind: "pinion", z: 1, thickness: 5, leaves, ...more }) as Part;
export const lantern = (id: string, trundles: number, trundleDiameter: number, more: object = {}): Part =>
  ({ id, kind: "lantern", z: 1, thickness: 5, trundles, trundleDiameter, ...more }) as Part;

export interface Stand {
  readonly arbors: readonly Given[];
  readonly engagements: readonly Engagement[];
  readonly practice?: Partial<Practice>;
  readonly gearing?: Instrument["gearing"];
  readonly carriers?: Readonly<Record<string, string>>;
  readonly rates?: Readonly<Record<string, Ratio>>;
  /** Arbor and, where the dial turns, the arbor it is read against. */
  readonly displays?: readonly (readonly [string, string?])[];
  readonly couplings?: Instrument["couplings"];
  /** The carrier of every engagement of carried arbors. */
  readonly carrier?: string;
}

/** Two parts on two arbors, `distance` mm apart (the computed distance where none is given). */
export function pairStand(driver: Part, driven: Part, distance?: number, practice: Partial<Practice> = {}, engagement: Partial<Engagement> = {}): Movement {
  const at = (x: number): Stand => ({
    arbors: [{ id: "A", x: 0, y: 0, parts: [driver] }, { id: "B", x, y: 0, parts: [driven] }],
    engagements: [{ driver: driver.id, driven: driven.id, ...engagement }], practice,
  });
  return stand(at(distance ?? stand(at(1)).engagements[0].computed ?? 1));
}

export function stand({ arbors, engagements, practice, gearing, carriers = {}, rates = {}, displays = [], couplings = [], carrier }: Stand): Movement {
  const instrument: Instrument = {
    endshake: 1, name: "test stand", frame: { plates: [], pillars: [] }, engagements, couplings,
    arbors: arbors.map((a) => ({ diameter: 2, foot: 0, head: 20, ...a })),
    input: { arbor: arbors[0].id, days: 1, sense: "clockwise" },
    ...(practice ? { practice } : {}), ...(gearing ? { gearing } : {}),
  };
  const worked = practiceOf(instrument);
  const arborIndex = new Map(arbors.map((a, i) => [a.id, i]));
  const partIndex = new Map(arbors.flatMap((a, arbor) => a.parts.map((p, part) => [p.id, { arbor, part }] as const)));
  const teeth = teethOf(instrument);
  const chainOf = (id: string): number[] => {
    const on = instrument.arbors[arborIndex.get(id) ?? 0].rides?.on;
    return on === undefined ? [] : [arborIndex.get(on) ?? 0, ...chainOf(on)];
  };
  const workedArbors = instrument.arbors.map((arbor): WorkedArbor => {
    const endshake = (arbor.endshake ?? worked.endshake) / 2, onFrame = arbor.fixed === true && !arbor.rides;
    return {
      id: arbor.id, arbor, x: arbor.x ?? 0, y: arbor.y ?? 0, planted: "file", rate: rates[arbor.id] ?? ONE, bound: false,
      ownShake: onFrame ? { up: 0, down: 0 } : { up: endshake, down: endshake }, shake: { up: 0, down: 0 },
      ownSideshake: onFrame ? 0 : arbor.sideshake ?? worked.sideshake, chain: chainOf(arbor.id),
      carrier: arborIndex.get(carriers[arbor.id] ?? "") ?? null, onFrame,
    };
  });
  const partOf = (id: string) => {
    const at = partIndex.get(id) ?? { arbor: 0, part: 0 };
    const part = instrument.arbors[at.arbor].parts[at.part];
    if (!isToothed(part)) throw new Error(`${id} has no teeth`);
    return { part, arbor: at.arbor };
  };
  return {
    instrument, practice: worked, arbors: workedArbors, binds: [], arborIndex, partIndex, teeth,
    displays: displays.map(([arbor, against]) => ({
      id: `${arbor}-dial`, name: "hour of the tide", arbor: arborIndex.get(arbor) ?? 0, against: against === undefined ? null : arborIndex.get(against) ?? 0,
      rate: ONE, days: 1, wanted: null, degreesPerYear: null, yearsToOneDegree: null, sense: "clockwise", divisions: 360,
    })),
    engagements: engagements.map((engagement) => {
      const driver = partOf(engagement.driver), driven = partOf(engagement.driven);
      const working = workingDistance(teeth.get(engagement.driver)!, teeth.get(engagement.driven)!);
      const a = workedArbors[driver.arbor], b = workedArbors[driven.arbor];
      return {
        id: engagementId(engagement), engagement, driver: driver.part, driven: driven.part,
        driverArbor: driver.arbor, drivenArbor: driven.arbor, distance: Math.hypot(a.x - b.x, a.y - b.y),
        computed: working === null ? null : working + (engagement.ease ?? 0), carrier: carrier !== undefined && [a, b].some((w) => w.carrier !== null) ? arborIndex.get(carrier) ?? null : null, steadyDistance: true,
      };
    }),
  };
}
