import {readFileSync} from "node:fs"
import {basename, resolve} from "node:path"
import {readFile, type Reading} from "../../workbook/file"

/** Where a command reads and writes. */
export interface Shell {
  /** What is piped in, or null when nothing is. */
  readonly stdin: AsyncIterable<string | Uint8Array> | null
  out(line: string): void
  err(line: string): void
}

/** A command: gives its exit status. */
export type Command = (args: readonly string[], shell: Shell) => Promise<number>

/** Exit status of a call that makes no sense, or names a file that cannot be used. */
export const BAD_USAGE = 2

/** Runs a command when the shell asked for its file, and not when something else imports it. */
export async function runWhenCalled(file: string, command: Command) {
  if (basename(process.argv[1] ?? "") !== file) return
  // Whoever reads the output may stop early, as `head` does.
  process.stdout.on("error", () => process.exit())
  process.exitCode = await command(process.argv.slice(2), {
    stdin: process.stdin.isTTY ? null : process.stdin,
    out: (line) => void process.stdout.write(`${line}\n`),
    err: (line) => void process.stderr.write(`${line}\n`),
  })
}

export interface Given {
  readonly words: readonly string[]
  readonly flags: ReadonlySet<string>
  readonly values: ReadonlyMap<string, string>
}

/**
 * Parts options from the rest. `--name value` and `--name=value` say the same, "--" ends the options. A word
 * with a single "-" is no option, since formulas may begin so.
 */
export function readArguments(
  args: readonly string[],
  known: {readonly flags: readonly string[]; readonly values: readonly string[]},
): Given | {readonly refused: string} {
  const end = args.indexOf("--")
  const words = end < 0 ? [] : args.slice(end + 1)
  const before = end < 0 ? [...args] : args.slice(0, end)
  const rest: string[] = []
  const flags = new Set<string>()
  const values = new Map<string, string>()
  while (before.length) {
    const word = before.shift()!
    const [, name, value] = /^(--[a-z][a-z-]*)(?:=([^]*))?$/.exec(word) ?? []
    if (name === undefined) rest.push(word)
    else if (known.flags.includes(name) && value === undefined) flags.add(name)
    else if (known.values.includes(name)) {
      const given = value ?? before.shift()
      if (!given) return {refused: `${name} needs a value after it`}
      values.set(name, given)
    } else return {refused: `There is no option ${word}`}
  }
  return {words: [...rest, ...words], flags, values}
}

/** Reads a saved workbook. Paths count from where the person stands, which a package script hides in INIT_CWD. */
export function readWorkbook(path: string): Reading {
  let text: string
  try {
    text = readFileSync(resolve(process.env.INIT_CWD ?? "", path), "utf8")
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault)
    return {refused: `${path} cannot be read: ${REASONS[code] ?? code}`}
  }
  const reading = readFile(text)
  return "refused" in reading ? {refused: `${path}: ${reading.refused}`} : reading
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  EACCES: "this is not allowed",
}
