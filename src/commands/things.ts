// New things to begin with: every kind that a file can hold, of a usual size, where there is room, with an id of its own.
// Each is only a beginning that the maker changes. Lengths in mm. Sizes are common practice for small brass work.
import { type Arbor, type Instrument, type Part, type PartKind, type Plate, gearingOf, practiceOf } from "../../geometry/index.ts";
import { idsIn } from "../document/index.ts";
import { keptMm } from "./command.ts";
import { nextLetter, nextNumber } from "./edit.ts";

const takenIn = (instrument: Instrument): ReadonlySet<string> => new Set([...idsIn(instrument), "case", "input"]);

export type ArborKind = "arbor" | "pipe" | "stud" | "post";

/** Between the two outer plates where there are two, else 40 high; what rides does so on `on`. */
export function freshArbor(instrument: Instrument, kind: ArborKind, on: string | null): Arbor {
  const id = nextLetter(takenIn(instrument));
  const [low, high] = outerPlates(instrument);
  const under = low ? low.z + low.thickness : 0, over = high && high !== low ? high.z : under + 40;
  const host = instrument.arbors.find((a) => a.id === on) ?? instrument.arbors[0];
  if (kind === "pipe" && host) {
    const bore = keptMm(host.diameter + practiceOf(instrument).pipeShake), third = (host.head - host.foot) / 3;
    return { id, diameter: keptMm(bore + 2), bore, foot: keptMm(host.foot + third), head: keptMm(host.head - third), rides: { on: host.id, radius: 0, angle: 0 }, parts: [] };
  }
  if (kind === "stud" && host) {
    const foot = keptMm(host.parts[0] ? host.parts[0].z + host.parts[0].thickness : host.foot + 5);
    return { id, diameter: 2, foot, head: foot + 6, rides: { on: host.id, radius: 10, angle: 0 }, parts: [] };
  }
  const place = freePlace(instrument);
  if (kind === "post") return { id, ...place, fixed: true, diameter: 4, foot: low ? low.z : 0, head: keptMm(under + (over - under) / 2), parts: [] };
  const pivot = (plate: Plate) => ({ diameter: 1.5, length: keptMm(plate.thickness), plate: plate.id });
  return {
    id, ...place, diameter: 3, foot: keptMm(low ? low.z + 0.1 : 0), head: keptMm(high ? high.z + high.thickness - 0.1 : 40),
    ...(low && high && low !== high ? { pivots: { foot: pivot(low), head: pivot(high) } } : {}), parts: [],
  };
}

/** The kind of a part with everything that it needs, on the first height of its arbor that is free. */
export function freshPart(instrument: Instrument, arbor: Arbor, kind: PartKind): Part {
  const id = nextNumber(arbor.id, takenIn(instrument));
  return { id, ...ownOf(kind, arbor, gearingOf(instrument).module), z: freeHeight(arbor, kind, THICK[kind]), thickness: THICK[kind] } as Part;
}

/** The part as another kind: what both have stays, counts too, under the name that the kind gives them. */
export function asKind(instrument: Instrument, arbor: Arbor, part: Part, kind: PartKind): Part {
  const own = ownOf(kind, arbor, gearingOf(instrument).module);
  const { id, z, thickness, name, material, join, measured } = part;
  const count = "teeth" in part ? part.teeth : "leaves" in part ? part.leaves : "trundles" in part ? part.trundles : undefined;
  const toothing = kind === "wheel" || kind === "pinion" ? TOOTHING : kind === "lantern" ? ["module"] : [];
  const shared = Object.entries(part).filter(([field]) => field in own || toothing.includes(field));
  const counted = count === undefined ? {} : Object.fromEntries(["teeth", "leaves", "trundles"].filter((field) => field in own).map((field) => [field, count]));
  const base = Object.entries({ id, name, z, thickness, material, join, measured }).filter(([, v]) => v !== undefined);
  return Object.fromEntries([...Object.entries(own), ...shared, ...Object.entries(counted), ...base, ["kind", kind]]) as unknown as Part;
}

export const freshPlate = (instrument: Instrument): Plate => {
  const high = outerPlates(instrument)[1];
  return {
    id: nextNumber("plate", takenIn(instrument)), z: high ? keptMm(high.z + high.thickness + 20) : -3, thickness: 3,
    outline: high?.outline ?? { circle: { diameter: 110 } },
  };
};

export function freshPillar(instrument: Instrument): Instrument["frame"]["pillars"][number] {
  const [low, high] = outerPlates(instrument), from = low ? low.z + low.thickness : 0;
  return { id: nextNumber("P", takenIn(instrument)), ...freePlace(instrument), diameter: 8, from, to: high && high.z > from ? high.z : from + 40 };
}

export function freshCase({ frame }: Instrument): NonNullable<Instrument["frame"]["case"]> {
  const reach = Math.max(50, ...frame.plates.map(({ outline: o }) => ("circle" in o ? o.circle.diameter / 2 : "rectangle" in o
    ? Math.hypot(o.rectangle.width, o.rectangle.height) / 2 : Math.max(...o.polygon.map(([x, y]) => Math.hypot(x, y))))));
  const low = Math.min(0, ...frame.plates.map((p) => p.z)), high = Math.max(40, ...frame.plates.map((p) => p.z + p.thickness));
  return { insideDiameter: Math.ceil(2 * reach + 4), floor: low - 10, rim: high + 10, wall: 2 };
}

/** By the list it goes into: everything that is neither arbor nor part; null where the instrument has nothing to make it of. */
export function freshIn(instrument: Instrument, list: string, kind?: string): unknown {
  const taken = takenIn(instrument), arbor = instrument.arbors.at(-1)?.id ?? instrument.input.arbor;
  const parts = instrument.arbors.flatMap((a) => a.parts.map((p) => ({ id: p.id, kind: p.kind, arbor: a.id })));
  switch (list) {
    case "plates": return freshPlate(instrument);
    case "pillars": return freshPillar(instrument);
    case "openings": return { x: 0, y: 0, diameter: 10 };
    case "windows": return { radius: 5, angle: 0, diameter: 3 };
    case "displays": return { id: nextNumber("display", taken), name: "A new display", arbor };
    case "dials": return { id: nextNumber("dial", taken), rings: [{ insideDiameter: 50, outsideDiameter: 60 }] };
    case "rings": return { insideDiameter: 50, outsideDiameter: 60 };
    case "apertures": return { radius: 10, angle: 90, width: 20, height: 4 };
    case "marks": return { at: 0 };
    case "cutters": return { form: gearingOf(instrument).form, module: gearingOf(instrument).module };
    case "couplings": return freshCoupling(instrument, parts, kind);
    default: return null;
  }
}

function freshCoupling({ arbors }: Instrument, parts: readonly { readonly id: string; readonly kind: string; readonly arbor: string }[], kind?: string): unknown {
  const of = (wanted: string) => parts.find((p) => p.kind === wanted);
  if (kind === "pin and slot") {
    const pin = of("pin"), slot = pin && parts.find((p) => p.kind === "slot" && p.arbor !== pin.arbor);
    return pin && slot ? { kind, driver: pin.id, driven: slot.id } : null;
  }
  const [one, other] = arbors;
  if (kind === "click") {
    const ratchet = of("ratchet"), on = arbors.find((a) => a.id !== ratchet?.arbor);
    return ratchet && on ? { kind, ratchet: ratchet.id, on: on.id, passes: "clockwise" } : null;
  }
  return one && other ? { kind: "friction", between: [one.id, other.id] } : null;
}

const TOOTHING: readonly string[] = ["module", "form", "pressureAngle", "shift", "thinning", "topping", "dedendum", "internal", "outsideDiameter"];
const THICK: Record<PartKind, number> = {
  wheel: 2, pinion: 4, lantern: 5, collet: 3, pointer: 0.8, disc: 1, pin: 3, slot: 1.5, arm: 2, ratchet: 1.5, square: 5,
};

function ownOf(kind: PartKind, { diameter }: Arbor, module: number): Record<string, unknown> {
  switch (kind) {
    case "wheel": return { kind, teeth: 48 };
    case "pinion": return { kind, leaves: 12 };
    case "lantern": return { kind, trundles: 12, trundleDiameter: keptMm(1.4 * module) };
    case "collet": return { kind, diameter: diameter + 4 };
    case "pointer": return { kind, length: 20, tail: 6, width: 2, angle: 90 };
    case "disc": return { kind, diameter: 20 };
    case "pin": return { kind, radius: 6, angle: 0, diameter: 1.5 };
    case "slot": return { kind, diameter: 24, radius: 8, angle: 0, length: 6, width: 1.6 };
    case "arm": return { kind, length: 15, width: 4, angle: 0 };
    case "ratchet": return { kind, teeth: 24, diameter: 16, depth: 1 };
    case "square": return { kind, across: keptMm(0.7 * diameter), taper: 0 };
  }
}

/** Air left over and under a new part. */
const AIR_MM = 1.5;

/** Lower face of the lowest gap between its shoulders that takes the part with air; a pointer and a square stand at the head. */
function freeHeight(arbor: Arbor, kind: PartKind, thickness: number): number {
  const bottom = arbor.foot + (arbor.pivots?.foot?.length ?? 0), top = arbor.head - (arbor.pivots?.head?.length ?? 0);
  if (kind === "pointer" || kind === "square") return keptMm(Math.max(bottom, arbor.head - thickness));
  let z = bottom + AIR_MM;
  for (const part of [...arbor.parts].sort((a, b) => a.z - b.z)) {
    if (part.z - AIR_MM >= z + thickness) break;
    z = Math.max(z, part.z + part.thickness + AIR_MM);
  }
  return keptMm(z + thickness <= top ? z : bottom + AIR_MM);
}

/** The lowest plate and the highest. */
export function outerPlates({ frame }: Instrument): readonly [Plate | undefined, Plate | undefined] {
  const plates = [...frame.plates].sort((a, b) => a.z - b.z);
  return [plates[0], plates.at(-1)];
}

/** How far a new axis is put from those that stand, and how it is looked for: rings about the middle. */
const APART_MM = 12, RING_MM = 8;

function freePlace({ arbors, frame }: Instrument): { readonly x: number; readonly y: number } {
  const stand = [...arbors.flatMap((a) => (a.x !== undefined && a.y !== undefined ? [{ x: a.x, y: a.y }] : [])), ...frame.pillars];
  for (let ring = 0; ring < 12; ring++)
    for (let k = 0; k < Math.max(1, 6 * ring); k++) {
      const angle = (2 * Math.PI * k) / Math.max(1, 6 * ring);
      const x = keptMm(ring * RING_MM * Math.cos(angle)), y = keptMm(ring * RING_MM * Math.sin(angle));
      if (stand.every((s) => Math.hypot(s.x - x, s.y - y) >= APART_MM)) return { x, y };
    }
  return { x: 0, y: 0 };
}
