import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readInstrument } from "../../src/document/index.ts";
import { type Bench, picture, startBench } from "./page.ts";

let bench: Bench;
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "making-"));
  bench = await startBench();
});
afterAll(async () => {
  await bench?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What a hand does: goes to a control and presses it, chooses in it, or types into it. */
interface Hand {
  press(control: Locator): Promise<void>;
  choose(select: Locator, id: string): Promise<void>;
  type(field: Locator, text: string): Promise<void>;
  /** Goes to the sheet that comes last. */
  toMaking(): Promise<void>;
  save(): Promise<void>;
}

/** The Tab key until the control has the focus; arrows where it is one of several that share a stop. */
const keys = (page: Page): Hand => {
  const isFocused = (control: Locator) => control.evaluate((element) => element === document.activeElement);
  const reach = async (control: Locator) => {
    await control.waitFor();
    for (let i = 0; i < 400; i++) {
      if (await isFocused(control)) return;
      const down = await control.evaluate((element) => {
        const all = [...document.querySelectorAll(".things .thing")], at = all.indexOf(document.activeElement!), to = all.indexOf(element);
        return at < 0 || to < 0 ? 0 : to - at;
      });
      await page.keyboard.press(down > 0 ? "ArrowDown" : down < 0 ? "ArrowUp" : "Tab");
    }
    throw new Error("the keyboard does not reach it");
  };
  return {
    press: async (control) => { await reach(control); await page.keyboard.press("Enter"); },
    choose: async (select, id) => {
      await reach(select);
      await page.keyboard.type(id);
      await expect.poll(() => select.inputValue()).toBe(id);
    },
    type: async (field, text) => {
      await reach(field);
      await page.keyboard.press("ControlOrMeta+a");
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
    },
    toMaking: async () => { await reach(page.getByRole("tab", { selected: true })); await page.keyboard.press("End"); },
    save: () => page.keyboard.press("ControlOrMeta+s"),
  };
};

/** The mouse presses and chooses; figures are typed, as they are everywhere. */
const mouse = (page: Page): Hand => ({
  press: (control) => control.click(),
  choose: async (select, id) => { await select.selectOption(id); },
  type: async (field, text) => {
    await field.click({ clickCount: 3 });
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
  },
  toMaking: () => page.getByRole("tab", { name: "Making" }).click(),
  save: () => button(page, "Save").click(),
});

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name, ...(typeof name === "string" ? { exact: true } : {}) });
const thing = (page: Page, id: string) => page.locator(".thing").filter({ has: page.locator("b", { hasText: new RegExp(`^${id}$`) }) });

async function addPart(page: Page, hand: Hand, arbor: string, kind: string): Promise<void> {
  await hand.press(thing(page, arbor));
  await hand.press(button(page, "Add a part"));
  await hand.press(page.getByRole("group", { name: "Add a part" }).getByRole("button", { name: kind, exact: true }));
}

/** A drives B, and B drives C: from an empty plate to a train of four wheels. */
async function makeThreeArbors(page: Page, hand: Hand): Promise<void> {
  await hand.press(button(page, "A plate, 110 mm round"));
  await page.locator(".head .name", { hasText: "A new instrument" }).waitFor();
  await hand.toMaking();
  for (const id of ["B", "C"]) {
    await hand.press(page.getByRole("region", { name: "Arbors" }).getByRole("button", { name: "Add", exact: true }));
    await hand.press(button(page, "An arbor"));
    await thing(page, id).waitFor();
  }
  await addPart(page, hand, "A", "pinion");
  await addPart(page, hand, "B", "wheel");
  await hand.choose(page.getByRole("combobox", { name: "in gear with" }), "A1");
  await hand.press(button(page, "It drives B1"));
  await addPart(page, hand, "B", "pinion");
  await addPart(page, hand, "C", "wheel");
  await hand.type(page.getByRole("textbox", { name: "teeth" }), "20*2 + 2");
  await thing(page, "C1").filter({ hasText: "wheel 42" }).waitFor();
  await hand.choose(page.getByRole("combobox", { name: "in gear with" }), "B2");
  await hand.press(button(page, "It drives C1"));
  await thing(page, "B2–C1").waitFor();
}

/** The counts as they stand over the findings. */
const sheetOf = async (page: Page) => {
  await page.locator(".examiner .behind").waitFor({ state: "detached" });
  return (await page.locator(".counts").first().textContent())?.match(/\d+/g)?.map(Number);
};

const undo = (page: Page, says: string) => button(page, `Undo: ${says}`);

/** Drags what this handle of the elevation takes hold of by so many pixels up, as one step, and takes it back. */
async function dragUp(page: Page, handle: RegExp, says: string): Promise<void> {
  const grip = page.getByRole("slider", { name: handle });
  const before = Number(await grip.getAttribute("aria-valuenow")), box = (await grip.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - 9, { steps: 3 });
  await page.mouse.up();
  await undo(page, says).waitFor();
  expect(Number(await grip.getAttribute("aria-valuenow"))).toBeGreaterThan(before);
  await undo(page, says).click();
  await expect.poll(async () => Number(await grip.getAttribute("aria-valuenow"))).toBe(before);
}

async function dragHeights(page: Page): Promise<void> {
  await page.getByRole("tab", { name: "Calliper" }).click();
  await page.getByRole("button", { name: /^Arbor B:/ }).click();
  await button(page, "Plant it").click();
  await page.getByRole("combobox", { name: "Heights of" }).selectOption("B2");
  await dragUp(page, /^Height of B2:/, "B2 raised");
  await dragUp(page, /^Head of B:/, "B head moved");
  await dragUp(page, /^Plate front:/, "front raised");
}

/** B2 set into B1 is a foul; of the ways out of it one is looked at, taken and undone. */
async function takeWayOut(page: Page): Promise<void> {
  const height = page.getByRole("textbox", { name: "Lower face of B2 in mm" });
  const stood = await height.inputValue();
  await page.getByRole("combobox", { name: "Heights of" }).selectOption("B1");
  const low = Number(await page.getByRole("textbox", { name: "Lower face of B1 in mm" }).inputValue());
  await page.getByRole("combobox", { name: "Heights of" }).selectOption("B2");
  await height.fill(`${low} + 1`);
  await height.press("Enter");
  await undo(page, "B2 lowered").waitFor();
  await button(page, "I have already spoiled this").click();
  const ways = page.getByRole("region", { name: "Ways out" });
  const way = ways.getByRole("button", { name: /^Raise pinion B2/ });
  await way.hover();
  await way.click();
  await page.getByRole("button", { name: /^Undo: raise pinion B2/ }).click();
  await undo(page, "B2 lowered").click();
  await expect.poll(() => height.inputValue()).toBe(stood);
}

for (const by of ["keyboard", "mouse"] as const)
  describe(`an instrument of three arbors from an empty plate, by ${by} alone`, () => {
    it("is saved, stands after a reload, and is examined in the terminal with the same findings", async () => {
      const { page, context, complaints } = await bench.open();
      await page.evaluate(() => { (window as { showSaveFilePicker?: unknown }).showSaveFilePicker = undefined; });
      const hand = by === "keyboard" ? keys(page) : mouse(page);
      await hand.press(button(page, "Begin afresh"));
      await makeThreeArbors(page, hand);
      const saved = page.waitForEvent("download");
      await hand.save();
      const path = join(folder, `${by}.instrument.json`);
      await (await saved).saveAs(path);
      const shown = await sheetOf(page);
      const read = readInstrument(readFileSync(path, "utf8"));
      if ("refused" in read) throw new Error(JSON.stringify(read.refused));
      expect(read.instrument.arbors.map((a) => a.parts.map((p) => p.id))).toEqual([["A1"], ["B1", "B2"], ["C1"]]);
      expect(read.instrument.engagements).toEqual([{ driver: "A1", driven: "B1" }, { driver: "B2", driven: "C1" }]);
      await page.reload();
      await page.locator(".head .name", { hasText: "A new instrument" }).waitFor();
      await expect.poll(() => sheetOf(page)).toEqual(shown);
      const told = spawnSync(process.execPath, ["src/cli/run.mjs", "examine", path, "--json"], { encoding: "utf8" });
      const { counts, findings } = JSON.parse(told.stdout) as { counts: Record<string, number>; findings: unknown[] };
      expect(shown).toEqual([counts.foul, counts.tight, counts.free]);
      expect(await page.locator(".findings [role=option]").count()).toBe(findings.length);
      expect(complaints).toEqual([]);
      await page.getByRole("tab", { name: "Making" }).click();
      await picture(page, `making-${by}`);
      if (by === "mouse") {
        await dragHeights(page);
        await takeWayOut(page);
        expect(complaints).toEqual([]);
      }
      await context.close();
    }, 240_000);
  });
