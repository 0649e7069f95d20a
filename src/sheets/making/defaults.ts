// What a field stands at where the maker says nothing, and where that comes from: the practice, the gearing, or what is
// worked out. Beside a measured figure: the drawn one.
import { drawnTipRadius, GEARING, gearingOf, isToothed, type Movement, type Part, PRACTICE, practiceOf } from "../../../geometry/index.ts";
import { type Path, valueAt } from "../../document/index.ts";

export interface Default { readonly value: unknown; readonly from: string }

export function defaultFor(movement: Movement, path: Path): Default | null {
  const { instrument } = movement, [first, , third] = path, field = String(path.at(-1));
  if (path.length === 2 && first === "practice") return of(PRACTICE, field, "usual");
  if (path.length === 2 && first === "gearing") return of(GEARING, field, "usual");
  if (first === "arbors" && third === "parts") return ofPart(movement, path, field);
  if (first === "arbors") return ofArbor(movement, path, field);
  if (field === "divisions" && first === "displays") return { value: 360, from: "usual" };
  if (field === "zero" && first === "dials") return { value: 90, from: "usual" };
  if (field === "ease") return { value: 0, from: "none" };
  if (first === "engagements" && field === "id") return { value: `${String(valueAt(instrument, [first, path[1] ?? 0, "driver"]))}-${String(valueAt(instrument, [first, path[1] ?? 0, "driven"]))}`, from: "its two parts" };
  return first === "frame" && (field === "x" || field === "y") ? { value: 0, from: "usual" } : null;
}

function ofPart(movement: Movement, path: Path, field: string): Default | null {
  const { instrument, practice } = movement, part = valueAt(instrument, path.slice(0, 4)) as Part | undefined;
  if (part === undefined) return null;
  if (path[4] === "measured" && path.length === 6) {
    const teeth = isToothed(part) ? movement.teeth.get(part.id) : undefined;
    if (field === "tipDiameter") return teeth ? { value: Math.round(2e4 * drawnTipRadius(teeth)) / 1e4, from: "drawn" } : null;
    return field === "thickness" ? { value: part.thickness, from: "drawn" } : of(practice, field, "from the practice");
  }
  if (path.length !== 5) return null;
  if (field === "shift" || field === "topping") return { value: 0, from: "none" };
  if (field === "dedendum") return { value: 1.25, from: "usual" };
  return field === "internal" ? { value: false, from: "usual" } : of(gearingOf(instrument), field, "from the gearing");
}

function ofArbor(movement: Movement, path: Path, field: string): Default | null {
  const at = movement.arbors[Number(path[1])];
  if (!at) return null;
  if (path[2] === "measured" && path.length === 4 && (field === "x" || field === "y")) {
    const drawn = at.arbor[field];
    return drawn === undefined ? null : { value: drawn, from: "drawn" };
  }
  if (path.length !== 3) return null;
  if (field === "x" || field === "y") return { value: Math.round(at[field] * 1e4) / 1e4, from: at.arbor.rides ? "where it rides" : at.planted === "open" ? "open, one choice" : "worked out" };
  if (field === "steady" || field === "fixed") return { value: false, from: "usual" };
  if (field === "sideshake" && at.arbor.bore !== undefined) return { value: Math.round(at.ownSideshake * 1e4) / 1e4, from: "from its bore" };
  return field === "endshake" || field === "sideshake" ? of(practiceOf(movement.instrument), field, "from the practice") : null;
}

const of = (values: object, field: string, from: string): Default | null =>
  (Object.hasOwn(values, field) ? { value: (values as Record<string, unknown>)[field], from } : null);
