import {defineConfig} from "vitest/config"

export default defineConfig({
  root: `${import.meta.dirname}/..`,
  cacheDir: "node_modules/.vitest",
  test: {include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"], exclude: ["tests/browser/**"]},
})
