// A folder of built files on one port, which can go away and come back, and a browser that keeps what it is given in a
// folder and can be killed.
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { ARGS } from "./page.ts";

const KINDS: Readonly<Record<string, string>> = {
  ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".json": "application/json", ".svg": "image/svg+xml", ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

export interface Served {
  readonly address: string;
  goAway(): Promise<void>;
  comeBack(): Promise<void>;
}

export async function serve(folder: string): Promise<Served> {
  let server: Server | null = null;
  const listen = async (port: number) => {
    server = createServer((request, answer) => {
      const path = new URL(request.url ?? "/", "http://bench.invalid").pathname;
      const file = join(folder, path.endsWith("/") ? `${path}index.html` : path);
      if (path.includes("..") || !existsSync(file)) return void answer.writeHead(404).end();
      answer.writeHead(200, { "content-type": KINDS[extname(file)] ?? "application/octet-stream", "cache-control": "no-store" }).end(readFileSync(file));
    });
    await once(server.listen(port, "127.0.0.1"), "listening");
    return (server.address() as AddressInfo).port;
  };
  const goAway = async () => {
    const going = server;
    if (!going) return;
    server = null;
    going.closeAllConnections();
    await new Promise((done) => { going.close(done); });
  };
  const port = await listen(0);
  return { address: `http://127.0.0.1:${port}/`, goAway, comeBack: async () => { await listen(port); } };
}

export interface Kept {
  open(address: string): Promise<Page>;
  /** Ends it as a power cut would: nothing in it is told. */
  kill(): Promise<void>;
}

/** A browser on a folder of its own. */
export async function keptBrowser(folder: string): Promise<Kept> {
  const executable = process.env.CHROMIUM;
  if (!executable) throw new Error("CHROMIUM must name the browser to test with");
  const ready = join(folder, "DevToolsActivePort");
  rmSync(ready, { force: true });
  const child: ChildProcess = spawn(executable, [...ARGS, "--headless=new", "--no-startup-window", "--remote-debugging-port=0", `--user-data-dir=${folder}`], { stdio: "ignore", detached: true });
  for (let tries = 0; !existsSync(ready) || readFileSync(ready, "utf8").split("\n").length < 2; tries++) {
    if (tries > 600) throw new Error("the browser did not come up within a minute");
    await new Promise((done) => { setTimeout(done, 100); });
  }
  const [port] = readFileSync(ready, "utf8").split("\n");
  const browser: Browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  return {
    open: async (address) => {
      const page = await (browser.contexts()[0] ?? await browser.newContext()).newPage();
      await page.setViewportSize({ width: 1440, height: 900 });
      await page.goto(address);
      await page.locator(".counts").first().waitFor();
      return page;
    },
    kill: async () => {
      if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined) return;
      const gone = once(child, "exit");
      // The whole group: a helper process that outlives its parent would go on writing into the folder.
      process.kill(-child.pid, "SIGKILL");
      await gone;
    },
  };
}

export const freshFolder = (): string => mkdtempSync(join(tmpdir(), "endshake-"));
export const cleared = (folder: string): void => rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
