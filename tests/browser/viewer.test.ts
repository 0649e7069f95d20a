import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { toNumber, workOut } from "../../geometry/index.ts";
import { readInstrument } from "../../src/document/index.ts";
import { type Bench, type Opened, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(() => bench?.close());

/** Opens a page for one test and closes it after, whatever happens. */
async function withPage(options: Parameters<Bench["open"]>[0], test: (opened: Opened) => Promise<void>): Promise<void> {
  const opened = await bench.open(options);
  try {
    await test(opened);
  } finally {
    await opened.context.close();
  }
}

const openExample = async (page: Page, name: string) => {
  await page.getByRole("button", { name: "Examples" }).click();
  await page.getByRole("button", { name, exact: true }).click();
};
const findings = (page: Page) => page.locator(".findings").getByRole("option");
const seen = (page: Page) => page.locator(".movement .seen");
const tab = (page: Page, name: string) => page.getByRole("tab", { name }).click();
const drop = (page: Page, name: string, text: string) => page.evaluate(([fileName, content]) => {
  const files = new DataTransfer();
  files.items.add(new File([content!], fileName!, { type: "application/json" }));
  document.querySelector(".bench")?.dispatchEvent(new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: files }));
}, [name, text] as const);

describe("the viewer", () => {
  it("opens the default instrument: its name, its movement, and that nothing of it fouls", () => withPage({}, async ({ page, complaints }) => {
    expect(await page.locator(".head .name").textContent()).toBe("Estuary dial");
    expect(await page.locator(".counts").first().textContent()).toMatch(/^ 0 foul/);
    expect(complaints).toEqual([]);
  }));

  it("lets no request leave the page, and its policy stops one that tries", () => withPage({}, async ({ page, requests }) => {
    for (const sheet of ["Numbers", "Depthing", "Dials", "Calliper"]) await tab(page, sheet);
    await openExample(page, "Going train");
    await page.locator(".head .name", { hasNotText: "Estuary" }).waitFor();
    const stopped = await page.evaluate(async () => {
      const violated = new Promise<string>((told) => document.addEventListener("securitypolicyviolation", (e) => told(e.effectiveDirective), { once: true }));
      const fetched = await fetch("https://harbour.invalid/tide").then(() => "answered", () => "refused");
      return [fetched, await violated];
    });
    expect(stopped).toEqual(["refused", "connect-src"]);
    const outside = requests.filter((url) => !url.startsWith(bench.address) && !/^(data|blob):/.test(url) && !url.includes("harbour.invalid"));
    expect(outside).toEqual([]);
  }));

  it("turns the movement by keys", () => withPage({}, async ({ page }) => {
    const before = await seen(page).textContent();
    await page.locator(".movement .scene").getByRole("application").or(page.locator(".movement .scene [tabindex='0']")).first().focus();
    await page.keyboard.press("ArrowLeft");
    await expect.poll(() => seen(page).textContent()).not.toBe(before);
  }));

  it("turns to a finding that is chosen, marks it, and applies its cure as one step", () => withPage({}, async ({ page }) => {
    await openExample(page, "First draft of it");
    await findings(page).first().waitFor();
    const before = await seen(page).textContent();
    const cured = page.getByRole("group", { name: "Cures" }).getByRole("button").first();
    await page.getByRole("listbox").focus();
    for (let i = 0; i < await findings(page).count() && !(await cured.isVisible()); i++) await page.keyboard.press("ArrowDown");
    expect(await findings(page).and(page.locator("[aria-selected=true]")).count()).toBe(1);
    await expect.poll(() => seen(page).textContent()).not.toBe(before);
    const chosen = await findings(page).and(page.locator("[aria-selected=true]")).textContent();
    const all = () => findings(page).allTextContents();
    await cured.click();
    await expect.poll(all).not.toContain(chosen);
    await page.getByRole("button", { name: /^Undo: / }).click();
    await expect.poll(all).toContain(chosen);
  }), 180_000);

  it("shows distance and backlash while an arbor is dragged, and undoes the drag as one step", () => withPage({}, async ({ page }) => {
    const handle = page.getByRole("button", { name: /^Arbor G:/ });
    await handle.click();
    await page.getByRole("button", { name: "Plant it" }).click();
    await page.getByRole("radiogroup", { name: "How an arbor is dragged" }).last().getByRole("radio", { name: "Trying the depth" }).click();
    const backlash = page.locator("[data-backlash='E2-G1']");
    const before = await backlash.textContent();
    const box = (await handle.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 12, { steps: 3 });
    await expect.poll(() => backlash.textContent()).not.toBe(before);
    expect(await page.locator(".head .state").textContent()).toContain("Esc puts it back");
    await page.mouse.up();
    expect(await page.locator(".head .state").textContent()).toBe("not saved");
    await page.getByRole("button", { name: "Undo: G moved" }).click();
    await expect.poll(() => backlash.textContent()).toBe(before);
  }));

  it("moves an arbor by keys, 0.005 mm a step, and Escape puts it back", () => withPage({}, async ({ page }) => {
    const handle = page.getByRole("button", { name: /^Arbor G:/ });
    await handle.click();
    await page.getByRole("radiogroup", { name: "How an arbor is dragged" }).first().getByRole("radio", { name: "Trying the depth" }).click();
    const x = page.getByRole("textbox", { name: "x of G in mm" });
    const before = await x.inputValue();
    const mm = (text: string) => Number(text.replace("−", "-"));
    await handle.focus();
    for (let i = 0; i < 20; i++) await page.keyboard.press("Shift+ArrowLeft");
    for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowLeft");
    await expect.poll(async () => mm(await x.inputValue())).toBeCloseTo(mm(before) - 2.02, 3);
    await page.keyboard.press("Escape");
    await expect.poll(() => x.inputValue()).toBe(before);
    expect(await page.locator(".head .state").textContent()).toBe("unchanged");
  }));

  it("has every figure typed as well as dragged: a place, and the count of turns", () => withPage({}, async ({ page }) => {
    await page.getByRole("button", { name: /^Arbor G:/ }).click();
    const x = page.getByRole("textbox", { name: "x of G in mm" });
    await x.fill("6,5");
    await x.press("Enter");
    await expect.poll(() => x.inputValue()).toBe("6.500");
    await page.getByRole("button", { name: "Undo: G planted" }).waitFor();
    const turns = page.getByRole("textbox", { name: "Turns of the crank" });
    await turns.fill("12.5");
    await turns.press("Enter");
    await expect.poll(() => page.locator(".crank .date").textContent()).toBe("Tue 13 January 2026, 12:00");
  }));

  it("steps the crank by a tooth and shows the Moon's pointer at the exact angle", () => withPage({}, async ({ page }) => {
    await tab(page, "Dials");
    const angle = page.locator("[data-display='moon']");
    await page.getByRole("button", { name: "On a tooth" }).click();
    await page.getByRole("button", { name: "A turn", exact: true }).click();
    await page.getByRole("button", { name: "A day" }).click();
    const read = readInstrument(readFileSync("public/instruments/estuary-dial.instrument.json", "utf8"));
    if (!read.ok) throw new Error("the example was refused");
    const movement = workOut(read.instrument);
    const display = movement.displays.find((d) => d.id === "moon")!;
    const driver = movement.engagements.find((e) => movement.arbors[e.driverArbor]?.id === read.instrument.input.arbor)!.driver;
    const teeth = "leaves" in driver ? driver.leaves : "teeth" in driver ? driver.teeth : driver.trundles;
    const turned = 360 * toNumber(display.rate!) * (2 + 1 / teeth);
    const wanted = ((display.sense === "clockwise" ? Math.abs(turned) : -Math.abs(turned)) % 360 + 360) % 360;
    await expect.poll(() => angle.textContent()).toBe(`${wanted.toFixed(3)}°`);
  }));

  it("lists every fault of a file that it refuses, and what was open stays", () => withPage({}, async ({ page }) => {
    await drop(page, "harbour-clock.instrument.json", JSON.stringify({
      endshake: 1, name: "Harbour clock", frame: { plates: [], pillars: [] }, engagements: [], input: { arbor: "A", days: 1, sense: "sunwise" },
      arbors: [{ id: "A", x: 3, diameter: 2, foot: 0, head: 9, parts: [{ id: "A1", kind: "wheel", teeth: 2, z: 1, thickness: 1 }] }],
    }));
    const refusal = page.getByRole("alert");
    await refusal.getByRole("heading", { name: "This file was refused" }).waitFor();
    const rows = (await refusal.locator("tbody tr").allTextContents()).join("\n");
    for (const path of ["arbors[0].parts[0].teeth", "arbors[0]", "input.sense"]) expect(rows).toContain(path);
    expect(await page.locator(".head .name").textContent()).toBe("Estuary dial");
    await refusal.getByRole("button", { name: "Close" }).click();
    await page.getByRole("tab", { name: "Calliper" }).waitFor();
  }));

  it("keeps the work in hand over a reload, with what can be undone", () => withPage({}, async ({ page }) => {
    await page.getByRole("button", { name: /^Arbor G:/ }).click();
    const x = page.getByRole("textbox", { name: "x of G in mm" });
    const before = await x.inputValue();
    await x.fill("7");
    await x.press("Enter");
    await page.getByRole("button", { name: "A turn", exact: true }).click();
    await page.reload();
    await expect.poll(() => x.inputValue()).toBe("7.000");
    expect(await page.locator(".head .state").textContent()).toBe("not saved");
    expect(await page.getByRole("textbox", { name: "Turns of the crank" }).inputValue()).toBe("1.00");
    await page.getByRole("button", { name: "Undo: G planted" }).click();
    await expect.poll(() => x.inputValue()).toBe(before);
  }));

  it("chooses sheets by single keys, never inside a field, and not once they are turned off", () => withPage({}, async ({ page }) => {
    const now = () => page.getByRole("tab", { selected: true }).textContent();
    await page.keyboard.press("4");
    await expect.poll(now).toBe("Dials");
    await page.getByRole("textbox", { name: "Turns of the crank" }).press("1");
    expect(await now()).toBe("Dials");
    await page.getByRole("button", { name: "Settings" }).click();
    await page.getByRole("radiogroup", { name: "Single keys" }).getByRole("radio", { name: "off" }).click();
    await page.keyboard.press("1");
    expect(await now()).toBe("Dials");
  }));

  it("asks before it runs where less motion is wanted, and then goes by the tooth", () => withPage({ still: true }, async ({ page }) => {
    await page.getByRole("button", { name: "Run" }).click();
    expect(await page.getByRole("textbox", { name: "Turns of the crank" }).inputValue()).toBe("0.00");
    await page.getByRole("button", { name: "Run, by the tooth" }).click();
    await expect.poll(() => page.getByRole("textbox", { name: "Turns of the crank" }).inputValue()).not.toBe("0.00");
    await page.getByRole("button", { name: "Stop" }).click();
  }));
});
