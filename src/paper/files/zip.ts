// Several files as one archive that is the same byte for byte every time: every entry bears the first moment an archive
// can name.
import { zipSync } from "fflate";
import type { OutFile } from "./file.ts";

export function zipOf(files: readonly OutFile[]): Uint8Array {
  // By the local clock, as the archive counts: the same bytes in every time zone.
  return zipSync(Object.fromEntries(files.map((f) => [f.name, f.bytes])), { level: 6, mtime: new Date(1980, 0, 1) });
}
