// What a group of fields begins with when it is put in, and an edge of another shape about as large. Lengths in mm.
import { drawnTipRadius, isToothed, type Movement, type Part, type PlateOutline } from "../../../geometry/index.ts";
import { outerPlates } from "../../commands/things.ts";
import { type Path, valueAt } from "../../document/index.ts";

/** Null: the group needs nothing to begin with; its fields stand open. */
export function freshGroup(movement: Movement, path: Path): unknown {
  const { instrument } = movement, field = String(path.at(-1)), [low, high] = outerPlates(instrument);
  const arbor = movement.arbors[Number(path[1])], whose = valueAt(instrument, path.slice(0, 4)) as Part | undefined;
  const at = path[0] !== "arbors" ? undefined : arbor;
  switch (field) {
    case "foot":
    case "head": {
      const plate = field === "foot" ? low : high;
      return plate && at ? { diameter: Math.min(1.5, at.arbor.diameter), length: plate.thickness, plate: plate.id } : null;
    }
    case "rides": {
      const on = instrument.arbors.find((a) => a.id !== at?.id && a.rides === undefined);
      return on ? { on: on.id, radius: 0, angle: 0 } : null;
    }
    case "measured": {
      if (path.length === 3) return at ? { x: Math.round(at.x * 1e4) / 1e4, y: Math.round(at.y * 1e4) / 1e4 } : null;
      const teeth = whose && isToothed(whose) ? movement.teeth.get(whose.id) : undefined;
      return { thickness: whose?.thickness ?? 1, ...(teeth ? { tipDiameter: Math.round(2e4 * drawnTipRadius(teeth)) / 1e4 } : {}) };
    }
    case "join": return { by: "soft solder" };
    case "crossings": return { arms: 4, rim: 3, arm: 3, hub: Math.max(8, (at?.arbor.diameter ?? 4) + 4), angle: 0 };
    case "slot": return { width: 1, height: 2 };
    default: return null;
  }
}

export function shapeToo(outline: unknown, shape: string): PlateOutline {
  const was = outline as PlateOutline;
  const [width, height] = "circle" in was ? [was.circle.diameter, was.circle.diameter] : "rectangle" in was ? [was.rectangle.width, was.rectangle.height]
    : [0, 1].map((axis) => Math.max(...was.polygon.map((p) => p[axis] ?? 0)) - Math.min(...was.polygon.map((p) => p[axis] ?? 0))) as [number, number];
  if (shape === "circle") return { circle: { diameter: Math.max(width, height) } };
  if (shape === "rectangle") return { rectangle: { width, height } };
  return { polygon: [[-width / 2, -height / 2], [width / 2, -height / 2], [width / 2, height / 2], [-width / 2, height / 2]] };
}
