// The instrument file: reading, writing and its published schema.
export { readInstrument } from "./read.ts";
export type { Read } from "./read.ts";
export type { Fault } from "./check.ts";
export { writeInstrument } from "./write.ts";
