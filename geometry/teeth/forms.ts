// Where the rest of the kernel finds the tooth forms: radii, working distance, profile and outline of any toothed part.
export { pitchRadius, workingDistance } from "./distance.ts";
export { drawnTipRadius, rootRadius, tipRadiusOf } from "./radii.ts";
