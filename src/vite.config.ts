import react from "@vitejs/plugin-react"
import {defineConfig} from "vite"
import {firstLook} from "./build/firstLook.ts"
import {servedWithPolicy} from "./build/policy.ts"
import {serviceWorker} from "./build/serviceWorker.ts"

const top = `${import.meta.dirname}/..`

/** Builds and serves the planner. Addresses are relative, so the result works in any folder of a web server. */
export default defineConfig({
  root: import.meta.dirname,
  base: "./",
  appType: "mpa", // one page: an address that does not exist is an error, not the planner again
  cacheDir: `${top}/node_modules/.vite`,
  plugins: [react(), firstLook(), servedWithPolicy(), serviceWorker()],
  server: {fs: {allow: [top]}},
  // A port of its own: the browser keeps the planner for this address, and would show it there for another program.
  preview: {port: 4626},
  worker: {format: "es"},
  build: {
    outDir: `${top}/dist/planner`,
    emptyOutDir: true,
    license: {fileName: "third-party-licences.md"},
    chunkSizeWarningLimit: 1200, // kB: the grid is one chunk of about 1100, the engine one of about 800
    rolldownOptions: {
      output: {
        // Large packages apart from our own code: the browser loads them side by side and keeps them from one build to the next.
        codeSplitting: {
          groups: [
            {
              name: "engine",
              test: /node_modules[/\\](hyperformula|chevrotain|@chevrotain|tiny-emitter)[/\\]/,
            },
            {name: "grid", test: /node_modules[/\\]ag-/},
            {name: "react", test: /node_modules[/\\](react|react-dom|scheduler)[/\\]/},
          ],
        },
      },
    },
  },
})
