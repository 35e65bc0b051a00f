import react from "@vitejs/plugin-react"
import {defineConfig} from "vite"
import {firstLook} from "./build/firstLook.ts"
import {oneFile} from "./build/oneFile.ts"

const top = `${import.meta.dirname}/..`

/** Builds the planner as one file that opens from the disk. */
export default defineConfig({
  root: import.meta.dirname,
  publicDir: false,
  cacheDir: `${top}/node_modules/.vite`,
  plugins: [react(), firstLook(), oneFile("fernledger.html", `${top}/dist/planner`)],
  build: {
    outDir: `${top}/dist`,
    emptyOutDir: false,
    assetsInlineLimit: () => true,
    cssCodeSplit: false,
    modulePreload: false,
    license: {fileName: "third-party-licences.md"},
    reportCompressedSize: false,
    chunkSizeWarningLimit: 4000, // kB: all of it is one
    rolldownOptions: {
      checks: {emptyImportMeta: false}, // of the helper that loads chunks: here are none
      input: `${import.meta.dirname}/oneFile/program.ts`,
      output: {format: "iife", codeSplitting: false},
    },
  },
})
