// A drawing as SVG, in true millimetres. Texts stay text; each is set to the width the page was laid out with.
import { type Drawing, type Entity, type Face, HATCH_WIDTH_MM, hatchLines, INKS, type LineKind, PENS } from "./drawing.ts";
import { typeSizeMm } from "./lettering.ts";
import { thousandths as n } from "./words.ts";

const FONTS: Readonly<Record<Face, string>> = {
  roman: `font-family="${serif()}"`,
  italic: `font-family="${serif()}" font-style="italic"`,
  figures: `font-family="${figures()}"`,
  strong: `font-family="${figures()}" font-weight="bold"`,
};

export function drawingSvg(drawing: Drawing): string {
  const { width, height, titleBlock } = drawing;
  const title = escaped(`${titleBlock.title}, ${titleBlock.owner}, sheet ${titleBlock.sheet}, mark ${titleBlock.mark}`);
  const body = runs(drawing.entities).map((run) => written(run, height)).join("\n");
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="0 0 ${n(width)} ${n(height)}" role="img">
<title>${title}</title>
<rect width="${n(width)}" height="${n(height)}" fill="#fff"/>
${body}
</svg>
`;
}

/** A stretch of entities that one element can hold. */
interface Run { readonly key: string; readonly entities: Entity[] }

function runs(entities: readonly Entity[]): Run[] {
  const found: Run[] = [];
  for (const entity of entities) {
    const key = keyOf(entity);
    const last = found.at(-1);
    if (last && last.key === key && entity.kind !== "text") last.entities.push(entity);
    else found.push({ key, entities: [entity] });
  }
  return found;
}

const keyOf = (e: Entity): string =>
  e.kind === "text" ? "text" : e.kind === "fill" ? `fill ${e.ink}` : e.kind === "hatch" ? `hatch ${e.layer}` : `${e.layer} ${e.line}`;

function written({ entities }: Run, paper: number): string {
  const [first] = entities as [Entity];
  if (first.kind === "text") return textElement(first, paper);
  const d = entities.map((e) => path(e, paper)).join("");
  if (first.kind === "fill") return `<path fill="${INKS[first.ink]}" fill-rule="evenodd" d="${d}"/>`;
  if (first.kind === "hatch") return `<path fill="none" stroke="${INKS.ink}" stroke-width="${HATCH_WIDTH_MM}" d="${d}"/>`;
  return `<path ${pen(first.line)} d="${d}"/>`;
}

function pen(line: LineKind): string {
  const { width, dashes, ink } = PENS[line];
  return `fill="none" stroke="${INKS[ink]}" stroke-width="${width}" stroke-linejoin="round"${dashes.length > 0 ? ` stroke-dasharray="${dashes.join(" ")}"` : ""}`;
}

function path(e: Entity, paper: number): string {
  switch (e.kind) {
    case "line": return `M${p(e.x1, e.y1, paper)}L${p(e.x2, e.y2, paper)}`;
    case "polyline": return loop(e.points, e.closed, paper);
    case "circle": return `M${p(e.x - e.radius, e.y, paper)}a${n(e.radius)} ${n(e.radius)} 0 1 0 ${n(2 * e.radius)} 0a${n(e.radius)} ${n(e.radius)} 0 1 0 ${n(-2 * e.radius)} 0Z`;
    case "arc": return arcPath(e, paper);
    case "hatch": return hatchLines(e).map(([x1, y1, x2, y2]) => `M${p(x1, y1, paper)}L${p(x2, y2, paper)}`).join("");
    case "fill": return e.loops.map((points) => loop(points, true, paper)).join("");
    case "text": return "";
  }
}

function arcPath({ x, y, radius, from, to }: Extract<Entity, { kind: "arc" }>, paper: number): string {
  const sweep = ((to - from) % 360 + 360) % 360;
  const at = (deg: number): string => p(x + radius * Math.cos((deg * Math.PI) / 180), y + radius * Math.sin((deg * Math.PI) / 180), paper);
  // Upward y turned over: anticlockwise on the paper is sweep flag 0.
  return `M${at(from)}A${n(radius)} ${n(radius)} 0 ${sweep > 180 ? 1 : 0} 0 ${at(to)}`;
}

function loop(points: readonly number[], closed: boolean, paper: number): string {
  const corners: string[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) corners.push(p(points[i]!, points[i + 1]!, paper));
  return corners.length > 0 ? `M${corners.join("L")}${closed ? "Z" : ""}` : "";
}

function textElement(e: Extract<Entity, { kind: "text" }>, paper: number): string {
  const anchor = { left: "start", middle: "middle", right: "end" }[e.align];
  const turn = e.turn === 0 ? "" : ` transform="rotate(${n(-e.turn)} ${p(e.x, e.y, paper)})"`;
  return `<text x="${n(e.x)}" y="${n(paper - e.y)}" ${FONTS[e.face]} font-size="${n(typeSizeMm(e.height))}" fill="${INKS[e.ink]}" text-anchor="${anchor}"`
    + ` textLength="${n(e.width)}" lengthAdjust="spacingAndGlyphs" xml:space="preserve"${turn}>${escaped(e.text)}</text>`;
}

function serif(): string { return "'Palatino Linotype',Palatino,'Book Antiqua','TeX Gyre Pagella','DejaVu Serif Condensed',Georgia,serif"; }
function figures(): string { return "Menlo,Consolas,'Fira Code','DejaVu Sans Mono',monospace"; }
function p(x: number, y: number, paper: number): string { return `${n(x)} ${n(paper - y)}`; }
function escaped(text: string): string { return text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]!); }
