// The plans as one PDF: vector, at true scale, its texts to be searched, the letters it uses embedded, a bookmark for
// every sheet. Millimetres on the page by one scale at its head. Letters are those of the fonts that are handed in, set
// to the width the page was laid out with.
import fontkit from "@pdf-lib/fontkit";
import { strToU8, zlibSync } from "fflate";
import { PDFDocument, type PDFFont, PDFHexString, PDFName, PDFNumber, type PDFPage, type PDFRef } from "pdf-lib";
import { type Drawing, type Entity, type Face, HATCH_WIDTH_MM, hatchLines, type Ink, INKS, type LineKind, PENS, type PlanSheet, type TextEntity } from "../drawing.ts";
import { thousandths as n } from "../words.ts";

/** Bytes of a TrueType font for each face. */
export type Fonts = Readonly<Record<Face, Uint8Array>>;

const POINTS_A_MM = 72 / 25.4;
/** Height of a capital over the type size of these fonts. */
const CAPITAL = 0.729;
/** Half a circle's quarter as one Bézier curve: off by at most 0.03 % of the radius. */
const ROUND = 0.5522847498;
/** Of 9: higher ones take many times as long for a few hundredths less. */
const LEVEL = 5;

export async function plansPdf(title: string, sheets: readonly PlanSheet[], fonts: Fonts): Promise<Uint8Array> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  pdf.registerFontkit(fontkit);
  pdf.setTitle(title);
  pdf.setProducer("Endshake");
  pdf.setCreator("Endshake");
  // Of a face that no sheet uses nothing is embedded.
  const faces = new Map<Face, Letters>();
  for (const face of Object.keys(fonts) as Face[])
    if (sheets.some((s) => s.pages.some((p) => p.entities.some((e) => e.kind === "text" && e.face === face))))
      faces.set(face, lettersOf(await pdf.embedFont(fonts[face], { subset: true })));
  const marks: { readonly title: string; readonly page: PDFPage }[] = [];
  for (const sheet of sheets)
    sheet.pages.forEach((drawing, i) => {
      const page = pdf.addPage([drawing.width * POINTS_A_MM, drawing.height * POINTS_A_MM]);
      if (i === 0) marks.push({ title: sheet.title, page });
      for (const [face, { font }] of faces) page.node.setFontDictionary(PDFName.of(face), font.ref);
      const content = zlibSync(strToU8(contentOf(drawing, faces), true), { level: LEVEL });
      page.node.addContentStream(pdf.context.register(pdf.context.stream(content, { Filter: "FlateDecode" })));
    });
  bookmark(pdf, marks);
  return pdf.save({ addDefaultPage: false, objectsPerTick: Infinity });
}

/** A font and what each letter is in it: its code, and its width in thousandths of the type size. Each letter is asked for once. */
interface Letters { readonly font: PDFFont; of(letter: string): { readonly code: string; readonly width: number } }

function lettersOf(font: PDFFont): Letters {
  const known = new Map<string, { readonly code: string; readonly width: number }>();
  return {
    font,
    of(letter) {
      const before = known.get(letter);
      if (before) return before;
      const found = { code: font.encodeText(letter).asString(), width: font.widthOfTextAtSize(letter, 1000) };
      known.set(letter, found);
      return found;
    },
  };
}

function bookmark(pdf: PDFDocument, marks: readonly { readonly title: string; readonly page: PDFPage }[]): void {
  if (marks.length === 0) return;
  const { context } = pdf, root = context.nextRef(), refs: PDFRef[] = marks.map(() => context.nextRef());
  marks.forEach(({ title, page }, i) => {
    const before = refs[i - 1], after = refs[i + 1];
    context.assign(refs[i]!, context.obj({
      Title: PDFHexString.fromText(title), Parent: root, Dest: [page.ref, PDFName.of("Fit")], ...(before ? { Prev: before } : {}), ...(after ? { Next: after } : {}),
    }));
  });
  context.assign(root, context.obj({ Type: "Outlines", First: refs[0]!, Last: refs.at(-1)!, Count: PDFNumber.of(refs.length) }));
  pdf.catalog.set(PDFName.of("Outlines"), root);
  pdf.catalog.set(PDFName.of("PageMode"), PDFName.of("UseOutlines"));
}

function contentOf(drawing: Drawing, faces: ReadonlyMap<Face, Letters>): string {
  const said: string[] = [`${POINTS_A_MM} 0 0 ${POINTS_A_MM} 0 0 cm 1 j`];
  let pen = "";
  for (const e of drawing.entities) {
    const wanted = penOf(e);
    if (wanted !== pen) said.push(pen = wanted);
    said.push(e.kind === "text" ? textOf(e, faces) : `${pathOf(e)} ${e.kind === "fill" ? "f*" : "S"}`);
  }
  return said.join("\n");
}

function penOf(e: Entity): string {
  switch (e.kind) {
    case "text": case "fill": return `${colour(e.ink)} rg`;
    case "hatch": return `${colour("ink")} RG ${HATCH_WIDTH_MM} w [] 0 d`;
    default: return stroke(e.line);
  }
}

function stroke(line: LineKind): string {
  const { width, dashes, ink } = PENS[line];
  return `${colour(ink)} RG ${width} w [${dashes.join(" ")}] 0 d`;
}

const colour = (ink: Ink): string => [1, 3, 5].map((i) => n(parseInt(INKS[ink].slice(i, i + 2), 16) / 255)).join(" ");

function pathOf(e: Exclude<Entity, TextEntity>): string {
  switch (e.kind) {
    case "line": return `${p(e.x1, e.y1)} m ${p(e.x2, e.y2)} l`;
    case "polyline": return loop(e.points, e.closed);
    case "circle": return arc(e.x, e.y, e.radius, 0, 360, true);
    case "arc": return arc(e.x, e.y, e.radius, e.from, e.from + (((e.to - e.from) % 360) + 360) % 360, false);
    case "hatch": return hatchLines(e).map(([x1, y1, x2, y2]) => `${p(x1, y1)} m ${p(x2, y2)} l`).join(" ");
    case "fill": return e.loops.map((points) => loop(points, true)).join(" ");
  }
}

/** Degrees, anticlockwise; pieces of at most a quarter turn, each a cubic curve. */
function arc(x: number, y: number, radius: number, from: number, to: number, closed: boolean): string {
  const pieces = Math.max(1, Math.ceil((to - from) / 90)), step = ((to - from) / pieces) * (Math.PI / 180);
  const reach = pieces === 4 && closed ? ROUND : (4 / 3) * Math.tan(step / 4);
  const at = (a: number): readonly [number, number] => [x + radius * Math.cos(a), y + radius * Math.sin(a)];
  let a = (from * Math.PI) / 180;
  const said = [`${p(...at(a))} m`];
  for (let k = 0; k < pieces; k++) {
    const [x0, y0] = at(a), b = a + step, [x1, y1] = at(b), r = radius * reach;
    said.push(`${p(x0 - r * Math.sin(a), y0 + r * Math.cos(a))} ${p(x1 + r * Math.sin(b), y1 - r * Math.cos(b))} ${p(x1, y1)} c`);
    a = b;
  }
  return said.join(" ") + (closed ? " h" : "");
}

function loop(points: readonly number[], closed: boolean): string {
  const said: string[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) said.push(`${p(points[i]!, points[i + 1]!)} ${i === 0 ? "m" : "l"}`);
  return said.join(" ") + (closed ? " h" : "");
}

/** Letter by letter, accents composed: what is set has one code a letter and neither kerns nor joins. */
function textOf(e: TextEntity, faces: ReadonlyMap<Face, Letters>): string {
  const letters = faces.get(e.face), size = e.height / CAPITAL;
  if (!letters) return "";
  let codes = "", thousandths = 0;
  for (const letter of e.text.normalize("NFC")) {
    const { code, width } = letters.of(letter);
    codes += code;
    thousandths += width;
  }
  const natural = (thousandths * size) / 1000, squeeze = natural > 0 ? (100 * e.width) / natural : 100;
  const a = (e.turn * Math.PI) / 180, back = e.align === "left" ? 0 : e.align === "middle" ? e.width / 2 : e.width;
  const c = Math.cos(a), s = Math.sin(a);
  return `BT /${e.face} ${n(size)} Tf ${n(squeeze)} Tz ${n(c)} ${n(s)} ${n(-s)} ${n(c)} ${p(e.x - back * c, e.y - back * s)} Tm <${codes}> Tj ET`;
}

const p = (x: number, y: number): string => `${n(x)} ${n(y)}`;
