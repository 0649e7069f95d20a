// Finds the first place where a text stops being JSON (RFC 8259), and how deep it nests, without recursion. The words
// of the platform's own parser differ from one to the next and often leave the place out.

export interface Broken { readonly line: number; readonly column: number; readonly found: string; readonly expected: string }

/** Lists and objects inside one another at the deepest, whether or not the text is sound. */
export function nesting(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (c === '"') i = endOfString(text, i) - 1;
    else if (c === "{" || c === "[") deepest = Math.max(deepest, ++depth);
    else if (c === "}" || c === "]") depth--;
  }
  return deepest;
}

type Want = "value" | "value or ]" | "name" | "name or }" | ":" | ", or end" | "nothing more";

const SAYS: Record<Want, string> = {
  "value": "a value", "value or ]": "a value or ]", "name": "a name in double quotes", "name or }": "a name in double quotes or }",
  ":": "a colon", ", or end": "a comma, or the end of the list or object", "nothing more": "nothing more",
};

/** Where the text breaks, or null where it is sound. */
export function whereBroken(text: string): Broken | null {
  const open: string[] = [];
  let want: Want = "value";
  let i = skip(text, 0);
  for (; i < text.length; i = skip(text, i)) {
    const c = text[i] as string;
    const next = step(c, want, open);
    if (next === null) return broken(text, i, want);
    want = next;
    if (c === '"') {
      const end = endOfString(text, i);
      if (!soundString(text, i, end)) return { ...broken(text, i, want), expected: "text on one line, closed by a double quote" };
      i = end;
    } else if (/[-\dtfn]/.test(c)) {
      const word = /^(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-])/.exec(text.slice(i, i + 1000));
      if (!word) return { ...broken(text, i, want), expected: "a number such as 2.5, or true, false or null" };
      i += word[0].length;
    } else i++;
  }
  return want === "nothing more" ? null : broken(text, i, want);
}

/** What may follow once `c` is taken, or null where it may not stand there. `open` holds what is not closed yet. */
function step(c: string, want: Want, open: string[]): Want | null {
  const after = (): Want => (open.length === 0 ? "nothing more" : ", or end");
  const inside = open[open.length - 1];
  if (want === ":") return c === ":" ? "value" : null;
  if (want === "name" || want === "name or }") {
    if (c === '"') return ":";
    if (c !== "}" || want === "name") return null;
    open.pop();
    return after();
  }
  if (want === ", or end") {
    if (c === ",") return inside === "{" ? "name" : "value";
    if (c !== (inside === "{" ? "}" : "]")) return null;
    open.pop();
    return after();
  }
  if (want === "nothing more") return null;
  if (c === "]" && want === "value or ]") { open.pop(); return after(); }
  if (c === "{" || c === "[") { open.push(c); return c === "{" ? "name or }" : "value or ]"; }
  return /["\-\dtfn]/.test(c) ? after() : null;
}

function broken(text: string, at: number, want: Want): Broken {
  const before = text.slice(0, at);
  const word = /^(?:[\w.+-]{1,20}|.)/s.exec(text.slice(at, at + 20))?.[0];
  return {
    line: before.split("\n").length, column: at - before.lastIndexOf("\n"),
    found: word ?? "the end of the file", expected: SAYS[want],
  };
}

function skip(text: string, from: number): number {
  let i = from;
  while (i < text.length && " \t\n\r".includes(text[i] as string)) i++;
  return i;
}

/** A string from quote to quote, with no bare control character and no escape that JSON does not have. */
function soundString(text: string, from: number, end: number): boolean {
  if (end - from < 2 || text[end - 1] !== '"') return false;
  for (let i = from + 1; i < end - 1; i++) {
    if (text.charCodeAt(i) < 0x20) return false;
    if (text[i] === "\\" && !/^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.test(text.slice(++i, i + 5))) return false;
  }
  return true;
}

/** The place after the closing quote of the string that opens at `from`. */
function endOfString(text: string, from: number): number {
  let i = from + 1;
  while (i < text.length && text[i] !== '"') i += text[i] === "\\" ? 2 : 1;
  return Math.min(i + 1, text.length);
}
