// Every dial of a movement, the laws of its uneven rings and all.
import type { Movement } from "../movement.ts";
import { type Face, facesBy } from "./face.ts";
import { marksBy } from "./uneven.ts";

export const facesOf = (movement: Movement): Face[] => facesBy(movement, marksBy);
