// The marks of rings that follow the Sun, with the ephemeris they take: fetched only where an instrument has such a ring.
export { marksBy } from "../../geometry/index.ts";
