// A search over several numbers of engagements: one after another, in one list.
import { bestFirst, cutSays, searchTrains, type FoundTrain, type FoundTrains, type TrainSearch } from "./trains.ts";

export interface SizesSearch extends Omit<TrainSearch, "engagements"> {
  /** Each a number of engagements; one that is there twice is searched once. */
  readonly engagements: readonly number[];
}

/** As `searchTrains`, with progress over all of them; exhaustive where every one of them is. */
export function* searchSizes({ engagements, ...search }: SizesSearch): Generator<number, FoundTrains> {
  const sizes = [...new Set(engagements)], trains: FoundTrain[] = [];
  let exhaustive = true, says: string | null = null;
  for (const [k, size] of sizes.entries()) {
    const found = yield* sharedOf(searchTrains({ ...search, engagements: size }), k / sizes.length, 1 / sizes.length);
    trains.push(...found.trains);
    exhaustive &&= found.exhaustive;
    says ??= found.says;
  }
  trains.sort(bestFirst);
  const { most = Infinity } = search, cut = trains.length > most;
  return { exhaustive: exhaustive && !cut, trains: cut ? trains.slice(0, most) : trains, says: says ?? (cut ? cutSays(most) : null) };
}

function* sharedOf<A>(run: Generator<number, A>, from: number, share: number): Generator<number, A> {
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
    yield from + share * step.value;
  }
}
