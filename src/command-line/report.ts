import {existsSync} from "node:fs"
import {dirname, resolve} from "node:path"
import {chromium, type Browser} from "playwright-core"
import {preview} from "vite"
import {sheetWith} from "../workbook/document"
import {startBrowser} from "./common/browser"
import {BAD_USAGE, readArguments, readWorkbook, runWhenCalled, type Shell} from "./common/shell"

const HELP = `Prints the lender's page of a saved workbook to a PDF, with page numbers and the workbook's name on each page. What
chance may do to the cover is worked out first and is on it.

  npm run -s report -- workbooks/NAME.json --out FILE.pdf

  --out FILE    where the PDF goes
  --paper SIZE  A4, the default, or Letter
  --help        this text

The planner must have been built (npm run build), and a Chrome, Chromium or Edge must be there.
Exit status: 0, or 1 when there is nothing to print or no browser, or 2 when the call or the workbook cannot be used.`

/** Longest for the draws of the risk, ms: a small machine that has other work takes half a minute. */
const RISK_TIME = 180_000

const PAPERS = new Set(["A4", "Letter"])

/** Prints the lender's page as the planner shows it. */
export async function main(args: readonly string[], {out, err}: Shell): Promise<number> {
  const given = readArguments(args, {flags: ["--help"], values: ["--out", "--paper"]})
  const fail = (sentence: string, status: number) => {
    err(sentence)
    return status
  }
  if ("refused" in given) return fail(`${given.refused}. See --help.`, BAD_USAGE)
  if (given.flags.has("--help")) {
    out(HELP)
    return 0
  }
  const [path, ...others] = given.words
  if (path === undefined || others.length) return fail("One workbook is needed. See --help.", BAD_USAGE)
  const file = given.values.get("--out")
  if (file === undefined) return fail("--out FILE.pdf is needed. See --help.", BAD_USAGE)
  const paper = given.values.get("--paper") ?? "A4"
  if (!PAPERS.has(paper)) return fail(`--paper is A4 or Letter, not ${paper}.`, BAD_USAGE)
  const reading = readWorkbook(path)
  if ("refused" in reading) return fail(`${reading.refused}.`, BAD_USAGE)
  const {sheets} = reading.document
  const sheet = sheets[sheetWith(reading.document, "page line")]
  if (!sheet) return fail(`${path} has no lender's page: no column of its sheets holds its lines.`, 1)

  const top = resolve(dirname(process.argv[1] ?? ""), "../..")
  if (!existsSync(resolve(top, "dist/planner/index.html")))
    return fail("The planner is not built: npm run build first.", 1)
  const here = process.env.INIT_CWD ?? ""
  const configFile = resolve(top, "src/vite.config.ts")
  const planner = await preview({configFile, logLevel: "error", preview: {port: 0, open: false}})
  try {
    const server = await startBrowser()
    const browser = await chromium.connect(server.wsEndpoint())
    const home = planner.resolvedUrls!.local[0]!
    await print(browser, {
      home,
      workbook: resolve(here, path),
      sheet: sheet.name,
      file: resolve(here, file),
      paper,
    })
    await browser.close()
    await server.close()
  } catch (fault) {
    return fail(`${(fault as Error).message.split("\n")[0]}.`, 1)
  } finally {
    await planner.close()
  }
  out(`${file} is written.`)
  return 0
}

interface Print {
  readonly home: string
  readonly workbook: string
  readonly sheet: string
  readonly file: string
  readonly paper: string
}

async function print(browser: Browser, {home, workbook, sheet, file, paper}: Print) {
  const page = await browser.newPage({viewport: {width: 1440, height: 900}, colorScheme: "light"})
  await page.goto(home)
  await page.locator(".ag-cell").first().waitFor()
  await page.evaluate("window.showOpenFilePicker = undefined")
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", {name: "Open a file copy"}).click(),
  ])
  await chooser.setFiles(workbook)
  await page.getByRole("status").getByText("is open.").waitFor()
  await page
    .getByRole("navigation", {name: "Contents"})
    .getByRole("button", {name: new RegExp(`^${sheet.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}`)})
    .click()
  await page.locator(".lender").waitFor()
  const risk = page.locator(".risk")
  await risk.getByRole("button").click()
  await risk.locator("table, [aria-live] p").waitFor({timeout: RISK_TIME})
  await page.evaluate("document.fonts.ready")
  await page.evaluate(
    (title) => void (document.title = title),
    `${await page.locator(".book").innerText()}: ${sheet}`,
  )
  await page.pdf({path: file, format: paper, printBackground: true})
}

await runWhenCalled("report.ts", main)
