import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [react()],
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
