import {readFileSync, readdirSync} from "node:fs"
import {posix, sep} from "node:path"
import {parseSync, Visitor} from "vite"
import {describe, expect, it} from "vitest"

/** Stands for an import whose address is no literal, so nobody can tell what it is. */
const WORKED_OUT = "an address worked out at run time"
const drawing = ["react", "react-dom", "ag-grid-community", "@fontsource-variable/"]

/**
 * The map: each layer, what it may import besides itself, and which outside packages. Types count too.
 * The first entry whose path begins that of a file is its layer.
 */
const map: readonly Layer[] = [
  // Tools, not part of the program.
  {
    path: "src/vite.config.ts",
    uses: ["src/build/"],
    packages: ["vite", "@vitejs/plugin-react"],
  },
  {path: "src/oneFile.vite.config.ts", uses: ["src/build/"], packages: ["vite", "@vitejs/plugin-react"]},
  {path: "src/build/", uses: ["src/demonstrationLook"], packages: ["vite", "node:"]},
  {path: "functions/vite.config.ts", uses: [], packages: ["vite"]},
  {path: "src/command-line/run.mjs", uses: [], packages: ["vite", "node:", WORKED_OUT]},
  // The only files of the formula functions that know the engine.
  {path: "functions/plugin.ts", uses: ["functions/"], packages: ["hyperformula"]},
  {path: "functions/standardPlugin.ts", uses: ["functions/"], packages: ["hyperformula"]},
  {path: "functions/engineValues.ts", uses: ["functions/"], packages: ["hyperformula"]},
  {path: "functions/", uses: [], packages: []},
  {path: "src/workbook/", uses: ["functions/"], packages: ["hyperformula", "zod"]},
  {path: "src/studies/", uses: ["functions/", "src/workbook/"], packages: []},
  {path: "src/editor/", uses: ["functions/", "src/workbook/", "src/studies/"], packages: ["papaparse"]},
  // Beside the editor.
  {path: "src/storage/", uses: ["functions/", "src/workbook/"], packages: ["fflate", "idb"]},
  {
    path: "src/views/",
    // package.json says which version of the program this is.
    uses: ["functions/", "src/workbook/", "src/studies/", "src/editor/", "src/storage/", "package.json"],
    packages: drawing,
  },
  {
    path: "src/command-line/",
    uses: ["functions/", "src/workbook/", "src/studies/"],
    // The last two print a page of the planner.
    packages: ["node:", "playwright-core", "vite"],
  },
  // Runs beside the page, without any of its code.
  {path: "src/offline/", uses: [], packages: []},
  {path: "src/oneFile/", uses: ["src/"], packages: []},
  {path: "src/demonstrationLook", uses: ["functions/", "src/"], packages: ["node:"]},
  {path: "src/lastLook.ts", uses: ["src/views/"], packages: []},
  {path: "src/handed.ts", uses: ["src/views/"], packages: []},
  {path: "src/virtual.d.ts", uses: ["src/views/"], packages: []},
  {path: "src/planner.tsx", uses: ["functions/", "src/", "workbooks/"], packages: drawing},
  {path: "src/main.tsx", uses: ["functions/", "src/"], packages: [...drawing, "virtual:first-look"]},
]

interface Layer {
  path: string
  uses: readonly string[]
  packages: readonly string[]
}

const layerOf = (file: string) => map.find(({path}) => file.startsWith(path))

/** Everything that `code` imports, in order: values and types, for the names, for the effect, later, passed on, or in a worker. */
function importsIn(file: string, code: string): string[] {
  const {program, errors} = parseSync(file, code)
  if (errors.length > 0) throw new SyntaxError(`${file}: ${errors[0]!.message}`)
  const found: string[] = []
  const add = (source: {type: string; value?: unknown} | null) => {
    if (source) found.push(typeof source.value === "string" ? source.value : WORKED_OUT)
  }
  new Visitor({
    ImportDeclaration: ({source}) => add(source),
    ExportNamedDeclaration: ({source}) => add(source),
    ExportAllDeclaration: ({source}) => add(source),
    ImportExpression: ({source}) => add(source),
    TSImportType: ({source}) => add(source),
    TSExternalModuleReference: ({expression}) => add(expression),
    // new URL("./worker.ts", import.meta.url)
    NewExpression: ({callee, arguments: [address, base]}) => {
      const isUrl = callee.type === "Identifier" && callee.name === "URL"
      if (isUrl && base && code.slice(base.start, base.end) === "import.meta.url") add(address!)
    },
  }).visit(program)
  return found
}

/** The imports of a file that the map does not allow, each as `file imports what`. */
function forbidden(file: string, code: string): string[] {
  const layer = layerOf(file)
  if (!layer) return [`${file} is in no layer of the map`]
  return importsIn(file, code)
    .filter((source) => {
      const bare = source.replace(/\?.*$/, "")
      if (!bare.startsWith(".")) return !layer.packages.some((name) => belongsTo(bare, name))
      const target = `${posix.join(posix.dirname(file), bare)}/` // a folder stands for its index.ts
      return ![layer.path, ...layer.uses].some((path) => target.startsWith(path))
    })
    .map((source) => `${file} imports ${source}`)
}

/** A name that ends in "/" or ":" stands for all packages that begin so. */
const belongsTo = (source: string, name: string) =>
  /[/:]$/.test(name) ? source.startsWith(name) : source === name || source.startsWith(`${name}/`)

const top = `${import.meta.dirname}/..`
const sources = ["functions", "src"].flatMap((folder) =>
  readdirSync(`${top}/${folder}`, {recursive: true, encoding: "utf8"})
    .filter((path) => /\.(ts|tsx|mjs)$/.test(path))
    .map((path) => posix.join(folder, path.replaceAll(sep, "/"))),
)

describe("the direction of imports", () => {
  it("is kept by every file", () => {
    expect(sources.length).toBeGreaterThan(10)
    expect(sources.flatMap((file) => forbidden(file, readFileSync(`${top}/${file}`, "utf8")))).toEqual([])
  })

  it.each([
    ['import {store} from "../editor/store"', "../editor/store"],
    ['import type {Store} from "../editor/store"', "../editor/store"],
    ['import {type Store} from "../editor/store"', "../editor/store"],
    ['import\n  * as everything\n  from "../editor/store"', "../editor/store"],
    ['import "../views/sheet.css"', "../views/sheet.css"],
    ['const later = () => import("../views/Sheet")', "../views/Sheet"],
    ['type Store = import("../editor/store").Store', "../editor/store"],
    ['import store = require("../editor/store")', "../editor/store"],
    ['export {store} from "../editor/store"', "../editor/store"],
    ['export * from "../editor/store"', "../editor/store"],
    ['export type {Store} from "../editor/store"', "../editor/store"],
    ['new Worker(new URL("../editor/worker.ts", import.meta.url))', "../editor/worker.ts"],
    ['import Study from "../studies/best.ts?worker"', "../studies/best.ts?worker"],
    ["const later = (file) => import(file)", WORKED_OUT],
    ['import {useState} from "react"', "react"],
    ['import {readFileSync} from "node:fs"', "node:fs"],
    ['import day from "../../workbooks/farm.json"', "../../workbooks/farm.json"],
  ])("is broken by %s in the workbook", (code, source) => {
    expect(forbidden("src/workbook/planted.ts", code)).toEqual([`src/workbook/planted.ts imports ${source}`])
  })

  it.each([
    ["functions/planted.ts", 'import {HyperFormula} from "hyperformula"'],
    ["functions/root/planted.ts", 'import {openWorkbook} from "../../src/workbook/workbook"'],
    ["functions/plugin.ts", 'import {z} from "zod"'],
    ["src/studies/planted.ts", 'import {HyperFormula} from "hyperformula"'],
    ["src/editor/planted.ts", 'import {save} from "../storage/save"'],
    ["src/editor/planted.ts", 'import {useState} from "react"'],
    ["src/storage/planted.ts", 'import type {Store} from "../editor/store"'],
    ["src/storage/planted.ts", 'import {best} from "../studies/best"'],
    ["src/views/planted.tsx", 'import {HyperFormula} from "hyperformula"'],
    ["src/views/planted.tsx", 'import {z} from "zod/mini"'],
    ["src/command-line/planted.ts", 'import {save} from "../storage/save"'],
    ["src/views/planted.tsx", 'import {main} from "../main"'],
  ])("is broken in %s by %s", (file, code) => expect(forbidden(file, code)).toHaveLength(1))

  it.each([
    ["functions/root/planted.ts", 'import {quantity} from "../quantity"'],
    ["src/workbook/planted.ts", 'import {registerCatalogue} from "../../functions"'],
    ["functions/index.ts", 'export {registerCatalogue} from "./plugin"'],
    ["src/workbook/planted.ts", 'import {z} from "zod/mini"\nimport type {Cell} from "./document"'],
    ["src/editor/commands/planted.ts", 'import {best} from "../../studies/best"'],
    ["src/storage/planted.ts", 'import {openDB} from "idb"'],
    ["src/views/pictures/planted.tsx", 'import {createRoot} from "react-dom/client"\nimport "./picture.css"'],
    ["src/planner.tsx", 'import farm from "../workbooks/hollow-brook-farm.json"'],
    // Words in a comment or a text import nothing.
    ["functions/planted.ts", '// import "react"\nexport const help = `import {x} from "react"`'],
  ])("is kept in %s by %s", (file, code) => expect(forbidden(file, code)).toEqual([]))

  it("leads to workers through one place, so that the one file can start them too", () => {
    const starting = sources.filter((file) => readFileSync(`${top}/${file}`, "utf8").includes("new Worker("))
    expect(starting.toSorted()).toEqual(["src/oneFile/startWorker.ts", "src/studies/startWorker.ts"])
  })

  it("is known for every file, so a new folder takes its place in the map", () => {
    expect(forbidden("src/extras/planted.ts", "")).toEqual([
      "src/extras/planted.ts is in no layer of the map",
    ])
  })
})
