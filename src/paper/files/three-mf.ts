// All parts as one 3MF package (3MF Core Specification 1.3, from memory): millimetres, one named object a part, laid out
// side by side on a plate, each on its lowest face; what is far longer than broad lies down.
import { meshOf, type Mesh, type Movement, thingsOf } from "../../../geometry/index.ts";
import { textFile } from "./file.ts";
import { zipOf } from "./zip.ts";
import { inParts } from "../words.ts";

/** mm: breadth of the plate that parts are laid on, and the air between them. */
const BED_MM = 220, AIR_MM = 5;
/** What stands higher than so many times its breadth is laid down. */
const SLENDER = 2.5;

export function movementThreeMf(movement: Movement, words: readonly string[]): Uint8Array {
  const objects = thingsOf(movement).map((thing) => ({ thing, mesh: meshOf(movement, thing.id) })).filter((o): o is { thing: typeof o.thing; mesh: Mesh } => o.mesh !== null);
  const places = laidOut(objects.map((o) => o.mesh));
  const metadata = [["Title", movement.instrument.name], ["Application", "Endshake"], ["Description", words.join(" ")]].filter(([, value]) => value !== "");
  const model = `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
${metadata.map(([name, value]) => `<metadata name="${name}">${escaped(value!)}</metadata>`).join("\n")}
<resources>
${objects.map(({ thing, mesh }, i) => objectXml(i + 1, `${thing.kind} ${thing.id}`, mesh)).join("\n")}
</resources>
<build>
${places.map((place, i) => `<item objectid="${i + 1}" transform="${place.map(n).join(" ")}"/>`).join("\n")}
</build>
</model>
`;
  return zipOf([textFile("[Content_Types].xml", CONTENT_TYPES), textFile("_rels/.rels", RELATIONS), textFile("3D/3dmodel.model", model)]);
}

const CONTENT_TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
`;
const RELATIONS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
`;

function objectXml(id: number, name: string, { positions, indices, weld, corners }: Mesh): string {
  const vertices = new Array<string>(corners), triangles: string[] = [];
  for (let v = 0; v < weld.length; v++) vertices[weld[v]!] ??= `<vertex x="${n(positions[3 * v]!)}" y="${n(positions[3 * v + 1]!)}" z="${n(positions[3 * v + 2]!)}"/>`;
  for (let t = 0; t < indices.length; t += 3) triangles.push(`<triangle v1="${weld[indices[t]!]!}" v2="${weld[indices[t + 1]!]!}" v3="${weld[indices[t + 2]!]!}"/>`);
  return `<object id="${id}" type="model" name="${escaped(name)}"><mesh><vertices>${vertices.join("")}</vertices><triangles>${triangles.join("")}</triangles></mesh></object>`;
}

/** Rows on the plate, in the order given; a matrix of four rows of three for each (points are rows, the move comes last). */
function laidOut(meshes: readonly Mesh[]): number[][] {
  let x = 0, y = 0, deep = 0;
  return meshes.map((mesh) => {
    const [low, high] = boundsOf(mesh), size = [high[0] - low[0], high[1] - low[1], high[2] - low[2]] as const;
    const lies = size[2] > SLENDER * Math.max(size[0], size[1]);
    const [broad, far] = lies ? [size[2], size[1]] : [size[0], size[1]];
    if (x > 0 && x + broad > BED_MM) [x, y, deep] = [0, y + deep + AIR_MM, 0];
    // Lying down: what was up points along x, what was along x points down.
    const place = lies
      ? [0, 0, -1, 0, 1, 0, 1, 0, 0, x - low[2], y - low[1], high[0]]
      : [1, 0, 0, 0, 1, 0, 0, 0, 1, x - low[0], y - low[1], -low[2]];
    x += broad + AIR_MM;
    deep = Math.max(deep, far);
    return place;
  });
}

type Corner = readonly [number, number, number];

export function boundsOf({ positions }: Mesh): readonly [Corner, Corner] {
  const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const k = i % 3, v = positions[i]!;
    if (v < low[k]!) low[k] = v;
    if (v > high[k]!) high[k] = v;
  }
  return [low as unknown as Corner, high as unknown as Corner];
}

/** To a hundred-thousandth of a mm. */
const n = (value: number): string => inParts(value, 1e5);
const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]!);
