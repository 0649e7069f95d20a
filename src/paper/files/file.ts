// One file that leaves the workshop: its name (folders with strokes) and its bytes. Nothing in it knows the day or the
// machine, so that the same instrument gives the same bytes in a page and in the terminal.

export interface OutFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export const textFile = (name: string, text: string): OutFile => ({ name, bytes: new TextEncoder().encode(text) });

/** A name that every system takes: letters, figures, points, strokes. */
export function fileName(id: string): string {
  const plain = id.normalize("NFKD").replace(/[^A-Za-z0-9.]+/g, "-").replace(/^[-.]+|[-.]+$/g, "");
  return plain || "part";
}

/** Each name once: a second one alike (in capitals too, since some disks do not tell them apart) has a figure behind it. */
export function distinct(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let one = name;
    for (let k = 2; taken.has(one.toLowerCase()); k++) one = `${name}-${k}`;
    taken.add(one.toLowerCase());
    return one;
  });
}

/** What every export of an instrument that fouls says; empty where nothing fouls. */
export const foulWords = (fouls: number): string =>
  (fouls === 0 ? "" : `This instrument fouls in ${fouls === 1 ? "one place" : `${fouls} places`}: see the examiner's sheet before cutting metal.`);

/**
 * To a millionth (mm, or of a unit normal). Sines differ in their last bit from engine to engine; what should be nothing
 * would show it, and bytes would not be the same everywhere.
 */
export const steady = (value: number): number => Math.round(value * 1e6) / 1e6 || 0;
