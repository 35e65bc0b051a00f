import {mkdir, mkdtemp, rm, writeFile} from "node:fs/promises"
import {tmpdir} from "node:os"
import {join} from "node:path"
import {expect, it, onTestFinished} from "vitest"
import {builtIn} from "../../src/build/serviceWorker"

async function folderWith(files: Readonly<Record<string, string>>) {
  const folder = await mkdtemp(join(tmpdir(), "fernledger-"))
  onTestFinished(() => rm(folder, {recursive: true}))
  await mkdir(join(folder, "assets"))
  for (const [name, content] of Object.entries(files)) await writeFile(join(folder, name), content)
  return folder
}

const files = {"index.html": "page", "assets/a.js": "1", "sign.svg": "sign", "service-worker.js": "old"}

it("lists all that was built but the service worker itself, the page as its folder", async () => {
  expect((await builtIn(await folderWith(files))).files).toEqual(["assets/a.js", "./", "sign.svg"])
})

it("has another mark when a file holds something else, and the same for the same", async () => {
  const mark = async (changed = {}) => (await builtIn(await folderWith({...files, ...changed}))).version
  const was = await mark()
  expect(await mark()).toBe(was)
  expect(await mark({"service-worker.js": "new"})).toBe(was)
  expect(await mark({"index.html": "another page"})).not.toBe(was)
})
