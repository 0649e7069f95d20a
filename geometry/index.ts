// The public face of the kernel: what may be used from outside, each name with what it is for. It works in Node, in a
// worker and in a page alike.

// Numbers that stay exact.
/** Exact ratios: making, writing and leaving exactness. */
export { decimalRatio, ratio, toNumber, writeRatio, type Ratio } from "./numeric/ratio.ts";

// Finding numbers, and dividing.
/** Every train of so many engagements within an error of a wanted ratio; as a whole, or step by step with progress. */
export { findTrains, largestOf, searchTrains, teethTotal, type FoundTrain, type FoundTrains, type TrainSearch } from "./numbers/trains.ts";
/** Continued fractions, convergents and the mediant tree. */
export { continuedFraction, convergents, mediantPath, primeFactors, type MediantStep } from "./numbers/fractions.ts";
/** How a dividing head gives a count: plain, compound, differential. */
export { canDivide, divide, ORDINARY_HEAD, type Dividing, type Head } from "./numbers/dividing.ts";
