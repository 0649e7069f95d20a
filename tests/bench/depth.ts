// One pair of each form brought together over 240 phases, its window beside it; and all engagements of chains of clock
// wheels and pinions of 15, 30 and 60 arbors examined and depthed in full, where time for each pair should not grow.
import { type Contact, contactAt } from "../../geometry/depth/contact.ts";
import { depthingOf } from "../../geometry/depth/depthing.ts";
import { flanksOf } from "../../geometry/depth/holding.ts";
import { pairOf } from "../../geometry/depth/pair.ts";
import { windowOf } from "../../geometry/depth/window.ts";
import { depthsOf, type Instrument, type Movement, type Part, workOut } from "../../geometry/index.ts";
import { asItStands } from "../../src/sheets/depthing/standings.ts";
import { figure, medianMs, table } from "./measure.ts";

const PHASES = 240;
const SIZES = [15, 30, 60];

const wheel = (id: string, teeth: number, more: object = {}): Part => ({ id, kind: "wheel", z: 2, thickness: 2, teeth, ...more }) as Part;
const pinion = (id: string, leaves: number, more: object = {}): Part => ({ id, kind: "pinion", z: 2, thickness: 4, leaves, ...more }) as Part;
const clock = { form: "cycloidal" }, filed = { form: "straight" };

const PAIRS: readonly (readonly [string, Part, Part])[] = [
  ["involute 60:20", wheel("A1", 60), pinion("B1", 20)],
  ["annulus 80:40", wheel("A1", 80, { internal: true, outsideDiameter: 90 }), pinion("B1", 40)],
  ["cycloidal 60:8", wheel("A1", 60, clock), pinion("B1", 8, clock)],
  ["straight 40:50", wheel("A1", 40, filed), wheel("B1", 50, filed)],
  ["lantern 64:8", wheel("A1", 64, clock), { id: "B1", kind: "lantern", z: 2, thickness: 4, trundles: 8, trundleDiameter: 1.2 } as Part],
];

export function benchDepth(): string {
  const rows = [["", "contact ms", "window ms", "step of the live sheet ms", "checksum"]];
  for (const [name, driver, driven] of PAIRS) {
    const movement = workOut(chain([[driver], [driven]])), pair = pairOf(movement, 0);
    const contact = () => contactAt(flanksOf(pair), pair.distanceMm, PHASES);
    const window = () => windowOf(pair, movement.practice);
    const checksum = sumOfContact(contact()) + (window().nearest ?? 0) + (window().farthest ?? 0);
    rows.push([name, figure(medianMs(21, contact)), figure(medianMs(9, window)), figure(medianMs(21, liveStep(movement))), checksum.toFixed(6)]);
  }
  return `${table(`One pair, ${PHASES} phases`, rows)}\n${chainsTable()}`;
}

/** What the Depthing sheet does anew while a distance is in hand: how the pair stands there, and its path of contact as text. */
function liveStep(movement: Movement): () => string {
  const [pair] = movement.engagements;
  let step = 0;
  return () => {
    const distance = (pair?.distance ?? 0) + 0.005 * (step++ % 8);
    const standing = asItStands({ ...movement, engagements: [{ ...pair!, distance }] }, 0, true);
    return standing.path.map(({ touch }) => `${touch.x.toFixed(1)},${touch.y.toFixed(1)}`).join(" ");
  };
}

function chainsTable(): string {
  const rows = [["arbors", "pairs", "examined ms", "depthed in full ms", "together, per pair", "checksum"]];
  let first = 0;
  for (const size of SIZES) {
    const movement = workOut(chain(Array.from({ length: size }, (_, i) => clockArbor(i)))), pairs = movement.engagements.length;
    let sum = 0;
    const examined = medianMs(3, () => depthsOf(movement)), depthed = medianMs(3, () => { sum = depthAll(movement); });
    const perPair = (examined + depthed) / pairs;
    first ||= perPair;
    rows.push([`${size}`, `${pairs}`, figure(examined), figure(depthed), `${(perPair / first).toFixed(2)} ×`, sum.toFixed(6)]);
  }
  return table("All engagements of a chain of clock pairs", rows);
}

/** A pinion driven by the arbor before, and a wheel that drives the next; counts go round, so that no two pairs in a row are alike. */
const clockArbor = (i: number): Part[] => [pinion(`P${i}`, 8 + (i % 5), clock), wheel(`W${i}`, 48 + 6 * (i % 7), { ...clock, z: 6 })];

/** Arbors in a row, the last part of each in gear with the first of the next. */
function chain(arbors: readonly (readonly Part[])[]): Instrument {
  const parts = arbors.map((own) => own[own.length - 1]);
  return {
    endshake: 1, name: "bench", frame: { plates: [], pillars: [] },
    arbors: arbors.map((own, i) => ({ id: `S${i}`, diameter: 2, foot: 0, head: 20, parts: own, ...(i === 0 ? { x: 0, y: 0 } : {}) })),
    engagements: parts.slice(0, -1).map((part, i) => ({ driver: part?.id ?? "", driven: arbors[i + 1]?.[0]?.id ?? "" })),
    input: { arbor: "S0", days: 1, sense: "clockwise" },
  };
}

const depthAll = (movement: Movement): number =>
  movement.engagements.reduce((sum, _, i) => {
    const { window, lead, backlash } = depthingOf(movement, i);
    return sum + (window.nearest ?? 0) + (window.farthest ?? 0) + (lead.most ?? 0) + (backlash.slackest ?? 0);
  }, 0);

const sumOfContact = (contact: Contact | null): number => {
  if (contact === null) throw new Error("the pair was expected to touch");
  return contact.ratio + contact.rate.reduce((a, b) => a + b, 0) / PHASES + contact.freeArcRad.reduce((a, b) => a + b, 0);
};
