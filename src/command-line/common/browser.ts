import {spawnSync} from "node:child_process"
import {existsSync} from "node:fs"
import {createRequire} from "node:module"
import {homedir} from "node:os"
import {delimiter, dirname, join} from "node:path"
import {chromium, type BrowserServer} from "playwright-core"

/** Starts the browser of this machine, without a window. Throws one sentence where there is none or it does not start. */
export async function startBrowser(): Promise<BrowserServer> {
  const executablePath = findBrowser()
  try {
    return await chromium.launchServer({executablePath, args: BROWSER_ARGS, chromiumSandbox: !isRoot})
  } catch (fault) {
    const why = /No usable sandbox!|error while loading shared libraries.*/.exec(
      (fault as Error).message,
    )?.[0]
    throw new Error(
      `The browser ${executablePath} did not start${why ? ` (${why})` : ""}: ` +
        `set PLANNER_BROWSER to the program file of another, or try it by hand with --headless`,
      {cause: fault},
    )
  }
}

/** How the browser is started, beside what the library asks for. */
export const BROWSER_ARGS = [
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // Neither a test nor a report may depend on another host, nor reach one by mistake.
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1, EXCLUDE [::1]",
]

/** The browser refuses its own sandbox to root. */
export const isRoot = process.getuid?.() === 0

/**
 * The program file of a Chrome, Chromium or Edge: the one named by PLANNER_BROWSER; else one on the PATH; else one
 * in the usual places; else the build that belongs to the test library, downloaded if need be; else, as root where
 * there is apt-get, Debian's package. Throws one sentence where there is none.
 */
export function findBrowser(): string {
  const named = process.env["PLANNER_BROWSER"]
  if (named) {
    if (existsSync(named)) return named
    throw new Error(`PLANNER_BROWSER names ${named}, and there is no such file`)
  }
  for (const get of [() => true, download, install]) {
    const program = get() && candidates().find(works)
    if (program) return program
  }
  throw new Error(
    "There is no Chrome, Chromium or Edge: install one, or set PLANNER_BROWSER to its program file " +
      "(`npm test -- --project unit` runs the tests that need none)",
  )
}

const candidates = () => [...onPath(), ...usualPlaces(), chromium.executablePath()]

const onPath = () =>
  [
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "microsoft-edge",
    "microsoft-edge-stable",
  ].flatMap((name) => (process.env["PATH"] ?? "").split(delimiter).map((folder) => join(folder, name)))

function usualPlaces() {
  const {ProgramFiles, LOCALAPPDATA} = process.env
  const windows = [ProgramFiles, process.env["ProgramFiles(x86)"], LOCALAPPDATA].filter(
    (folder) => folder !== undefined,
  )
  return [
    ...["/Applications", join(homedir(), "Applications")].flatMap((folder) =>
      ["Google Chrome", "Chromium", "Microsoft Edge"].map((name) =>
        join(folder, `${name}.app/Contents/MacOS/${name}`),
      ),
    ),
    ...windows.flatMap((folder) => [
      join(folder, "Google/Chrome/Application/chrome.exe"),
      join(folder, "Chromium/Application/chrome.exe"),
      join(folder, "Microsoft/Edge/Application/msedge.exe"),
    ]),
  ]
}

/** On Linux a file of that name may only tell how to install a browser, or lack a library, so it is asked for its version. */
function works(program: string): boolean {
  if (!existsSync(program)) return false
  if (process.platform !== "linux") return true
  return spawnSync(program, ["--version"], {timeout: 20_000, stdio: "ignore"}).status === 0
}

function download() {
  const library = dirname(createRequire(import.meta.url).resolve("playwright-core/package.json"))
  const program = join(library, "cli.js")
  return succeeds("Downloading a browser", process.execPath, [program, "install", "--no-shell", "chromium"])
}

function install() {
  if (!isRoot || spawnSync("apt-get", ["--version"]).status !== 0) return false
  return (
    succeeds("Reading the list of packages", "apt-get", ["update"]) &&
    succeeds("Installing chromium", "apt-get", ["install", "-y", "--no-install-recommends", "chromium"])
  )
}

function succeeds(what: string, program: string, args: string[]): boolean {
  console.error(`${what} ...`)
  const {status, stderr} = spawnSync(program, args, {
    env: {...process.env, DEBIAN_FRONTEND: "noninteractive"},
    stdio: ["ignore", "ignore", "pipe"],
    encoding: "utf8",
    timeout: 600_000,
  })
  if (status !== 0) console.error(`That did not work. ${/^E(rror)?:.*/m.exec(stderr)?.[0] ?? ""}`)
  return status === 0
}
