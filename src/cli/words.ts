// What the commands of the terminal have in common: options told apart from plain words, and how a fault is said.

/** A fault in how a command was called; its message is the whole of what is printed. */
export class CallFault extends Error {}

export interface Words {
  readonly plain: readonly string[];
  /** Each option's value, or "" where it stands alone. */
  readonly options: ReadonlyMap<string, string>;
}

/** Options take a value unless they stand in `alone`. Unknown options are a fault. */
export function readWords(argv: readonly string[], withValue: readonly string[], alone: readonly string[]): Words {
  const plain: string[] = [];
  const options = new Map<string, string>();
  for (let i = 0; i < argv.length; i++) {
    const word = argv[i] ?? "";
    if (!word.startsWith("--")) { plain.push(word); continue; }
    const [name = "", given] = word.split(/=(.*)/s);
    if (alone.includes(name)) options.set(name, "");
    else if (withValue.includes(name)) {
      const value = given ?? argv[++i];
      if (value === undefined) throw new CallFault(`${name} wants a value`);
      options.set(name, value);
    } else throw new CallFault(`there is no option ${name}; there are ${[...withValue, ...alone].join(", ")}`);
  }
  return { plain, options };
}

/** A whole number from `least` up. */
export function wholeNumber(text: string, name: string, least: number): number {
  const n = Number(text);
  if (!/^\d+$/.test(text) || !Number.isSafeInteger(n) || n < least) throw new CallFault(`${name} wants a whole number from ${least}, not ${text}`);
  return n;
}

/** Runs a command; a fault in the call is one line on standard error and exit status 2. */
export async function command(run: () => Promise<number> | number): Promise<void> {
  try {
    process.exitCode = await run();
  } catch (fault) {
    if (!(fault instanceof CallFault)) throw fault;
    process.stderr.write(`${fault.message}\n`);
    process.exitCode = 2;
  }
}
