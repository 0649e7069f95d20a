// A sheet as it is shown, in pixels: a page of a PDF drawn by another reader, or an SVG drawn by the browser, and places
// of it measured by how dark they are.
import { buildSync } from "esbuild";
import type { Page } from "playwright-core";

/** Pixels to a millimetre of paper. */
const PER_MM = 8;

/** A stretch of the paper, mm from its lower left corner; `round`: only what lies within the circle that fills it. */
export interface Place { readonly x: number; readonly y: number; readonly halfX: number; readonly halfY: number; readonly round?: boolean }

interface Shown { inks?: CanvasRenderingContext2D; pdfjs?: Reader }
interface Reader {
  getDocument(from: { data: Uint8Array }): { promise: Promise<{ getPage(number: number): Promise<{ getViewport(at: { scale: number }): { width: number; height: number }; render(on: unknown): { promise: Promise<void> } }> }> };
}

/** On to a canvas of the page; gives its size in mm. */
export async function showPdf(page: Page, bytes: Uint8Array, number: number): Promise<{ width: number; height: number }> {
  const reader = buildSync({ stdin: { contents: 'export * from "unpdf/pdfjs"', resolveDir: process.cwd() }, bundle: true, format: "iife", globalName: "pdfjs", write: false, logLevel: "error" }).outputFiles[0]!.text;
  await page.evaluate(reader.replace("var pdfjs =", "globalThis.pdfjs ="));
  return page.evaluate(async ({ base64, number, perMm }) => {
    const shown = globalThis as unknown as Shown, data = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    const leaf = await (await shown.pdfjs!.getDocument({ data }).promise).getPage(number), viewport = leaf.getViewport({ scale: (perMm * 25.4) / 72 });
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(viewport.width);
    canvas.height = Math.round(viewport.height);
    const context = canvas.getContext("2d", { willReadFrequently: true })!;
    await leaf.render({ canvas, canvasContext: context, viewport }).promise;
    shown.inks = context;
    return { width: viewport.width / perMm, height: viewport.height / perMm };
  }, { base64: Buffer.from(bytes).toString("base64"), number, perMm: PER_MM });
}

export async function showSvg(page: Page, svg: string): Promise<{ width: number; height: number }> {
  return page.evaluate(async ({ svg, perMm }) => {
    // At its own size the browser makes a millimetre 96 / 25.4 pixels.
    const image = new Image();
    image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
    await image.decode();
    const larger = (perMm * 25.4) / 96, canvas = document.createElement("canvas");
    canvas.width = Math.round(image.width * larger);
    canvas.height = Math.round(image.height * larger);
    const context = canvas.getContext("2d", { willReadFrequently: true })!;
    context.scale(larger, larger);
    context.drawImage(image, 0, 0);
    (globalThis as unknown as Shown).inks = context;
    return { width: (image.width * 25.4) / 96, height: (image.height * 25.4) / 96 };
  }, { svg, perMm: PER_MM });
}

/** mm: the middle of the ink in each place, on what was shown last; NaN where there is none. */
export async function middlesOf(page: Page, places: readonly Place[]): Promise<{ x: number; y: number }[]> {
  return page.evaluate(({ places, perMm }) => {
    const { inks } = globalThis as unknown as Shown, { canvas } = inks!, { data } = inks!.getImageData(0, 0, canvas.width, canvas.height);
    return places.map(({ x, y, halfX, halfY, round }) => {
      let ink = 0, sumX = 0, sumY = 0;
      const left = Math.round((x - halfX) * perMm), right = Math.round((x + halfX) * perMm), top = Math.round(canvas.height - (y + halfY) * perMm), bottom = Math.round(canvas.height - (y - halfY) * perMm);
      for (let v = top; v < bottom; v++) for (let u = left; u < right; u++) {
        const px = (u + 0.5) / perMm, py = (canvas.height - v - 0.5) / perMm;
        if (round && ((px - x) / halfX) ** 2 + ((py - y) / halfY) ** 2 > 1) continue;
        const at = 4 * (v * canvas.width + u), dark = 255 - (data[at]! + data[at + 1]! + data[at + 2]!) / 3;
        ink += dark;
        sumX += dark * px;
        sumY += dark * py;
      }
      return { x: sumX / ink, y: sumY / ink };
    });
  }, { places, perMm: PER_MM });
}
