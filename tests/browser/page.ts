// The built viewer served on a free port, and a browser to look at it with. Every request that a page makes is kept, so
// that a test can say that none leaves.
import { mkdirSync, writeFileSync } from "node:fs";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { preview, type PreviewServer } from "vite";

export const PICTURES = "tests/pictures";
/** Plain software rendering, and no network of the browser's own. */
export const ARGS: readonly string[] = [
  "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
];

/** Device pixels to one of the page while a test works: without a graphics card each costs time. Pictures are taken at 1. */
export const COARSE = 0.5;

export interface Bench {
  readonly address: string;
  /** A page of this size, with nothing kept from before; closed with its context. */
  open(options?: Opening): Promise<Opened>;
  close(): Promise<void>;
}
export interface Opening {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly still?: boolean;
  readonly touch?: boolean;
  /** Waits for no instrument: the page is given as soon as its head stands. */
  readonly bare?: boolean;
}
export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  /** What the page complained of: errors of scripts and refused by the policy. */
  readonly complaints: readonly string[];
}

export async function startBench(): Promise<Bench> {
  const executablePath = process.env.CHROMIUM;
  if (!executablePath) throw new Error("CHROMIUM must name the browser to test with");
  mkdirSync(PICTURES, { recursive: true });
  const server: PreviewServer = await preview({ preview: { port: 0, host: "127.0.0.1" }, logLevel: "silent" });
  const address = server.resolvedUrls?.local[0];
  if (!address) throw new Error("the preview server gave no address");
  const browser: Browser = await chromium.launch({ executablePath, args: [...ARGS] });
  return {
    address,
    open: (options = {}) => openPage(browser, address, options),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

async function openPage(browser: Browser, address: string, { width = 1440, height = 900, dark = false, still = true, touch = false, bare = false }: Opening): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width, height }, deviceScaleFactor: COARSE, colorScheme: dark ? "dark" : "light", reducedMotion: still ? "reduce" : "no-preference", hasTouch: touch,
    // It would take in the whole build for every page; it has tests of its own.
    serviceWorkers: "block",
  });
  const page = await context.newPage();
  const requests: string[] = [], complaints: string[] = [];
  context.on("request", (request) => requests.push(request.url()));
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("console", (message) => { if (message.type() === "error") complaints.push(message.text()); });
  await page.goto(address);
  await page.getByRole("heading", { name: "Endshake" }).waitFor();
  if (!bare) {
    await page.locator(".counts").first().waitFor();
    await page.locator(".movement canvas").waitFor();
  }
  return { page, context, requests, complaints };
}

/** At a device pixel to one of the page, waits until two pictures in turn are the same, then keeps it under this name. */
export async function picture(page: Page, name: string): Promise<void> {
  const { width, height } = page.viewportSize()!;
  const session = await page.context().newCDPSession(page);
  const draw = async (deviceScaleFactor: number) => {
    await session.send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor, mobile: false });
    // A browser tells of another screen; the emulation does not.
    await page.evaluate(() => window.dispatchEvent(new Event("resize")));
  };
  const take = async () => (await session.send("Page.captureScreenshot", { format: "png" })).data;
  await draw(1);
  let before = "";
  for (let now = await take(); now !== before; now = await take()) before = now;
  writeFileSync(`${PICTURES}/${name}.png`, before, "base64");
  await draw(COARSE);
  await session.detach();
}
