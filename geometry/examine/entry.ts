// `entry`: putting together. An arbor trapped through a plate is a foul; three or more that must go in together are tight.
import { orderOfEntry, whatGoesBefore } from "../assembly/before.ts";
import { freedRing, freedThrough, RING_OF, type RingFreed, type ThroughFreed } from "../assembly/freeing.ts";
import { platesThrough, type Through } from "../assembly/through.ts";
import { thingsOf, type Thing } from "../bodies/thing.ts";
import type { Finding } from "../finding.ts";
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";
import { mm } from "./engaged.ts";

export interface Entry {
  /** Ids of arbors in the order in which they go in; those of one list go in together. */
  readonly assembly: readonly (readonly string[])[];
  readonly findings: readonly Finding[];
}

/** `things`: of the movement, where they are known already. */
export function entryOf(movement: Movement, things: readonly Thing[] = thingsOf(movement)): Entry {
  const order = orderOfEntry(movement.arbors.length, whatGoesBefore(movement, things));
  const assembly = order.map((group) => group.map((i) => movement.arbors[i].id));
  return { assembly, findings: [...movement.arbors.flatMap((_, i) => throughFinding(movement, i)), ...order.map((group) => togetherFinding(movement, group, things))] };
}

function throughFinding(movement: Movement, index: number): Finding[] {
  const through = platesThrough(movement, index);
  if (through.length === 0) return [];
  const { id } = movement.arbors[index];
  const trapped = through.find((t) => t.trapped);
  return [{
    code: "entry", severity: trapped ? "foul" : "free", between: [id], remedies: [],
    says: trapped ? trappedWords(id, trapped, freedThrough(movement, index, trapped)) : `Arbor ${id} can be put through ${through.map((t) => t.plate).join(" and ")}`,
  }];
}

function trappedWords(id: string, { plate, below, above }: Through, { opening, loosen }: ThroughFreed): string {
  const names = (parts: readonly Part[]) => parts.map((p) => p.id).join(", ");
  return `Arbor ${id} cannot be put through ${plate}: ${names(below)} below and ${names(above)} above are wider than its opening. `
    + `An opening wider than ${mm(opening)}, a cock, or ${loosen.join(" and ")} held by screw, pin or square would free it`;
}

function togetherFinding(movement: Movement, group: readonly number[], things: readonly Thing[]): Finding {
  const tight = group.length >= RING_OF, between = group.map((i) => movement.arbors[i].id);
  const together = between.length === 1 ? `Arbor ${between[0]} goes in by itself` : `Arbors ${between.join(", ")} must go in together`;
  return { code: "entry", severity: tight ? "tight" : "free", between, says: tight ? `${together}${freedWords(freedRing(movement, group, things))}` : together, remedies: [] };
}

/** The trapped one, and the least changes that free it. */
function freedWords({ cock, split, swap }: RingFreed): string {
  const ways = [
    ...(cock.length > 0 ? [`a cock for ${cock[0]}`] : []), ...(split.length > 0 ? [`${split[0]} made to come off`] : []),
    ...(swap === null ? [] : [`${swap[0]} and ${swap[1]} on each other's levels`]),
  ];
  const trapped = cock.length > 0 ? `; ${cock[0]} is trapped between the others` : "";
  return ways.length > 0 ? `${trapped}. ${ways[0].charAt(0).toUpperCase()}${ways.join(", or ").slice(1)} would free them` : `${trapped}. Each of several changes alone would leave a ring: split the frame between them`;
}
