// Builds the service worker beside the page: it lists every file that was built and marks the list by their contents, so
// that a build with any other file is a newer one.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { buildSync } from "esbuild";
import type { Plugin } from "vite";

const WORKER = "offline.js";
/** What only drawn sheets and files are made with: large, and not looked for on a first visit. */
const COMES_LATER = /\.ttf$|(^|\/)(exporting|paper\.worker)-[^/]*\.js$/;

export const offlineWorker = (): Plugin => {
  let folder = "", root = "";
  return {
    name: "offline-worker",
    apply: "build",
    enforce: "post",
    configResolved(config) {
      root = config.root;
      folder = resolve(config.root, config.build.outDir);
    },
    closeBundle() {
      const files = filesBelow(folder).map((file) => relative(folder, file).split(sep).join("/")).filter((file) => file !== WORKER).sort();
      const mark = createHash("sha256");
      for (const file of files) mark.update(file).update(readFileSync(join(folder, file)));
      const built = buildSync({
        entryPoints: [join(root, "src/offline/worker.ts")], bundle: true, minify: true, format: "iife", target: "es2022", write: false,
        define: { FIRST: JSON.stringify(files.filter((file) => !COMES_LATER.test(file))), LATER: JSON.stringify(files.filter((file) => COMES_LATER.test(file))), MARK: JSON.stringify(mark.digest("hex").slice(0, 16)) },
      });
      writeFileSync(join(folder, WORKER), built.outputFiles[0]!.contents);
    },
  };
};

const filesBelow = (folder: string): string[] => readdirSync(folder, { withFileTypes: true })
  .flatMap((entry) => (entry.isDirectory() ? filesBelow(join(folder, entry.name)) : [join(folder, entry.name)]));
