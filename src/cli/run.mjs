// Starts every command of the project. Plain JavaScript with nothing but Node, so that it runs before anything is
// installed: it installs what is missing, then hands over. TypeScript commands are bundled afresh each time (tens of
// milliseconds), so nothing can be stale.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const [command, ...args] = process.argv.slice(2);

const SCRIPTS = { test: "tests/run.mjs" };
const VITE = { start: [], build: ["build"] };
const bundled = command === "bench" ? "tests/bench/bench.ts" : `src/cli/${command}.ts`;

// A reader that has seen enough (head, less) closes the pipe; that is no fault.
process.stdout.on("error", (fault) => { if (fault.code === "EPIPE") process.exit(process.exitCode ?? 0); else throw fault; });

ensureInstalled();
if (command in SCRIPTS) process.exitCode = node([join(root, SCRIPTS[command]), ...args]);
else if (command in VITE) process.exitCode = node([join(root, "node_modules/vite/bin/vite.js"), ...VITE[command], ...args]);
else if (/^[a-z]+$/.test(command ?? "") && existsSync(join(root, bundled))) await runBundled(bundled);
else fail(`there is no command called ${command}`);

function ensureInstalled() {
  const lock = join(root, "package-lock.json");
  const installed = join(root, "node_modules/.package-lock.json");
  if (existsSync(installed) && sameVersions(lock, installed)) return;
  process.stderr.write("Installing what is missing (once) …\n");
  const done = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root, stdio: ["ignore", 2, 2], shell: process.platform === "win32",
  });
  if (done.status !== 0) fail("npm ci did not finish; its message stands above");
}

/** The packages on disk are those of the lock: compared by name and version, since npm writes its own copy. */
function sameVersions(lockFile, installedFile) {
  const wanted = JSON.parse(readFileSync(lockFile, "utf8")).packages;
  const there = JSON.parse(readFileSync(installedFile, "utf8")).packages;
  return Object.entries(wanted).every(([path, p]) => !path || p.optional || there[path]?.version === p.version);
}

async function runBundled(entry) {
  const { buildSync } = await import("esbuild");
  const folder = join(root, "node_modules/.cache/endshake");
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, `${command}-${process.pid}.mjs`);
  buildSync({
    entryPoints: [join(root, entry)], outfile, bundle: true, platform: "node", format: "esm", target: "node20",
    packages: "external", sourcemap: "inline", logLevel: "error", absWorkingDir: root,
  });
  process.argv = [process.argv[0], join(root, entry), ...args];
  try {
    await import(pathToFileURL(outfile).href);
  } finally {
    const { rmSync } = await import("node:fs");
    rmSync(outfile, { force: true });
  }
}

function node(argv) {
  const done = spawnSync(process.execPath, argv, { cwd: root, stdio: "inherit" });
  return done.status ?? 1;
}

function fail(sentence) {
  process.stderr.write(`${sentence}\n`);
  process.exit(2);
}
