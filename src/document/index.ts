// The instrument file: reading, writing and its published schema.
export { readInstrument } from "./read.ts";
export type { Read } from "./read.ts";
export type { Fault } from "./check.ts";
export { writeInstrument } from "./write.ts";
/** Everything wrong with a value as an instrument, without a text in between. */
export { notesOn } from "./faults.ts";
/** Going through an instrument by its definition. */
export { idsIn, shapeAt, valueAt, withIds, withoutThose, type Path } from "./walk.ts";
