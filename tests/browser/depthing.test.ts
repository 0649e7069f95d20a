import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Bench, type Opened, type Opening, picture, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(() => bench?.close());

/** The depthing sheet of the first draft, for one test. */
async function withSheet(options: Opening, test: (opened: Opened) => Promise<void>): Promise<void> {
  const opened = await bench.open(options), { page } = opened;
  try {
    await page.getByRole("button", { name: (options.width ?? 1440) < 700 ? "More" : "Examples" }).click();
    await page.getByRole("button", { name: "First draft of it" }).click();
    await page.locator(".head .name", { hasText: "Estuary dial, first draft" }).waitFor();
    if ((options.width ?? 1440) < 700) await page.keyboard.press("Escape");
    await page.getByRole("tab", { name: "Depthing" }).click();
    await page.locator(".engagements tbody tr").first().waitFor();
    await test(opened);
    expect(opened.complaints).toEqual([]);
  } finally {
    await opened.context.close();
  }
}

const choosePair = async (page: Page, name: string) => {
  await page.locator(".engagements").getByRole("button", { name, exact: true }).click();
  await page.locator(".depthing .window .zone").first().waitFor();
};
const distance = async (page: Page) => Number(await page.getByRole("textbox", { name: "Distance" }).inputValue());
const drawing = (page: Page) => page.locator(".depthing .magnified").first();
const standing = (page: Page) => page.locator(".head .state").textContent();

describe("the depthing sheet", () => {
  it("lists every engagement worst first, and sorts by any column", () => withSheet({}, async ({ page }) => {
    const depths = page.locator(".engagements tbody td:last-child");
    await expect.poll(() => depths.allTextContents()).toContain("right");
    const words = await depths.allTextContents();
    expect(words.lastIndexOf("shallow")).toBeLessThan(words.indexOf("right"));
    expect(await page.getByRole("columnheader", { name: "depth" }).getAttribute("aria-sort")).toBe("ascending");
    await page.getByRole("columnheader", { name: "distance" }).getByRole("button").click();
    const sorted = (await page.locator(".engagements tbody td:nth-child(2)").allTextContents()).map(Number);
    expect(sorted).toEqual([...sorted].sort((a, b) => a - b));
  }));

  it("turns with the crank, at both distances", () => withSheet({}, async ({ page }) => {
    await choosePair(page, "E2–G1");
    const places = () => page.locator(".meeting .driver").evaluateAll((groups) => groups.map((g) => g.getAttribute("transform")));
    const before = await places();
    expect(before).toHaveLength(2);
    await page.getByRole("button", { name: "On a tooth" }).click();
    await expect.poll(async () => (await places()).every((p, i) => p !== before[i])).toBe(true);
  }));

  it("moves the distance by 0.005 mm with the arrow keys and the wheel, 0.1 with Shift, and Escape puts back", () => withSheet({}, async ({ page }) => {
    await choosePair(page, "E2–G1");
    const before = await distance(page);
    await drawing(page).focus();
    await page.keyboard.press("ArrowLeft");
    await expect.poll(() => distance(page)).toBeCloseTo(before - 0.005, 3);
    await page.keyboard.press("Shift+ArrowLeft");
    await expect.poll(() => distance(page)).toBeCloseTo(before - 0.105, 3);
    expect(await standing(page)).toContain("Esc puts it back");
    await page.getByRole("slider", { name: "Fine wheel" }).hover();
    await page.mouse.wheel(0, -100);
    await expect.poll(() => distance(page)).toBeCloseTo(before - 0.1, 3);
    await page.keyboard.press("Escape");
    await expect.poll(() => distance(page)).toBeCloseTo(before, 3);
    expect(await standing(page)).toBe("unchanged");
  }));

  it("takes a typed distance as one step of undo, and the pair is right again", () => withSheet({}, async ({ page }) => {
    await choosePair(page, "E2–G1");
    expect(await page.locator(".pair .heading .end").textContent()).toContain("shallow");
    await page.getByRole("textbox", { name: "Distance" }).fill("20.7");
    await page.getByRole("button", { name: "Take the distance" }).click();
    await expect.poll(() => distance(page)).toBeCloseTo(20.7, 3);
    await expect.poll(() => page.locator(".pair .heading .end").textContent()).toContain("right");
    await page.getByRole("button", { name: "Undo: E2-G1 set to 20.700" }).click();
    await expect.poll(() => distance(page)).toBeCloseTo(21, 3);
  }));

  it("has its plots as tables, with units", () => withSheet({}, async ({ page }) => {
    await choosePair(page, "E2–G1");
    const plots = page.locator(".plot");
    await expect.poll(() => plots.locator("details").count()).toBe(2);
    for (const plot of await plots.all()) {
      await plot.locator("summary").click();
      expect(await plot.getByRole("table").locator("tbody tr").count()).toBeGreaterThan(10);
      expect(await plot.getByRole("img").getAttribute("aria-label")).toMatch(/arcminutes|mm/);
    }
  }));

  it("follows an arbor that is dragged in the movement to try its depth, live, and leaves the layout still meanwhile", () => withSheet({}, async ({ page }) => {
    await choosePair(page, "E2–G1");
    await page.getByRole("tab", { name: "Calliper" }).click();
    await page.locator(".movement .ways").getByRole("radio", { name: "Trying the depth" }).click();
    const canvas = page.locator(".movement canvas"), before = await canvas.boundingBox();
    const letter = (await page.locator(".movement .scene [data-arbor='G']").boundingBox())!;
    const [x, y] = [letter.x + letter.width / 2, letter.y + letter.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 6, y + 6, { steps: 3 });
    await page.getByRole("tabpanel", { name: "Depthing" }).locator(".meeting").first().waitFor();
    expect(await canvas.boundingBox()).toEqual(before);
    const first = await distance(page);
    const tick = await page.evaluate(() => document.querySelectorAll(".meeting").length);
    expect(tick).toBe(2);
    await page.mouse.move(x + 16, y + 16, { steps: 4 });
    await expect.poll(() => distance(page)).not.toBe(first);
    await page.mouse.up();
    await expect.poll(async () => (await canvas.boundingBox())?.width).toBeLessThan(before!.width);
    expect(await page.getByRole("button", { name: "Undo: G moved" }).count()).toBe(1);
  }));
});

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
interface Violation { readonly id: string; readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[] }

describe("its looks", () => {
  for (const { width, height, dark } of [{ width: 1440, height: 900, dark: false }, { width: 390, height: 844, dark: true }])
      it(`stand still at ${width} by ${height}, ${dark ? "dark" : "light"}, without anything that axe finds wrong or that runs over`, () =>
        withSheet({ width, height, dark, touch: width < 700 }, async ({ page }) => {
          await choosePair(page, "E2–G1");
          await page.mouse.move(0, 0);
          await picture(page, `depthing-${width < 700 ? "narrow" : "wide"}-${dark ? "dark" : "light"}`);
          await page.evaluate(AXE);
          const found = await page.evaluate(async () => (await (window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe.run()).violations);
          expect(found.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html} ${n.failureSummary ?? ""}`))).toEqual([]);
          expect(await page.locator(".sheet").evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth)).toBeLessThanOrEqual(0);
        }), 240_000);
});
