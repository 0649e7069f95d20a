// The instruments that come with the viewer, in the order in which they are offered; the first is open at the start.

export interface Example {
  /** The name of its file, without the ending. */
  readonly file: string;
  readonly name: string;
}

export const EXAMPLES: readonly [Example, ...Example[]] = [
  { file: "estuary-dial", name: "Estuary dial" },
  { file: "estuary-dial-first-draft", name: "First draft of it" },
  { file: "small-tellurian", name: "Small tellurian" },
  { file: "going-train", name: "Going train" },
];

export const ENDING = ".instrument.json";

/** Its text. Throws where the page's own server does not give it. */
export async function exampleText({ file, name }: Example): Promise<string> {
  const answer = await fetch(`${import.meta.env.BASE_URL}instruments/${file}${ENDING}`);
  if (!answer.ok) throw new Error(`the example ${name} did not come: ${answer.status}`);
  return answer.text();
}
