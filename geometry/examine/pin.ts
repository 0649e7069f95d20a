// `pin`: a pin in its slot through a whole turn, at the worst of the shakes: to either end, in width, and in height.
import { facesOverlap } from "../depth/face.ts";
import { unsharedArbors } from "../depth/pair.ts";
import type { Finding, Severity } from "../finding.ts";
import type { Part, Pin, Slot } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { AT_LIMIT_MM } from "../numeric/tolerance.ts";
import { mm } from "./engaged.ts";

export function pinFindings(movement: Movement): Finding[] {
  return (movement.instrument.couplings ?? []).flatMap((coupling) => {
    if (coupling.kind !== "pin and slot") return [];
    const ends = [partAt(movement, coupling.driver), partAt(movement, coupling.driven)];
    const pin = ends.find((end) => end?.part.kind === "pin"), slot = ends.find((end) => end?.part.kind === "slot");
    return pin?.part.kind === "pin" && slot?.part.kind === "slot" ? [inItsSlot(movement, pin.part, pin.arbor, slot.part, slot.arbor)] : [];
  });
}

/** What is to spare in one way: as drawn, and at the worst. */
interface Spare { readonly what: string; readonly drawn: number; readonly worst: number }

function inItsSlot(movement: Movement, pin: Pin, pinArbor: number, slot: Slot, slotArbor: number): Finding {
  const a = movement.arbors[pinArbor], b = movement.arbors[slotArbor];
  const wanted = movement.practice.faceGap;
  const spares = [...endSpares(movement, pin, pinArbor, slot, slotArbor), heightSpare(movement, pin, pinArbor, slot, slotArbor)];
  const least = spares.reduce((x, y) => (y.worst < x.worst ? y : x));
  const tooWide = pin.diameter > slot.width + AT_LIMIT_MM;
  const severity: Severity = tooWide || least.worst <= AT_LIMIT_MM ? "foul" : least.worst < wanted - AT_LIMIT_MM ? "tight" : "free";
  const way = Math.atan2(a.y - b.y, a.x - b.x);
  return {
    code: "pin", severity, between: [pin.id, slot.id], gap: least.drawn, worst: least.worst, wanted, remedies: [],
    at: { x: b.x + slot.radius * Math.cos(way), y: b.y + slot.radius * Math.sin(way), z: slot.z + slot.thickness / 2 },
    says: tooWide ? `Pin ${pin.id}, ${mm(pin.diameter)}, is wider than slot ${slot.id}, ${mm(slot.width)}` : wordsOf(pin.id, slot.id, least, severity, wanted),
  };
}

/** From the pin's edge to either end of the slot, where its throw brings it nearest: the pin stands ρ − e to ρ + e from the slot's axis. */
function endSpares(movement: Movement, pin: Pin, pinArbor: number, slot: Slot, slotArbor: number): Spare[] {
  const a = movement.arbors[pinArbor], b = movement.arbors[slotArbor];
  const apartMm = Math.hypot(a.x - b.x, a.y - b.y);
  const side = unsharedArbors(movement, pinArbor, slotArbor).flat().reduce((sum, i) => sum + movement.arbors[i].ownSideshake / 2, 0);
  const inner = Math.abs(pin.radius - apartMm) - pin.diameter / 2 - (slot.radius - slot.length / 2);
  const outer = slot.radius + slot.length / 2 - (pin.radius + apartMm) - pin.diameter / 2;
  return [{ what: "the inner end", drawn: inner, worst: inner - side }, { what: "the outer end", drawn: outer, worst: outer - side }];
}

function heightSpare(movement: Movement, pin: Pin, pinArbor: number, slot: Slot, slotArbor: number): Spare {
  const { drawn, worst } = facesOverlap(movement, pinArbor, pin, slotArbor, slot);
  return { what: "its height", drawn, worst };
}

function wordsOf(pin: string, slot: string, least: Spare, severity: Severity, wanted: number): string {
  const inHeight = least.what === "its height";
  if (severity === "foul") return inHeight ? `Pin ${pin} leaves slot ${slot} in height at the worst of the shakes` : `Pin ${pin} passes ${least.what} of slot ${slot} by ${mm(-least.worst)}`;
  const has = inHeight ? `Pin ${pin} stands ${mm(least.worst)} deep in slot ${slot}` : `Pin ${pin} keeps ${mm(least.worst)} from ${least.what} of slot ${slot}`;
  return severity === "tight" ? `${has} at the worst, ${mm(wanted)} is wanted` : `${has} at the worst`;
}

function partAt(movement: Movement, id: string): { part: Part; arbor: number } | null {
  const at = movement.partIndex.get(id);
  return at ? { part: movement.arbors[at.arbor].arbor.parts[at.part], arbor: at.arbor } : null;
}
