// The revision mark of a sheet: six letters and figures from just what it shows, such as k7t·4t9. Equal figures give
// equal marks on every machine, in whatever order their fields were made.

/** Without letters that are taken for others in handwriting. */
const LETTERS = "23456789abcdefghkmnpqrtuvwxyz";
/** mm, degrees: what is finer than this is not to be seen on a sheet. */
const FIGURES = 1e6;

export function markOf(shows: unknown): string {
  let rest = hashOf(plain(shows));
  let mark = "";
  for (let i = 0; i < 6; i++) {
    mark += LETTERS[Number(rest % BigInt(LETTERS.length))];
    rest /= BigInt(LETTERS.length);
  }
  return `${mark.slice(0, 3)}·${mark.slice(3)}`;
}

/** Fields in the order of their names, numbers to a millionth. */
function plain(value: unknown): string {
  if (typeof value === "number") return String(Math.round(value * FIGURES) / FIGURES || 0);
  if (typeof value === "bigint") return String(value);
  if (Array.isArray(value)) return `[${value.map(plain).join()}]`;
  if (value instanceof Float64Array) return `[${[...value].map(plain).join()}]`;
  if (value !== null && typeof value === "object") {
    const fields = Object.entries(value).filter(([, v]) => v !== undefined).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${fields.map(([k, v]) => `${k}:${plain(v)}`).join()}}`;
  }
  return JSON.stringify(value) ?? "";
}

/** 64 bits. Source: G. Fowler, L. C. Noll, P. Vo, the FNV-1a hash (from memory). */
function hashOf(text: string): bigint {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
  return hash;
}
