// What an instrument file may hold: every field, its range, and what it refers to. The order here is the order in which
// files are written. Ranges refuse only what makes no sense; what can be read but does not work is a finding.
import type {
  Aperture, Arbor, Case, Coupling, Crossings, Cutter, DayBookEntry, Dial, DialRing, Display, Division, Engagement, Frame, Gearing, Input, Instrument, Join,
  Part, Pillar, Pivot, Plate, Practice, Rides,
} from "../../geometry/index.ts";
import {
  above, fields, FLAG, idOf, list, needed, number, optional, orEmpty, pair, reference, TEXT, whole, word,
} from "./shape.ts";
import type { FieldsOf, FieldsShape, KindsShape, Shape } from "./shape.ts";

export const FORMAT = 1;
export const MOST_BYTES = 5 * 1024 * 1024;
export const MOST_ARBORS = 2000;
export const MOST_PARTS = 20_000;
/** Lists and objects inside one another. An instrument has eight; the rest is for fields that are not understood. */
export const MOST_NESTING = 64;

const MOST_ITEMS = 20_000;
/** Divisions of a dial that can still be drawn one by one. */
const MOST_MARKS = 2000;
const place = number(-10_000, 10_000, "mm");
const size = above(0, 10_000, "mm");
const sizeOrNone = number(0, 10_000, "mm");
const angle = number(-36_000, 36_000, "degrees");
const count = whole(3, 2000);
const modules = number(-10, 10, "modules");
const modulesOrNone = number(0, 100, "modules");
const module = size;
const pressureAngle = number(5, 45, "degrees");
const days = above(0, 1e12, "days");
const heat = number(-273, 5000, "°C");
const form = word("involute", "cycloidal", "straight");
const sense = word("clockwise", "anticlockwise");
const items = (of: Shape, least = 0): Shape => list(of, MOST_ITEMS, least);

const practice = fields<Partial<Practice>>({
  planGap: optional(sizeOrNone), faceGap: optional(sizeOrNone), endshake: optional(sizeOrNone),
  sideshake: optional(sizeOrNone), runout: optional(sizeOrNone), wobble: optional(sizeOrNone),
  backlash: optional(pair(modulesOrNone, true)), tipClearance: optional(modulesOrNone),
  faceOverlap: optional(modulesOrNone), pipeShake: optional(sizeOrNone), edge: optional(sizeOrNone),
  lostMotion: optional(number(0, 1e6, "divisions")),
});

const gearing = fields<Partial<Gearing>>({
  form: optional(form), module: optional(module), pressureAngle: optional(pressureAngle), thinning: optional(modules),
});

const centre = { x: optional(place), y: optional(place) };
const outline: FieldsShape = {
  is: "fields",
  oneOf: ["circle", "rectangle", "polygon"],
  fields: {
    circle: optional(fields<{ diameter: number; x?: number; y?: number }>({ diameter: needed(size), ...centre })),
    rectangle: optional(fields<{ width: number; height: number; x?: number; y?: number }>({
      width: needed(size), height: needed(size), ...centre,
    })),
    polygon: optional(items(pair(place), 3)),
  },
};

const opening = fields<NonNullable<Plate["openings"]>[number]>({ x: needed(place), y: needed(place), diameter: needed(size) });

const frame = fields<Frame>({
  plates: orEmpty(items(fields<Plate>({
    id: needed(idOf("plate")), name: optional(TEXT), z: needed(place), thickness: needed(size), outline: needed(outline),
    openings: optional(items(opening)),
  }))),
  pillars: orEmpty(items(fields<Pillar>({
    id: needed(idOf("pillar")), x: needed(place), y: needed(place), diameter: needed(size), from: needed(place), to: needed(place),
  }, { above: ["to", "from"] }))),
  case: optional(fields<Case>({
    insideDiameter: needed(size), floor: needed(place), rim: needed(place), wall: needed(sizeOrNone),
  }, { above: ["rim", "floor"] })),
});

const join = fields<Join>({
  by: needed(word("soft solder", "silver solder", "adhesive", "rivet", "press", "screw", "pin", "square")),
  order: optional(number(-1e6, 1e6)), solidus: optional(heat), liquidus: optional(heat),
});

type Base = "id" | "kind" | "z" | "thickness" | "name" | "join" | "material" | "measured";
/** A kind of part: what every part has, with its own fields in between, as they are best read. */
function part<K extends Part["kind"]>(own: FieldsOf<Omit<Extract<Part, { kind: K }>, Base>>, rules: Omit<FieldsShape, "is" | "fields"> = {}): FieldsShape {
  return {
    is: "fields",
    fields: {
      id: needed(idOf("part")), kind: needed(TEXT), name: optional(TEXT), ...own, z: needed(place), thickness: needed(size),
      material: optional(TEXT), join: optional(join),
      measured: optional(fields<NonNullable<Part["measured"]>>({
        tipDiameter: optional(size), thickness: optional(size), runout: optional(sizeOrNone), wobble: optional(sizeOrNone),
      })),
    },
    ...rules,
  };
}

const crossings = fields<Crossings>({ arms: needed(whole(2, 24)), rim: needed(size), arm: needed(size), hub: needed(size), angle: optional(angle) });
const toothing = {
  module: optional(module), form: optional(form), pressureAngle: optional(pressureAngle), shift: optional(modules),
  thinning: optional(modules), topping: optional(modules), dedendum: optional(above(0, 10, "modules")),
  internal: optional(FLAG), outsideDiameter: optional(size),
};
const annulus = { needs: ["internal", "outsideDiameter"] } as const;
const turned = { angle: needed(angle) };

const parts: KindsShape = {
  is: "kinds",
  kinds: {
    wheel: part<"wheel">({ teeth: needed(count), ...toothing, crossings: optional(crossings) }, annulus),
    pinion: part<"pinion">({ leaves: needed(count), ...toothing }, annulus),
    lantern: part<"lantern">({
      trundles: needed(count), trundleDiameter: needed(size), module: optional(module), shroudDiameter: optional(size),
    }),
    collet: part<"collet">({ diameter: needed(size) }),
    pointer: part<"pointer">({ length: needed(size), tail: needed(sizeOrNone), width: needed(size), ...turned }),
    disc: part<"disc">({
      diameter: needed(size),
      windows: optional(items(fields<{ radius: number; angle: number; diameter: number }>({
        radius: needed(sizeOrNone), ...turned, diameter: needed(size),
      }))),
    }),
    pin: part<"pin">({ radius: needed(sizeOrNone), ...turned, diameter: needed(size) }),
    slot: part<"slot">({ diameter: needed(size), radius: needed(sizeOrNone), ...turned, length: needed(size), width: needed(size) }),
    arm: part<"arm">({ length: needed(size), width: needed(size), ...turned }),
    ratchet: part<"ratchet">({ teeth: needed(count), diameter: needed(size), depth: needed(size) }),
    square: part<"square">({
      across: needed(size), taper: needed(number(0, 45, "degrees")),
      slot: optional(fields<{ width: number; height: number }>({ width: needed(size), height: needed(size) })), angle: optional(angle),
    }),
  } satisfies Record<Part["kind"], FieldsShape>,
};

export const PART_KINDS: readonly string[] = Object.keys(parts.kinds);

const pivot = fields<Pivot>({ diameter: needed(size), length: needed(sizeOrNone), plate: needed(reference("plate")) });

const arbor = fields<Arbor>({
  id: needed(idOf("arbor")), name: optional(TEXT), x: optional(place), y: optional(place), steady: optional(FLAG),
  fixed: optional(FLAG), diameter: needed(size), foot: needed(place), head: needed(place),
  pivots: optional(fields<NonNullable<Arbor["pivots"]>>({ foot: optional(pivot), head: optional(pivot) })),
  endshake: optional(sizeOrNone), sideshake: optional(sizeOrNone),
  rides: optional(fields<Rides>({ on: needed(reference("arbor")), radius: needed(sizeOrNone), ...turned })),
  bore: optional(size),
  measured: optional(fields<NonNullable<Arbor["measured"]>>({ x: needed(place), y: needed(place) })),
  parts: needed(items(parts)),
}, { together: ["x", "y"], above: ["head", "foot"] });

const coupling = <K extends Coupling["kind"]>(own: FieldsOf<Omit<Extract<Coupling, { kind: K }>, "kind">>): FieldsShape =>
  ({ is: "fields", fields: { kind: needed(TEXT), ...own } });

const couplings: KindsShape = {
  is: "kinds",
  kinds: {
    "pin and slot": coupling<"pin and slot">({ driver: needed(reference("part")), driven: needed(reference("part")) }),
    click: coupling<"click">({ ratchet: needed(reference("part")), on: needed(reference("arbor")), passes: needed(sense), pawl: optional(reference("part")) }),
    friction: coupling<"friction">({ between: needed(pair(reference("arbor"))) }),
  } satisfies Record<Coupling["kind"], FieldsShape>,
};

const dialRing = fields<DialRing>({
  display: optional(reference("display")), name: optional(TEXT), insideDiameter: needed(sizeOrNone), outsideDiameter: needed(size),
  carrier: optional(reference("arbor")), divisions: optional(above(0, MOST_MARKS)), parts: optional(whole(1, 60)), every: optional(above(0, MOST_MARKS)),
  numerals: optional(word("arabic", "roman", "none")), labels: optional(items(TEXT)), zero: optional(angle), sense: optional(sense),
  marks: optional(items(fields<NonNullable<DialRing["marks"]>[number]>({ at: needed(angle), label: optional(TEXT) }))),
  follows: optional(word("calendar", "calendar by the Sun", "equation of time", "height of the tide")),
}, { above: ["outsideDiameter", "insideDiameter"] });
const aperture = fields<Aperture>({
  radius: needed(sizeOrNone), angle: needed(angle), width: needed(above(0, 360, "degrees")), height: needed(size),
});

export const INSTRUMENT = fields<Instrument>({
  endshake: needed({ is: "format", number: FORMAT }),
  name: needed(TEXT),
  notes: optional(TEXT),
  practice: optional(practice),
  gearing: optional(gearing),
  frame: needed(frame),
  arbors: needed(list(arbor, MOST_ARBORS)),
  engagements: needed(items(fields<Engagement>({
    id: optional(idOf("engagement")), driver: needed(reference("part")), driven: needed(reference("part")), ease: optional(place),
  }))),
  couplings: optional(items(couplings)),
  input: needed(fields<Input>({ arbor: needed(reference("arbor")), days: needed(days), sense: needed(sense) })),
  displays: optional(items(fields<Display>({
    id: needed(idOf("display")), name: needed(TEXT), arbor: needed(reference("arbor")), days: optional(days), sense: optional(sense),
    divisions: optional(above(0, 1e6)), against: optional(reference("arbor")), shows: optional(TEXT), epoch: optional(TEXT),
  }))),
  dials: optional(items(fields<Dial>({
    id: needed(idOf("dial")), name: optional(TEXT), x: optional(place), y: optional(place),
    rings: needed(items(dialRing)), apertures: optional(items(aperture)),
  }, { together: ["x", "y"] }))),
  cutters: optional(items(fields<Cutter>({
    form: needed(TEXT), module: needed(module), pressureAngle: optional(pressureAngle),
    from: optional(whole(1, 10_000)), to: optional(whole(1, 10_000)),
  }))),
  division: optional(fields<Division>({
    ratio: needed(above(0, 10_000)),
    circles: needed({ is: "lists", of: whole(1, 10_000), most: MOST_ITEMS }),
    gears: optional(items(whole(1, 10_000))),
  })),
  dayBook: optional(items(fields<DayBookEntry>({ at: needed(TEXT), says: needed(TEXT) }))),
});
