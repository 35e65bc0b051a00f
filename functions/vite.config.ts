import {defineConfig} from "vite"

const top = `${import.meta.dirname}/..`

/** Builds the formula functions for other programs. The engine stays outside: its registry is one per copy. */
export default defineConfig({
  root: import.meta.dirname,
  cacheDir: `${top}/node_modules/.vite`,
  build: {
    outDir: `${top}/dist/functions`,
    emptyOutDir: true,
    minify: false,
    lib: {entry: `${import.meta.dirname}/index.ts`, formats: ["es"], fileName: "index"},
    rolldownOptions: {external: ["hyperformula"]},
  },
})
