// What leaves the workshop, in the page: made there with the bytes that the terminal makes, and measured as it is shown.
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Instrument, plateFigures, windowsOf, workOut } from "../../geometry/index.ts";
import type { Drawing, Entity } from "../../src/paper/drawing.ts";
import { filesOf } from "../../src/paper/files/export.ts";
import { plansOf } from "../../src/paper/plans.ts";
import { drawingSvg } from "../../src/paper/svg.ts";
import { fonts } from "../paper/files/fonts.ts";
import { violations } from "./axe.ts";
import { middlesOf, type Place, showPdf, showSvg } from "./measured.ts";
import { type Bench, type Opened, startBench } from "./page.ts";

const dial = JSON.parse(readFileSync("public/instruments/estuary-dial.instrument.json", "utf8")) as Instrument;
const sheets = plansOf(dial), at = sheets.findIndex((s) => s.kind === "template"), template = sheets[at]!.pages[0]!;
const pageNumber = 1 + sheets.slice(0, at).reduce((sum, s) => sum + s.pages.length, 0);

let bench: Bench, opened: Opened, pdf: Uint8Array;
beforeAll(async () => {
  bench = await startBench();
  opened = await bench.open({ width: 1200, height: 800 });
});
afterAll(() => bench?.close());

describe("files made in the page", () => {
  it("[OUT1] are those of the terminal, byte for byte; axe finds nothing wrong with what they are asked for by", async () => {
    const { page } = opened;
    await page.getByRole("button", { name: "Export", exact: true }).click();
    const dialog = page.getByRole("dialog", { name: "Files for the workshop" });
    await dialog.getByRole("button", { name: "Make", exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);
    const download = page.waitForEvent("download");
    await dialog.getByRole("button", { name: "Make", exact: true }).click();
    const made = await download;
    expect(made.suggestedFilename()).toBe("plans.pdf");
    pdf = readFileSync(await made.path());
    const ours = (await filesOf(dial, fonts, { formats: ["PDF"] })).find((f) => f.name === "plans.pdf")!;
    expect(Buffer.compare(pdf, ours.bytes)).toBe(0);
    await dialog.getByRole("button", { name: "Close" }).click();
  });
});

/** The two end strokes of the level 100 mm bar, above its line, and the holes for two pillars across the plate. */
function placesOn(drawing: Drawing): { places: Place[]; wanted: number } {
  const bar = drawing.entities.find((e): e is Extract<Entity, { kind: "line" }> => e.kind === "line" && e.layer === "dimension" && Math.abs(e.x2 - e.x1 - 100) < 1e-9)!;
  const [view] = drawing.views, plate = dial.frame.plates[0]!, holes = plateFigures(workOut(dial), plate.id, windowsOf(workOut(dial)))!.holes.filter((h) => h.what === "pillar"), [a, b] = [holes[0]!, holes[2]!];
  return {
    places: [
      ...[bar.x1, bar.x2].map((x) => ({ x, y: bar.y1 + 1.2, halfX: 1, halfY: 0.4 })),
      ...[a, b].map((h) => ({ x: view!.x + h.x, y: view!.y + h.y, halfX: h.diameter / 2 + 0.4, halfY: h.diameter / 2 + 0.4, round: true })),
    ],
    wanted: Math.hypot(a.x - b.x, a.y - b.y),
  };
}

describe("a sheet as it is shown", () => {
  it("[OUT4] of the PDF measures true in pixels of another reader: paper, check bar and a distance of holes within 0.1 mm", async () => {
    const page = await opened.context.newPage(), { places, wanted } = placesOn(template), size = await showPdf(page, pdf, pageNumber);
    expect([size.width, size.height]).toEqual([expect.closeTo(210, 1), expect.closeTo(297, 1)]);
    await measured(page, places, wanted);
    await page.close();
  });
  it("[PLAN3] of SVG measures true in the browser's own pixels", async () => {
    const page = await opened.context.newPage(), { places, wanted } = placesOn(template), size = await showSvg(page, drawingSvg(template));
    expect([size.width, size.height]).toEqual([expect.closeTo(210, 0), expect.closeTo(297, 0)]);
    await measured(page, places, wanted);
    await page.close();
  });
  async function measured(page: Parameters<typeof middlesOf>[0], places: readonly Place[], wanted: number): Promise<void> {
    const [left, right, a, b] = await middlesOf(page, places);
    expect(Math.abs(right!.x - left!.x - 100)).toBeLessThan(0.1);
    expect(Math.abs(Math.hypot(a!.x - b!.x, a!.y - b!.y) - wanted)).toBeLessThan(0.1);
    // What was measured is ink, and not the middle of empty places.
    const [empty] = await middlesOf(page, [{ x: places[0]!.x + 5, y: places[0]!.y + 1, halfX: 0.5, halfY: 0.2 }]);
    expect(empty!.x).toBeNaN();
  }
});

describe("a sheet that is printed", () => {
  it("stands alone on its paper, and axe finds nothing wrong with it", async () => {
    const { page } = opened;
    // The browser's own dialog would wait for a hand.
    await page.evaluate(() => { window.print = () => { document.body.dataset.printed = "yes"; }; });
    await page.getByRole("tab", { name: "Workshop" }).click();
    await page.getByRole("region", { name: "General arrangement" }).getByRole("button", { name: "Print", exact: true }).click();
    await page.locator("body[data-printed]").waitFor();
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".to-print .leaf").count()).toBe(sheets[0]!.pages.length);
    expect(await page.locator(".head").isVisible()).toBe(false);
    expect(await violations(page)).toEqual([]);
    const [leaf] = await page.locator(".to-print .leaf").evaluateAll((leaves) => leaves.map((l) => {
      const { width, height } = l.firstElementChild!.getBoundingClientRect();
      return { width, height };
    }));
    expect([leaf!.width, leaf!.height].map((v) => (v * 25.4) / 96)).toEqual([expect.closeTo(210, 1), expect.closeTo(297, 1)]);
    await page.emulateMedia({ media: "screen" });
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    await page.locator(".to-print").waitFor({ state: "detached" });
    expect(opened.complaints).toEqual([]);
  });
});
