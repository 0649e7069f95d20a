// The fonts as the terminal reads them, for tests that make a PDF.
import { readFileSync } from "node:fs";
import { FONT_FILES } from "../../../src/paper/files/fonts.ts";
import type { Fonts } from "../../../src/paper/files/pdf.ts";

export const fonts = Object.fromEntries(Object.entries(FONT_FILES).map(([face, file]) => [face, new Uint8Array(readFileSync(`node_modules/${file}`))])) as unknown as Fonts;
