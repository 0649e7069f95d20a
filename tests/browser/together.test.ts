// The Putting together sheet in a browser: steps held over the movement and played, what comes out first, heats, the error
// at each pointer; a finding that shows only at certain turns, and the whole turn for years.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Bench, picture, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(async () => { await bench.close(); });

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
interface Violation { readonly id: string; readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[] }
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => (await (window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe.run()).violations);
  return found.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html} ${n.failureSummary ?? ""}`));
}
const opened = async (page: Page) => {
  await page.getByRole("tab", { name: "Putting together" }).click();
  await page.getByRole("heading", { name: "Putting together" }).waitFor();
};
const player = (page: Page) => page.getByRole("group", { name: "Putting together" });

/** An arm on B that passes a pin on A once in 61 turns. */
const ONCE = {
  endshake: 1, name: "Once in sixty-one turns", frame: { plates: [], pillars: [] }, engagements: [{ driver: "a", driven: "b" }],
  input: { arbor: "A", days: 1, sense: "clockwise" }, practice: { sideshake: 0.02, runout: 0.01, wobble: 0, endshake: 0.1 },
  arbors: [
    { id: "A", x: 0, y: 0, diameter: 2, foot: 0, head: 30, parts: [{ id: "a", kind: "wheel", teeth: 40, z: 2, thickness: 1 }, { id: "p", kind: "pin", radius: 24, angle: 0, diameter: 2, z: 15, thickness: 4 }] },
    { id: "B", x: 50.5, y: 0, diameter: 2, foot: 0, head: 30, parts: [{ id: "b", kind: "wheel", teeth: 61, z: 2, thickness: 1 }, { id: "m", kind: "arm", length: 26, width: 4, angle: 140, z: 16, thickness: 2 }] },
  ],
};
const drop = (page: Page, content: string) => page.evaluate((text) => {
  const files = new DataTransfer();
  files.items.add(new File([text], "once.instrument.json", { type: "application/json" }));
  document.querySelector(".bench")?.dispatchEvent(new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: files }));
}, content);

describe("the putting together sheet", () => {
  it("holds a chosen step over its place, steps on and back, and stands whole when it is left", async () => {
    const { page, context, complaints } = await bench.open();
    await opened(page);
    await page.locator(".together .steps button", { hasText: "Arbor G" }).click();
    await player(page).getByText("Step 8 of 13").waitFor();
    expect(await page.locator(".letters button[data-arbor=J]").count()).toBe(0);
    expect(await page.locator(".letters button[data-arbor=G]").count()).toBe(1);
    expect(Number(await player(page).locator(".figure").textContent())).toBeGreaterThan(5);
    await picture(page, "together-1440");
    await player(page).getByRole("button", { name: "Step on" }).click();
    await player(page).getByText("Step 9 of 13").waitFor();
    expect(await page.locator(".letters button[data-arbor=J]").count()).toBe(1);
    await player(page).getByRole("button", { name: "Step back" }).click();
    await player(page).getByText("Step 8 of 13").waitFor();
    await page.getByRole("tab", { name: "Calliper" }).click();
    await expect.poll(() => page.locator(".letters button[data-arbor=R]").count()).toBe(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("plays to the end, and stops where it is told", async () => {
    const { page, context } = await bench.open({ still: false });
    await opened(page);
    await player(page).getByRole("button", { name: "Play" }).click();
    await player(page).getByText("Step 2 of 13").waitFor();
    await player(page).getByRole("button", { name: "Stop" }).click();
    const words = await player(page).locator("b").textContent();
    await page.waitForTimeout(2000);
    expect(await player(page).locator("b").textContent()).toBe(words);
    await player(page).getByRole("button", { name: "Take down" }).click();
    await player(page).getByText("Step 1 of 13").waitFor();
    await context.close();
  });

  it("says what comes out first, the heats, the reach of the tools and the error at each pointer, at both widths and looks, with nothing that axe finds wrong", async () => {
    for (const [dark, width, height] of [[false, 1440, 900], [true, 390, 844]] as const) {
      const { page, context } = await bench.open({ dark, width, height });
      await opened(page);
      await page.getByLabel("to have out").selectOption("D");
      await page.getByText("First out: R, Q2, J2, S, T, front; then D.").waitFor();
      const table = page.getByRole("table", { name: "Error at each pointer" });
      expect(await table.getByRole("row").count()).toBeGreaterThan(10);
      const before = await table.textContent();
      await page.getByLabel("eye aside by").fill("0");
      await page.getByLabel("eye aside by").press("Enter");
      await expect.poll(() => table.textContent()).not.toBe(before);
      expect(await table.textContent()).not.toContain("parallax");
      expect(await violations(page)).toEqual([]);
      await page.locator(".heats").scrollIntoViewIfNeeded();
      await picture(page, `together-heats-${width}`);
      await context.close();
    }
  });

  it("shows every objection of the heats with its ladder, and cautions always", async () => {
    const { page, context } = await bench.open();
    await page.getByRole("button", { name: "Examples" }).click();
    await page.getByRole("button", { name: "First draft of it" }).click();
    await opened(page);
    await page.locator(".heats figcaption", { hasText: "C2 at 660 °C undoes C3" }).waitFor();
    expect(await page.locator(".heats .limit").count()).toBeGreaterThan(0);
    expect(await page.getByRole("note", { name: "Cautions" }).textContent()).toContain("cadmium");
    await context.close();
  });
});

describe("a finding that shows only at certain turns", () => {
  it("turns the crank to its turn, and a little before and after", async () => {
    const { page, context } = await bench.open();
    await drop(page, JSON.stringify(ONCE));
    await page.locator(".head .name", { hasText: "Once in sixty-one turns" }).waitFor();
    await page.getByRole("option", { name: /pin p and arm m|arm m and pin p/i }).click();
    const when = page.getByRole("group", { name: "When it shows" });
    await when.getByText("Comes round every 61 turns").waitFor();
    const turns = async () => Number(await page.getByLabel("Turns of the crank").inputValue());
    const first = await turns();
    expect(first).toBeGreaterThan(0);
    await when.getByRole("button", { name: "A little after" }).click();
    await expect.poll(turns).toBeGreaterThan(first);
    await when.getByRole("button", { name: "First" }).click();
    await when.getByRole("button", { name: "A little before" }).click();
    await expect.poll(turns).toBeLessThan(first);
    await picture(page, "when-1440");
    await page.getByRole("button", { name: "Turn it for a thousand years" }).click();
    const years = page.getByRole("group", { name: "Turn it for years" });
    await years.getByRole("button", { name: "Turn", exact: true }).click();
    await years.getByText(/In 1000 years: \d+ that come/).waitFor();
    expect(await violations(page)).toEqual([]);
    await context.close();
  });
});
