// The Numbers sheet in a browser: a search that is proven, refused and stopped; a train put in and taken back.
import { afterAll, beforeAll, expect, it } from "vitest";
import { type Bench, picture, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(async () => { await bench.close(); });

it("finds every train within the limits, says so, and marks the one in use", async () => {
  const { page, context, complaints, requests } = await bench.open();
  await page.getByRole("tab", { name: "Numbers" }).click();
  await page.getByText("Complete").first().waitFor();
  expect(await page.getByRole("table", { name: "Trains found" }).getByText("in use").count()).toBe(1);
  await picture(page, "numbers-1440");
  const first = () => page.getByRole("table", { name: "Trains found" }).getByRole("row").nth(1).textContent();
  const byError = await first();
  for (let k = 0; k < 5; k++) await page.getByRole("slider", { name: "Small wheels", exact: true }).press("ArrowRight");
  await page.getByText(/^Best weighs/).waitFor();
  expect(await first()).not.toBe(byError);
  await page.getByLabel("Engagements", { exact: true }).fill("3");
  await page.getByText(/one more or one less is wanted/).waitFor();
  expect(await page.getByRole("button", { name: "Search", exact: true }).first().isDisabled()).toBe(true);
  expect(complaints).toEqual([]);
  expect(requests.every((r) => r.startsWith(bench.address) || r.startsWith("blob:") || r.startsWith("data:"))).toBe(true);
  await context.close();
});

it("puts a train in at one step, and takes it back at one", async () => {
  const { page, context } = await bench.open();
  await page.getByRole("tab", { name: "Numbers" }).click();
  await page.getByText("Complete").first().waitFor();
  const table = page.getByRole("table", { name: "Trains found" });
  await table.getByRole("button").first().press("Enter");
  await page.getByRole("button", { name: "Put into the instrument" }).click();
  await page.getByText("Places and levels are worked again", { exact: false }).waitFor();
  await page.getByRole("button", { name: "Take the best so far", exact: true }).click();
  await expect.poll(() => page.getByRole("button", { name: /^Undo/ }).isEnabled()).toBe(true);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(() => page.getByRole("button", { name: /^Undo/ }).isEnabled()).toBe(false);
  await context.close();
});

it("stands on a narrow screen, in the dark too", async () => {
  for (const dark of [false, true]) {
    const { page, context, complaints } = await bench.open({ width: 390, height: 844, dark });
    await page.getByRole("tab", { name: "Numbers" }).click();
    await page.getByText("Complete").first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await picture(page, `numbers-390${dark ? "-dark" : ""}`);
    expect(complaints).toEqual([]);
    await context.close();
  }
});
