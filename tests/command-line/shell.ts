import {mkdtempSync, rmSync, writeFileSync} from "node:fs"
import {tmpdir} from "node:os"
import {join} from "node:path"
import type {Command} from "../../src/command-line/common/shell"
import type {Document} from "../../src/workbook/document"
import {writeFile} from "../../src/workbook/file"

/** Runs a command and gathers what it prints. */
export async function run(command: Command, args: readonly string[], typed: string | null = null) {
  const out: string[] = []
  const err: string[] = []
  const pieces = async function* () {
    yield* typed === null ? [] : [Buffer.from(typed)]
  }
  const status = await command(args, {
    stdin: typed === null ? null : pieces(),
    out: (line) => out.push(line),
    err: (line) => err.push(line),
  })
  return {out, err, status}
}

/** Hands `use` the path of a file with this content, which is gone afterwards. */
export async function withFile<T>(content: Document | string, use: (path: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "workbook-"))
  try {
    const path = join(folder, "farm.json")
    writeFileSync(path, typeof content === "string" ? content : writeFile(content))
    return await use(path)
  } finally {
    rmSync(folder, {recursive: true})
  }
}
