import { defineConfig } from "vitest/config";

const BROWSER = "test/browser/**/*.test.ts";

export default defineConfig({
  test: {
    pool: "forks",
    maxWorkers: 2,
    // Rooms are pure: files need not be kept apart, and what is loaded and planned once serves all.
    isolate: false,
    testTimeout: 120_000,
    hookTimeout: 60_000,
    projects: [
      { extends: true, test: { name: "node", include: ["test/**/*.test.ts"], exclude: [BROWSER] } },
      {
        extends: true,
        test: { name: "browser", include: [BROWSER], globalSetup: "test/browser/setup.ts" },
      },
    ],
  },
});
