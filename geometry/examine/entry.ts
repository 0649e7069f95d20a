// `entry`: putting together. An arbor trapped through a plate is a foul; three or more that must go in together are tight.
import { orderOfEntry, whatGoesBefore } from "../assembly/before.ts";
import { platesThrough, type Through } from "../assembly/through.ts";
import type { Finding } from "../finding.ts";
import type { Part } from "../instrument.ts";
import type { Movement } from "../movement.ts";

export interface Entry {
  /** Ids of arbors in the order in which they go in; those of one list go in together. */
  readonly assembly: readonly (readonly string[])[];
  readonly findings: readonly Finding[];
}

export function entryOf(movement: Movement): Entry {
  const order = orderOfEntry(movement.arbors.length, whatGoesBefore(movement));
  const assembly = order.map((group) => group.map((i) => movement.arbors[i].id));
  return { assembly, findings: [...movement.arbors.flatMap((_, i) => throughFinding(movement, i)), ...assembly.map(togetherFinding)] };
}

function throughFinding(movement: Movement, index: number): Finding[] {
  const through = platesThrough(movement, index);
  if (through.length === 0) return [];
  const { id } = movement.arbors[index];
  const trapped = through.find((t) => t.trapped);
  return [{
    code: "entry", severity: trapped ? "foul" : "free", between: [id], remedies: [],
    says: trapped ? trappedWords(id, trapped) : `Arbor ${id} can be put through ${through.map((t) => t.plate).join(" and ")}`,
  }];
}

function trappedWords(id: string, { plate, below, above }: Through): string {
  const names = (parts: readonly Part[]) => parts.map((p) => p.id).join(", ");
  return `Arbor ${id} cannot be put through ${plate}: ${names(below)} below and ${names(above)} above are wider than its opening. `
    + `A wider opening, a cock, or one side held by screw, pin or square would free it`;
}

function togetherFinding(ids: readonly string[]): Finding {
  const tight = ids.length >= 3;
  return {
    code: "entry", severity: tight ? "tight" : "free", between: ids, remedies: [],
    says: ids.length === 1 ? `Arbor ${ids[0]} goes in by itself` : `Arbors ${ids.join(", ")} must go in together`,
  };
}
