import { defineConfig } from "vitest/config";

/**
 * One project for each kind of machine that a test needs. `tests/run.ts` decides which of them can run here
 * and says in words what is left out and how to get it.
 */
export default defineConfig({
  test: {
    // both cores of a small machine; files of one kind share their imports, which are most of what a short test costs
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: "pure",
          isolate: false,
          include: ["tests/*.test.ts", "tests/{kernel,engines,planning,contracts,web,seed-data}/**/*.test.{ts,tsx}"],
          setupFiles: ["tests/support/seed.ts"],
          testTimeout: 60_000,
        },
        oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
      },
      {
        test: {
          name: "embedded",
          isolate: false,
          include: ["tests/{db,api}/**/*.test.ts"],
          env: { STILLROOM_TEST_DATABASE: "embedded" },
          globalSetup: ["tests/support/database-setup.ts"],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: "server",
          isolate: false,
          include: ["tests/{db,api}/**/*.test.ts"],
          exclude: ["tests/db/embedded*.test.ts"],
          env: { STILLROOM_TEST_DATABASE: "server" },
          globalSetup: ["tests/support/database-setup.ts"],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 180_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
