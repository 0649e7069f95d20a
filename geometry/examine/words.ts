// What the findings call a thing: the words of geometry/bodies.
export { arborName, capital, nameOf, partName } from "../bodies/words.ts";
