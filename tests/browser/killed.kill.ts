import {spawn, type ChildProcess} from "node:child_process"
import {mkdtemp, rm} from "node:fs/promises"
import {tmpdir} from "node:os"
import {join} from "node:path"
import {chromium, type Browser, type Page} from "playwright-core"
import {expect, inject, it} from "vitest"
import {BROWSER_ARGS, findBrowser, isRoot} from "../../src/command-line/common/browser"
import type {Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {seeded} from "../workbook/documents"
import {sheetOn} from "./sheet"

/** How often something is killed, and what the moments are drawn from. */
const KILLS = Number(process.env["KILLS"] ?? 200)
const SEED = Number(process.env["SEED"] ?? 1)

/** The share of starts that are killed while the planner still opens. */
const WHILE_OPENING = 0.25
/** A kill comes within so many ms after one of the first acts, which follow each other by `PAUSE` ms at the most. */
const MOMENT = 800
const PAUSE = 400
const ACTS = 6
/** A start is killed within so many ms. */
const START = 6000

const WEIGHT = 2
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms))

interface Run {
  readonly browser: Browser
  readonly program: ChildProcess
}

/** The browser as a program of its own, that can be killed as a whole. Its folder stays from one run to the next. */
async function run(folder: string): Promise<Run> {
  const given = [
    ...BROWSER_ARGS,
    ...(isRoot ? ["--no-sandbox"] : []),
    "--headless=new",
    "--no-default-browser-check",
    "--hide-crash-restore-bubble",
    "--window-size=1440,900",
    "--remote-debugging-port=0",
    `--user-data-dir=${folder}`,
    "about:blank",
  ]
  const program = spawn(findBrowser(), given, {stdio: ["ignore", "ignore", "pipe"]})
  const address = await new Promise<string>((found, failed) => {
    let told = ""
    program.stderr!.on("data", (words: Buffer) => {
      told += words.toString()
      const at = /DevTools listening on (ws:\S+)/.exec(told)?.[1]
      if (at) found(at)
    })
    program.on("exit", () => failed(new Error(`The browser did not start: ${told}`)))
  })
  return {browser: await chromium.connectOverCDP(address), program}
}

async function killBrowser({program}: Run) {
  const gone = new Promise((done) => program.once("exit", done))
  program.kill("SIGKILL")
  await gone
}

/** Kills the programs that the pages run in; the browser that writes for them goes on. */
async function killPages({browser}: Run) {
  const session = await browser.newBrowserCDPSession()
  const {processInfo} = await session.send("SystemInfo.getProcessInfo")
  for (const {type, id} of processInfo)
    if (type === "renderer")
      try {
        process.kill(id, "SIGKILL")
      } catch {
        // It had ended already.
      }
}

/** The newest state on the device, read from the text that lies there. */
async function newestOn(page: Page) {
  const text = await page.evaluate(
    () =>
      new Promise<string>((found, failed) => {
        const opened = indexedDB.open("fernledger")
        opened.addEventListener("error", () => failed(opened.error))
        opened.addEventListener("success", () => {
          const {result} = opened
          const newest = result.transaction("states").objectStore("states").openCursor(null, "prev")
          newest.addEventListener("success", () => {
            result.close()
            found((newest.result?.value as {text: string} | undefined)?.text ?? "")
          })
        })
      }),
  )
  return readFile(text)
}

/** The workbook after the acts up to one of them: each put its own weight into a row of the pickings. */
function after(document: Document, acts: readonly {row: number; weight: number}[]): Document {
  const rows = document.sheets.map(({name, rows}) =>
    name === "Pickings" ? rows.map((row) => [...row]) : rows,
  )
  const pickings = document.sheets.findIndex(({name}) => name === "Pickings")
  for (const {row, weight} of acts) (rows[pickings]![row] as unknown[])[WEIGHT] = weight
  return {...document, sheets: document.sheets.map((sheet, i) => ({...sheet, rows: rows[i]!}))}
}

/** Opens the planner in a new tab; on a busy machine that may take long. */
async function opened({browser}: Run): Promise<Page> {
  const [context] = browser.contexts()
  const page = await context!.newPage().catch(() => context!.newPage()) // the first may get a program that was killed
  page.setDefaultTimeout(180_000)
  await page.goto(inject("planner"))
  await page.locator(".ag-cell").first().waitFor()
  return page
}

/** Ends with what it is given, or quietly where something was killed under it. */
const unlessKilled = async (act: Promise<unknown>, isKilled: () => boolean) => {
  try {
    await act
  } catch (fault) {
    if (!isKilled()) throw fault
  }
}

it(`loses the last act at most, and never the workbook, in ${KILLS} kills of the browser and its pages`, async () => {
  const folder = await mkdtemp(join(tmpdir(), "killed-"))
  const random = seeded(SEED)
  const count = {browser: 0, pages: 0, "while opening": 0, acts: 0, "acts lost": 0}
  const faults: string[] = []
  let running = await run(folder)
  const kill = async (page: Page | null) => {
    const ofBrowser = random() < 0.4
    count[ofBrowser ? "browser" : "pages"]++
    await (ofBrowser ? killBrowser(running) : killPages(running))
    if (ofBrowser) running = await run(folder)
    else await page?.close().catch(() => {})
    return ofBrowser ? "browser" : "pages"
  }

  let page = await opened(running)
  await sheetOn(page).open("Pickings")
  let weight = 1000
  await sheetOn(page).type(1, "Weight", String(weight))
  await page.getByText(/^Saved on this device/).waitFor()
  const atFirst = await newestOn(page)
  if ("refused" in atFirst) throw new Error(atFirst.refused)
  let known = atFirst.document

  while (count.browser + count.pages < KILLS) {
    const acts: {row: number; weight: number}[] = []
    let made = 0 // acts whose last key the page had taken
    let isKilled = false
    await sheetOn(page).choose(1, "Weight")
    const edit = async () => {
      for (let row = 0; row < 20; row++) {
        acts.push({row, weight: ++weight})
        await page.keyboard.type(String(weight))
        await page.keyboard.press("Enter")
        made++
        await pause(random() ** 2 * PAUSE)
      }
    }
    const editing = unlessKilled(edit(), () => isKilled)
    const first = Math.floor(random() * ACTS)
    await expect.poll(() => made, {timeout: 180_000, interval: 5}).toBeGreaterThanOrEqual(first)
    await pause(random() * MOMENT)
    isKilled = true
    const before = made
    const killed = await kill(page)
    await editing
    count.acts += before

    while (random() < WHILE_OPENING) {
      isKilled = false
      const opening = unlessKilled(opened(running), () => isKilled)
      await pause(random() * START)
      isKilled = true
      await kill(null)
      await opening
      count["while opening"]++
    }

    // A tab that had come only after its kill would have the lead.
    const left = running.browser.contexts().flatMap((one) => one.pages())
    for (const one of left) if (one.url().startsWith(inject("planner"))) await one.close().catch(() => {})
    page = await opened(running)
    const where = `kill ${count.browser + count.pages} of the ${killed}, ${before} acts`
    const found = await newestOn(page)
    if ("refused" in found) throw new Error(`${where}: the newest state is damaged, ${found.refused}`)
    const text = JSON.stringify(found.document)
    const states = acts.map((_, n) => JSON.stringify(after(known, acts.slice(0, n + 1))))
    const had = states.lastIndexOf(text) + 1
    if (had === 0 && text !== JSON.stringify(known)) faults.push(`${where}: another workbook came back`)
    const lost = Math.max(0, before - had)
    count["acts lost"] += lost
    if (lost > 1) faults.push(`${where}: ${lost} lost`)
    known = found.document

    await sheetOn(page).open("Pickings")
    const kept = String(known.sheets.find(({name}) => name === "Pickings")!.rows[0]![WEIGHT])
    const shown = (await sheetOn(page).text(1, "Weight")).replaceAll(/\D/g, "")
    if (shown !== kept) faults.push(`${where}: ${shown} is shown and ${kept} is kept`)
    const words = await page.locator(".folio").innerText()
    if (/damaged|Not saved/.test(words)) faults.push(`${where}: ${words}`)
    console.log(JSON.stringify(count), faults.join("; "))
  }
  await killBrowser(running)
  await rm(folder, {recursive: true, force: true})
  expect(faults).toEqual([])
})
