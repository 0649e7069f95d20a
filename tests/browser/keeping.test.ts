import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ARGS, COARSE, picture } from "./page.ts";
import { cleared, freshFolder, type Kept, keptBrowser, type Served, serve } from "./served.ts";

const BUILT = process.env.BUILT ?? "dist";
let served: Served, browser: Browser;
beforeAll(async () => {
  served = await serve(BUILT);
  const executablePath = process.env.CHROMIUM;
  if (!executablePath) throw new Error("CHROMIUM must name the browser to test with");
  browser = await chromium.launch({ executablePath, args: [...ARGS] });
});
afterAll(async () => {
  await browser?.close();
  await served?.goAway();
});

interface Asked { readonly worker?: boolean; readonly init?: () => void; readonly width?: number; readonly height?: number; readonly dark?: boolean }
async function withContext(asked: Asked, test: (context: BrowserContext) => Promise<void>): Promise<void> {
  const { width = 1440, height = 900 } = asked;
  const context = await browser.newContext({
    viewport: { width, height }, deviceScaleFactor: COARSE, colorScheme: asked.dark ? "dark" : "light", reducedMotion: "reduce", serviceWorkers: asked.worker ? "allow" : "block",
  });
  if (asked.init) await context.addInitScript(asked.init);
  try {
    await test(context);
  } finally {
    await context.close();
  }
}
const openTab = async (context: BrowserContext, address = served.address): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(address);
  await page.locator(".counts").first().waitFor();
  return page;
};

const xOfG = (page: Page) => page.getByRole("textbox", { name: "x of G in mm" });
/** Plants G at this x, as one step. */
async function plantG(page: Page, x: string): Promise<void> {
  if (!await xOfG(page).isVisible()) await page.getByRole("button", { name: /^Arbor G:/ }).click();
  await xOfG(page).fill(x);
  await xOfG(page).press("Enter");
  await page.getByRole("button", { name: "Undo: G planted" }).waitFor();
}
const kept = (page: Page) => page.locator(".head .keeping", { hasText: "kept in this browser" }).waitFor();
const notice = (page: Page, text: string | RegExp) => page.locator(".notice", { hasText: text });
const keptWork = async (page: Page) => {
  await page.getByRole("button", { name: "Kept work" }).click();
  return page.getByRole("dialog", { name: "Kept work" });
};

describe("a browser that is killed", () => {
  it("loses nothing that was done: every step is there when it is opened again, and can be undone", async () => {
    const folder = freshFolder();
    const started: Kept[] = [];
    const start = async () => {
      const one = await keptBrowser(folder);
      started.push(one);
      return one;
    };
    try {
      const first = await start();
      const page = await first.open(served.address);
      for (const x of ["7", "7.5", "8"]) await plantG(page, x);
      await kept(page);
      await first.kill();
      const second = await start();
      const again = await second.open(served.address);
      if (!await xOfG(again).isVisible()) await again.getByRole("button", { name: /^Arbor G:/ }).click();
      await expect.poll(() => xOfG(again).inputValue()).toBe("8.000");
      for (const before of ["7.500", "7.000"]) {
        await again.getByRole("button", { name: "Undo: G planted" }).click();
        await expect.poll(() => xOfG(again).inputValue()).toBe(before);
      }
    } finally {
      for (const one of started) await one.kill();
      cleared(folder);
    }
  }, 240_000);
});

describe("a second tab", () => {
  it("says that the first has the instrument, follows it, and makes a copy at its own first step", () => withContext({}, async (context) => {
    const first = await openTab(context);
    await plantG(first, "7");
    await kept(first);
    const second = await openTab(context);
    await notice(second, "open in another tab").waitFor();
    await plantG(first, "7.25");
    await second.getByRole("button", { name: /^Arbor G:/ }).click();
    await expect.poll(() => xOfG(second).inputValue()).toBe("7.250");
    await plantG(second, "9");
    await expect.poll(() => second.locator(".head .name").textContent()).toBe("Estuary dial, copy");
    await plantG(first, "7.5");
    await kept(first);
    await first.reload();
    await expect.poll(() => xOfG(first).inputValue()).toBe("7.500");
    const dialog = await keptWork(first);
    const names = dialog.getByRole("list", { name: "Instruments kept in this browser" }).locator("i");
    await expect.poll(() => names.allTextContents().then((all) => [...all].sort())).toEqual(["Estuary dial", "Estuary dial, copy"]);
  }), 240_000);
});

describe("a store that is full", () => {
  it("is said at once; the work stays in hand and can be saved, and is kept once there is room", () => withContext({
    init: () => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: Parameters<IDBObjectStore["put"]>) {
        if ((window as unknown as { full?: boolean }).full) throw new DOMException("full", "QuotaExceededError");
        return put.apply(this, args);
      };
    },
  }, async (context) => {
    const page = await openTab(context);
    await page.evaluate(() => { (window as unknown as { full: boolean }).full = true; });
    await plantG(page, "7");
    await notice(page, "no room left").waitFor();
    expect(await xOfG(page).inputValue()).toBe("7.000");
    await page.evaluate(() => { delete (window as { showSaveFilePicker?: unknown }).showSaveFilePicker; });
    const [download] = await Promise.all([page.waitForEvent("download"), notice(page, "no room left").getByRole("button", { name: "Save to a file" }).click()]);
    expect(readFileSync(await download.path(), "utf8")).toContain('"Estuary dial"');
    await page.evaluate(() => { (window as unknown as { full: boolean }).full = false; });
    await notice(page, "no room left").getByRole("button", { name: "Try again" }).click();
    await expect.poll(() => notice(page, "no room left").count()).toBe(0);
  }));

  it("or refused altogether leaves everything to be done, and says so from the start", () => withContext({
    init: () => { IDBFactory.prototype.open = () => { throw new DOMException("no", "SecurityError"); }; },
  }, async (context) => {
    const page = await openTab(context);
    await notice(page, "does not let Endshake keep anything").waitFor();
    await plantG(page, "7");
    expect(await xOfG(page).inputValue()).toBe("7.000");
  }));
});

describe("files", () => {
  it("are written to the same file again without asking, are saved only when written, and carry the day book where it is wished", () => withContext({
    init: () => {
      const own = window as unknown as { asked: number; showSaveFilePicker: unknown };
      own.asked = 0;
      own.showSaveFilePicker = async ({ suggestedName }: { suggestedName: string }) => {
        own.asked++;
        return (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });
      };
    },
  }, async (context) => {
    const page = await openTab(context);
    const state = page.locator(".head .state").first();
    const written = () => page.evaluate(async () => (await (await (await navigator.storage.getDirectory()).getFileHandle("estuary-dial.instrument.json")).getFile()).text());
    await plantG(page, "7");
    expect(await state.textContent()).toBe("not saved");
    await page.keyboard.press("Control+s");
    await expect.poll(() => state.textContent()).toBe("saved");
    expect(JSON.parse(await written())).not.toHaveProperty("dayBook");
    const dialog = await keptWork(page);
    await dialog.getByRole("radio", { name: "Day book" }).click();
    await dialog.getByRole("radio", { name: "written" }).click();
    await dialog.getByRole("button", { name: "Close" }).click();
    await expect.poll(() => state.textContent()).toBe("not saved");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect.poll(() => state.textContent()).toBe("saved");
    const book = (JSON.parse(await written()) as { dayBook: { says: string }[] }).dayBook.map((e) => e.says);
    expect(book).toEqual(["G planted", "saved as estuary-dial.instrument.json", "day book put in the file"]);
    expect(await page.evaluate(() => (window as unknown as { asked: number }).asked)).toBe(1);
  }));
});

describe("kept work", () => {
  it("takes over what an earlier version kept, once", () => withContext({}, async (context) => {
    const text = readFileSync(join(BUILT, "instruments/going-train.instrument.json"), "utf8");
    const blank = await context.newPage();
    await blank.goto(`${served.address}mark.svg`);
    await blank.evaluate((t) => localStorage.setItem("endshake.work", JSON.stringify({ text: t, history: { past: [], future: [], savedAt: null }, file: null })), text);
    await blank.close();
    const page = await openTab(context);
    expect(await page.locator(".head .name").textContent()).toBe((JSON.parse(text) as { name: string }).name);
    await expect.poll(() => page.evaluate(() => localStorage.getItem("endshake.work"))).toBeNull();
  }));

  for (const [width, height, size, dark] of [[1440, 900, "wide", false], [390, 844, "narrow", true]] as const)
      it(`is named, copied, deleted and put back, and compared: pictures at ${width} by ${height}, ${dark ? "dark" : "light"}`, () => withContext({ width, height, dark }, async (context) => {
        const page = await openTab(context);
        if (size === "narrow") await page.getByRole("tab", { name: "Calliper" }).click();
        await page.getByRole("button", { name: /^Arbor G:/ }).click();
        for (const x of ["7", "12"]) {
          await xOfG(page).fill(x);
          await xOfG(page).press("Enter");
        }
        if (size === "narrow") await page.getByRole("button", { name: "More" }).click();
        const dialog = await keptWork(page);
        await dialog.getByRole("button", { name: "Copy Estuary dial", exact: true }).click();
        await dialog.getByRole("button", { name: "Rename Estuary dial, copy", exact: true }).click();
        await dialog.getByRole("textbox", { name: "New name" }).fill("Ebb dial");
        await dialog.getByRole("button", { name: "Name it" }).click();
        await dialog.getByRole("button", { name: "Copy Ebb dial", exact: true }).click();
        await dialog.getByRole("button", { name: "Delete Ebb dial, copy", exact: true }).click();
        await dialog.getByRole("button", { name: "Put back Ebb dial, copy" }).waitFor();
        await picture(page, `kept-${size}-${dark ? "dark" : "light"}`);
        await dialog.getByRole("button", { name: "Put back Ebb dial, copy" }).click();
        await dialog.getByRole("button", { name: "Open Ebb dial, copy", exact: true }).waitFor();
        await dialog.getByRole("radio", { name: "Compare" }).click();
        await dialog.getByRole("cell", { name: "G", exact: true }).waitFor();
        await dialog.getByRole("heading", { name: /^Findings gained/ }).waitFor();
        await picture(page, `compared-${size}-${dark ? "dark" : "light"}`);
        await dialog.getByRole("combobox").selectOption({ label: "before: G planted" });
        await dialog.getByRole("radio", { name: "Day book" }).click();
        await dialog.getByRole("cell", { name: "G planted" }).first().waitFor();
        await picture(page, `day-book-${size}-${dark ? "dark" : "light"}`);
      }), 240_000);

  it("goes back to any of the last steps by its name", () => withContext({}, async (context) => {
    const page = await openTab(context);
    for (const x of ["7", "8", "9"]) await plantG(page, x);
    await page.getByRole("button", { name: "Steps" }).click();
    await picture(page, "steps");
    await page.getByRole("button", { name: "As it was at first" }).click();
    expect(await page.locator(".head .state").first().textContent()).toBe("unchanged");
    await page.getByRole("button", { name: "Steps" }).click();
    await page.getByRole("button", { name: "Undone: G planted" }).first().click();
    await expect.poll(() => xOfG(page).inputValue()).toBe("9.000");
  }));
});

describe("without a network", () => {
  const ready = (page: Page) => page.evaluate(async () => { await navigator.serviceWorker.ready; });

  it("the whole of it works after the first visit, and it can be installed", () => withContext({ worker: true }, async (context) => {
    const page = await openTab(context);
    await ready(page);
    const manifest = await page.evaluate(async () => (await fetch(document.querySelector<HTMLLinkElement>("link[rel=manifest]")!.href)).json() as Promise<{ icons: { src: string }[] }>);
    for (const { src } of manifest.icons) expect((await page.request.get(new URL(src, served.address).href)).ok()).toBe(true);
    await plantG(page, "7");
    await kept(page);
    // What only makes files comes last, by itself.
    const built = readdirSync(BUILT, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile() && entry.name !== "offline.js").length;
    await expect.poll(() => page.evaluate(async () => {
      const stores = await Promise.all((await caches.keys()).map(async (name) => (await (await caches.open(name)).keys()).length));
      return stores.reduce((sum, of) => sum + of, 0);
    })).toBe(built);
    await served.goAway();
    try {
      await page.reload();
      await page.locator(".counts").first().waitFor();
      await expect.poll(() => xOfG(page).inputValue()).toBe("7.000");
      for (const tab of await page.getByRole("tab").all()) {
        await tab.click();
        await page.getByRole("tabpanel").locator("h2").first().waitFor();
      }
      await page.getByRole("button", { name: "Examples" }).click();
      await page.getByRole("button", { name: "Going train", exact: true }).click();
      await page.locator(".head .name", { hasNotText: "Estuary" }).waitFor();
      await (await keptWork(page)).getByRole("button", { name: "Close" }).click();
      const other = await openTab(context);
      await other.locator(".movement canvas").waitFor();
    } finally {
      await served.comeBack();
    }
  }), 240_000);

  it("a newer build is announced in words, waits, and opens when asked with all work kept", async () => {
    const folder = freshFolder();
    cpSync(BUILT, folder, { recursive: true });
    const own = await serve(folder);
    try {
      await withContext({ worker: true }, async (context) => {
        const first = await openTab(context, own.address);
        await ready(first);
        await first.reload();
        await first.locator(".counts").first().waitFor();
        await plantG(first, "7");
        await kept(first);
        const page = readFileSync(join(folder, "index.html"), "utf8");
        writeFileSync(join(folder, "index.html"), page.replace("<body>", '<body data-build="newer">'));
        const worker = readFileSync(join(folder, "offline.js"), "utf8");
        writeFileSync(join(folder, "offline.js"), worker.replace(/"[0-9a-f]{16}"/, '"0123456789abcdef"'));
        await first.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update().then(() => undefined));
        await notice(first, "A newer Endshake is here").waitFor();
        await first.reload();
        await first.locator(".counts").first().waitFor();
        expect(await first.locator("body").getAttribute("data-build")).toBeNull();
        await notice(first, "A newer Endshake is here").waitFor();
        await picture(first, "newer");
        await notice(first, "A newer Endshake is here").getByRole("button", { name: "Open it now" }).click();
        await first.locator("body[data-build=newer]").waitFor();
        await first.locator(".counts").first().waitFor();
        await expect.poll(() => xOfG(first).inputValue()).toBe("7.000");
      });
    } finally {
      await own.goAway();
      cleared(folder);
    }
  }, 240_000);
});
