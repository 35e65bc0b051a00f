import {createHash} from "node:crypto"
import {readdir, readFile, writeFile} from "node:fs/promises"
import {sep} from "node:path"
import {transformWithOxc, type Plugin} from "vite"

/** Writes the service worker beside the built planner, with the list of all that was built. */
export const serviceWorker = (): Plugin => ({
  name: "service-worker",
  apply: "build",
  writeBundle: {
    order: "post",
    async handler({dir}) {
      const source = `${import.meta.dirname}/../offline/serviceWorker.ts`
      const {code} = await transformWithOxc(await readFile(source, "utf8"), source)
      await writeFile(
        `${dir}/${NAME}`,
        `const BUILT = ${JSON.stringify(await builtIn(dir!), null, 2)}\n${code}`,
      )
    },
  },
})

const NAME = "service-worker.js"

/** The files in a folder as addresses, the page as the folder itself, and a mark of what they hold. */
export async function builtIn(folder: string): Promise<{version: string; files: string[]}> {
  const entries = await readdir(folder, {recursive: true, withFileTypes: true})
  const paths = entries
    .filter((entry) => entry.isFile() && entry.name !== NAME)
    .map((entry) => `${entry.parentPath}/${entry.name}`)
    .sort()
  const mark = createHash("sha256")
  for (const path of paths) mark.update(path.slice(folder.length)).update(await readFile(path))
  const files = paths.map((path) => path.slice(folder.length + 1).replaceAll(sep, "/"))
  return {
    version: mark.digest("hex").slice(0, 16),
    files: files.map((file) => (file === "index.html" ? "./" : file)),
  }
}
