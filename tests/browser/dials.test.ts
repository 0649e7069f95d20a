// The Dials sheet in a browser: it turns with the crank, is held against the sky, sets for a date and makes its dials.
import { afterAll, beforeAll, expect, it } from "vitest";
import { type Bench, picture, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(async () => { await bench.close(); });

it("turns its hands and its readings with the crank, and the crank to a date", async () => {
  const { page, context, complaints } = await bench.open();
  await page.getByRole("tab", { name: "Dials" }).click();
  const readings = page.getByRole("table", { name: "Readings" });
  await readings.getByText("Thursday").waitFor();
  await page.getByLabel("Turns of the crank").fill("12.5");
  await page.getByLabel("Turns of the crank").press("Enter");
  await readings.getByText("Tuesday").waitFor();
  await readings.getByText("12:00").waitFor();
  await picture(page, "dials-1440");
  await page.getByLabel("Set for").fill("2026-02-14");
  await page.getByRole("row", { name: /^14 Feb 2026/ }).waitFor();
  await page.getByLabel("Set for").fill("2026-02-01");
  await page.getByRole("button", { name: "Turn the crank there" }).click();
  await expect.poll(() => page.getByLabel("Turns of the crank").inputValue()).toBe("31.00");
  expect(await page.locator("[data-now-row] td").nth(1).textContent()).toBe("31.00");
  expect(complaints).toEqual([]);
  await context.close();
});

it("holds a pointer against the sky over years, with a table behind the plot", async () => {
  const { page, context } = await bench.open();
  await page.getByRole("tab", { name: "Dials" }).click();
  await page.getByText("A division out by drift alone").waitFor();
  await page.getByRole("radio", { name: "20 years", exact: true }).click();
  await page.getByRole("img", { name: /Error over 20 years/ }).waitFor();
  await page.getByText("The figures of the plot").click();
  expect(await page.getByRole("table", { name: "Error by date" }).getByRole("row").count()).toBeGreaterThan(20);
  await context.close();
});

it("makes the dials in the screen, one step of undo each", async () => {
  const { page, context } = await bench.open();
  await page.getByRole("tab", { name: "Dials" }).click();
  await page.getByRole("button", { name: "Draw them into the instrument" }).click();
  await page.getByLabel("Numerals of Age of the Moon").selectOption("none");
  await page.getByRole("button", { name: "Another aperture", exact: true }).first().click();
  await page.getByLabel("Radius of aperture 1 of Main dial", { exact: true }).fill("-4");
  await page.getByText(/^wanted: /).waitFor();
  await page.getByLabel("Radius of aperture 1 of Main dial", { exact: true }).press("Escape");
  await page.getByText("Marks from a table").first().click();
  const table = page.getByLabel("Table of marks of Age of the Moon", { exact: true });
  await table.fill("0 new\nsoon full");
  await page.getByText("Line 2: degrees were wanted, not “soon”.").waitFor();
  await table.fill("0 new\n200 full");
  await page.getByRole("button", { name: "Keep these marks", exact: true }).click();
  await page.getByRole("img", { name: "Main dial, drawn", exact: true }).getByText("full").waitFor();
  for (let k = 0; k < 3; k++) await page.getByRole("button", { name: /^Undo/ }).click();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await page.getByRole("button", { name: "Draw them into the instrument" }).waitFor();
  await context.close();
});

it("stands on a narrow screen, in the dark too", async () => {
  for (const dark of [false, true]) {
    const { page, context, complaints } = await bench.open({ width: 390, height: 844, dark });
    await page.getByRole("tab", { name: "Dials" }).click();
    await page.getByRole("table", { name: "Readings" }).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await picture(page, `dials-390${dark ? "-dark" : ""}`);
    expect(complaints).toEqual([]);
    await context.close();
  }
});
