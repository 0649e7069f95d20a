import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";
import { offlineWorker } from "./src/offline/build.ts";

/** No request leaves the page. The developing server alone also needs its own inline scripts, styles and socket. */
const POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
  + "worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'";
const POLICY_DEVELOPING = POLICY
  .replace("script-src 'self'", "script-src 'self' 'unsafe-inline'")
  .replace("style-src 'self'", "style-src 'self' 'unsafe-inline'")
  .replace("connect-src 'self'", "connect-src 'self' ws:");

const securityPolicy = (): Plugin => ({
  name: "security-policy",
  transformIndexHtml: (_html, { server }) => [{
    tag: "meta", injectTo: "head-prepend",
    attrs: { "http-equiv": "Content-Security-Policy", content: server ? POLICY_DEVELOPING : POLICY },
  }],
});

export default defineConfig({
  plugins: [react(), securityPolicy(), offlineWorker()],
  base: "./",
  build: { target: "es2022" },
  worker: { format: "es" },
  server: { port: 5310 },
  preview: { port: 5311 },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**", "node_modules/**"],
    environment: "node",
    testTimeout: 30_000,
  },
});
