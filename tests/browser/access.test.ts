import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { violations } from "./axe.ts";
import { type Bench, startBench } from "./page.ts";

let bench: Bench;
beforeAll(async () => { bench = await startBench(); });
afterAll(() => bench?.close());

describe("axe finds nothing wrong", () => {
  for (const dark of [false, true])
    it(`on any sheet, ${dark ? "dark" : "light"}, with a finding chosen`, async () => {
      const { page, context } = await bench.open({ dark });
      await page.getByRole("button", { name: "Examples" }).click();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "First draft of it" }).click();
      await page.getByRole("listbox").getByRole("option").first().click();
      await page.getByRole("button", { name: "I have already spoiled this" }).click();
      await page.getByRole("region", { name: "Ways out" }).waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Back to the findings" }).click();
      await page.getByRole("button", { name: "Kept work" }).click();
      await page.getByRole("dialog", { name: "Kept work" }).waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("dialog", { name: "Kept work" }).getByRole("button", { name: "Close" }).click();
      for (const sheet of ["Numbers", "Depthing", "Dials", "Putting together", "Workshop", "Making", "Calliper"]) {
        await page.getByRole("tab", { name: sheet }).click();
        await page.getByRole("tabpanel", { name: sheet }).locator("h2").first().waitFor();
        expect(await violations(page)).toEqual([]);
      }
      await page.getByRole("button", { name: "Plant it" }).click();
      await page.getByRole("button", { name: "Settings" }).click();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("button", { name: "Settings" }).click();
      await page.getByRole("button", { name: "Begin afresh" }).click();
      await page.getByRole("button", { name: "A plate of your own" }).click();
      expect(await violations(page)).toEqual([]);
      await page.getByRole("textbox", { name: "diameter" }).fill("90");
      await page.getByRole("button", { name: "Begin", exact: true }).click();
      await page.locator(".head .name", { hasText: "A new instrument" }).waitFor();
      await context.close();
    }, 240_000);

  it("on a narrow screen, with its menu open and the findings read", async () => {
    const { page, context } = await bench.open({ width: 390, height: 844, touch: true });
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "Read", exact: true }).click();
    await page.getByRole("button", { name: "More" }).click();
    expect(await violations(page)).toEqual([]);
    await context.close();
  });
});

describe("the keyboard", () => {
  it("goes through head, movement, sheets, examiner's sheet and crank, in that order", async () => {
    const { page, context } = await bench.open();
    const parts: string[] = [];
    for (let i = 0; i < 120 && parts.at(-1) !== "crank"; i++) {
      await page.keyboard.press("Tab");
      const part = await page.evaluate(() => document.activeElement?.closest(".head, .movement, .sheets, .examiner, .crank")?.className.split(" ")[0] ?? "");
      if (part !== "" && part !== parts.at(-1)) parts.push(part);
    }
    expect(parts.filter((p) => p !== "examiner")).toEqual(["head", "movement", "sheets", "crank"]);
    await context.close();
  });
});

describe("the narrow screen", () => {
  it("has targets of 40 pixels or more, and nothing that runs over its edge", async () => {
    const { page, context } = await bench.open({ width: 390, height: 844, touch: true });
    // Letters in the movement mark arbors that are themselves the targets.
    const small = await page.evaluate(() => [...document.querySelectorAll("button, [role=tab]")].filter((b) => b.closest(".scene") === null)
      .map((b) => ({ name: b.textContent ?? "", height: b.getBoundingClientRect().height, shown: (b as HTMLElement).offsetParent !== null }))
      .filter((b) => b.shown && b.height < 40 - 0.5).map((b) => b.name));
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await context.close();
  });
});
