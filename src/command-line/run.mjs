// Runs a command of this folder from its TypeScript source: node src/command-line/run.mjs formula '=SPEAR.HEAT(19,7,5)'
// Node 20 reads no TypeScript, so the command is bundled first, and again only after a source file has changed.
import {mkdirSync, readdirSync, renameSync, statSync, writeFileSync} from "node:fs"
import {dirname, join} from "node:path"
import {fileURLToPath, pathToFileURL} from "node:url"

const here = dirname(fileURLToPath(import.meta.url))
const top = join(here, "../..")
const commands = readdirSync(here).flatMap((file) => /^(.*)\.ts$/.exec(file)?.[1] ?? [])

const [command = "", ...given] = process.argv.slice(2)
if (commands.includes(command)) {
  const source = join(here, `${command}.ts`)
  const bundle = join(top, `node_modules/.cache/fernledger/${command}.mjs`)
  if (changedAt(bundle) <= lastChange()) await write(bundle, source)
  process.argv = [process.argv[0], source, ...given]
  await import(pathToFileURL(bundle).href)
} else {
  console.error(`Commands: ${commands.join(", ")}`)
  process.exitCode = 2
}

/** Everything goes into one file, the engine too: reading its several hundred files takes 0.2 s at every start. */
async function write(bundle, source) {
  const {build} = await import("vite")
  const {output} = await build({
    configFile: false,
    root: top,
    logLevel: "error",
    ssr: {noExternal: true, external: ["playwright-core", "vite"]},
    build: {ssr: source, write: false, target: "node20", rolldownOptions: {output: {codeSplitting: false}}},
  })
  mkdirSync(dirname(bundle), {recursive: true})
  // Renamed into place, so that another run at the same time never reads half a file.
  const draft = `${bundle}.${process.pid}`
  writeFileSync(draft, output[0].code)
  renameSync(draft, bundle)
}

/** When a source file, a folder (for files removed) or a package last changed, in ms. */
function lastChange() {
  const inside = (folder) => readdirSync(folder, {recursive: true}).map((path) => join(folder, path))
  const folders = [join(top, "src"), join(top, "functions")]
  return Math.max(...[...folders, ...folders.flatMap(inside), join(top, "package-lock.json")].map(changedAt))
}

/** 0 where there is no such file. */
function changedAt(path) {
  return statSync(path, {throwIfNoEntry: false})?.mtimeMs ?? 0
}
