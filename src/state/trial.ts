// What is tried in height: the instrument as it would be is worked out and shown, kept as one step or put back.
import { type Command, isRefused } from "../commands/command.ts";
import type { Bench } from "./hooks.ts";

/** Shows what the command would do; what it refuses is not shown. */
export function tryOut<A>({ store, actions }: Bench, command: Command<A>, args: A): void {
  actions.keep();
  const { instrument } = store.getState();
  if (!instrument) return;
  const outcome = command.run(instrument, args);
  store.setState(isRefused(outcome) ? { saying: outcome.refused } : { trial: outcome.instrument, saying: null });
}

/** The command as one step; where nothing came of it, what was tried is put back. */
export function keepTried<A>(bench: Bench, command: Command<A>, args: A): boolean {
  putTriedBack(bench);
  return bench.actions.run(command, args);
}

export function putTriedBack({ store }: Bench): void {
  if (store.getState().trial) store.setState({ trial: null });
}
