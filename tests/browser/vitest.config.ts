import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/browser/**/*.test.ts"],
    environment: "node",
    maxWorkers: 2,
    // A slow machine draws slowly; a condition that comes at all is waited for.
    expect: { poll: { timeout: 30_000 } },
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
