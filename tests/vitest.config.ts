import {defineConfig} from "vitest/config"

export default defineConfig({
  root: `${import.meta.dirname}/..`,
  cacheDir: "node_modules/.vitest",
  test: {
    reporters: ["default", `${import.meta.dirname}/tally.ts`],
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/browser/**"],
          isolate: false, // files share the program's code in a process; loading it for each took half the time
          testTimeout: 60_000, // a farm's workbook is worked out in a second, on a busy machine in many
          benchmark: {include: ["tests/bench/**/*.bench.ts"]},
          sequence: {groupOrder: 0},
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: "tests/browser/planner.ts",
          testTimeout: 120_000,
          hookTimeout: 60_000,
          expect: {poll: {timeout: 20_000}}, // of the page, which a busy machine may take long to draw
          // After the unit tests, two files at a time: each has a browser of its own, which is busy in several processes.
          maxWorkers: 2,
          sequence: {groupOrder: 1},
        },
      },
      {
        // Not part of the tests: times the page.
        extends: true,
        test: {
          name: "speed",
          include: ["tests/bench/**/*.speed.ts"],
          globalSetup: "tests/browser/planner.ts",
          testTimeout: 120_000,
          fileParallelism: false,
          sequence: {groupOrder: 3},
        },
      },
      {
        // Not part of the tests: kills the browser and its pages while they are edited, KILLS times.
        extends: true,
        test: {
          name: "kills",
          include: ["tests/browser/**/*.kill.ts"],
          globalSetup: "tests/browser/planner.ts",
          testTimeout: 0,
          sequence: {groupOrder: 4},
        },
      },
      {
        // Not part of the tests: takes the pictures that README.md shows, from the running planner.
        extends: true,
        test: {
          name: "pictures",
          include: ["tests/browser/**/*.picture.ts"],
          globalSetup: "tests/browser/planner.ts",
          testTimeout: 60_000,
          sequence: {groupOrder: 2},
        },
      },
    ],
  },
})
