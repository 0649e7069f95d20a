import { afterAll, beforeAll, describe, it } from "vitest";
import { type Bench, picture, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(() => bench?.close());

const SIZES = [{ width: 1440, height: 900, name: "wide" }, { width: 390, height: 844, name: "narrow" }] as const;

describe("pictures of the screen", () => {
  for (const { name, ...size } of SIZES)
    for (const dark of [false, true])
      it(`stand still at ${size.width} by ${size.height}, ${dark ? "dark" : "light"}, with a wheel that fouls in the first draft`, async () => {
        const { page, context } = await bench.open({ ...size, dark });
        await page.getByRole("button", { name: name === "narrow" ? "More" : "Examples" }).click();
        await page.getByRole("button", { name: "First draft of it" }).click();
        if (name === "narrow") await page.getByRole("button", { name: "Read", exact: true }).click();
        await page.getByRole("listbox").getByRole("option").filter({ hasText: "Wheel D1" }).first().click();
        if (name === "narrow") await page.getByRole("button", { name: "Read", exact: true }).click();
        await picture(page, `movement-${name}-${dark ? "dark" : "light"}`);
        await context.close();
      }, 240_000);

  it("of every sheet stand still", async () => {
    const { page, context } = await bench.open();
    for (const sheet of ["Numbers", "Depthing", "Dials"]) {
      await page.getByRole("tab", { name: sheet }).click();
      await picture(page, sheet.toLowerCase());
    }
    await page.getByRole("tab", { name: "Calliper" }).click();
    await page.getByRole("button", { name: /^Arbor G:/ }).click();
    await page.getByRole("button", { name: "Plant it" }).click();
    await picture(page, "calliper");
    await context.close();
  }, 240_000);
});
