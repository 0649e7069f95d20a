// `npm test`: types, lint, unit tests, build, browser tests, in that order; stops at the first that fails.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

const bin = (name) => `node_modules/.bin/${name}`;
const chromium = findBrowser();
step("types of the kernel, without a browser's library", bin("tsc"), ["-p", "geometry"]);
step("types", bin("tsc"), ["-p", "."]);
step("lint", bin("eslint"), ["."]);
step("unit tests", bin("vitest"), ["run"]);
step("build", bin("vite"), ["build"]);
step("browser tests", bin("vitest"), ["run", "--config", "tests/browser/vitest.config.ts"], { CHROMIUM: chromium });

function step(name, command, args, env = {}) {
  process.stdout.write(`\n— ${name}\n`);
  const started = Date.now();
  const done = spawnSync(command, args, { stdio: "inherit", env: { ...process.env, ...env } });
  process.stdout.write(`— ${name}: ${((Date.now() - started) / 1000).toFixed(1)} s\n`);
  if (done.status !== 0) process.exit(done.status ?? 1);
}

/** CHROMIUM, else one on the machine, else Debian's package where we may install it. */
function findBrowser() {
  const given = process.env.CHROMIUM;
  if (given) return existsSync(given) ? given : stop(`CHROMIUM names ${given}, and there is no such file.`);
  const found = onMachine();
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync("/etc/debian_version")) {
    process.stdout.write("— no browser here: installing Debian's chromium\n");
    const quiet = { stdio: ["ignore", "ignore", "inherit"], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
    spawnSync("apt-get", ["update", "-qq"], quiet);
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-dejavu-core"], quiet);
    const installed = onMachine();
    if (installed) return installed;
  }
  return stop("The browser tests need Chromium or Chrome: install one, or name it in CHROMIUM.");
}

function onMachine() {
  const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
  for (const folder of (process.env.PATH ?? "").split(":"))
    for (const name of names) if (existsSync(`${folder}/${name}`)) return `${folder}/${name}`;
  const mac = "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome";
  return existsSync(mac) ? mac : null;
}

function stop(sentence) {
  process.stderr.write(`${sentence}\n`);
  process.exit(1);
}
