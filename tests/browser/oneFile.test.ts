import {mkdtemp, readFile, writeFile} from "node:fs/promises"
import {tmpdir} from "node:os"
import {pathToFileURL} from "node:url"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

const top = `${import.meta.dirname}/../..`
const at = pathToFileURL(`${top}/dist/fernledger.html`).href

const open = () => openPlanner({at, browser: {offline: true}})

it("opens from the disk without a network, follows an edit and finds it again", async () => {
  const {page, trouble} = await open()
  await page.locator(".ag-cell").first().waitFor()
  const fonts = await page.evaluate(() =>
    [...document.fonts].filter(({status}) => status === "loaded").map(({family}) => family),
  )
  expect(fonts.join()).toMatch(/Literata.*Source Sans|Source Sans.*Literata/)
  const sheet = sheetOn(page)
  const weeks = await sheet.text("Well Field", "Weeks")
  await sheet.type("Well Field", "Open", "10 May")
  await expect.poll(() => sheet.text("Well Field", "Weeks")).not.toBe(weeks)
  const changed = await sheet.text("Well Field", "Weeks")
  await page.getByText(/^Saved on this device/).waitFor()

  await page.reload()
  await page.locator(".ag-cell").first().waitFor()
  expect(await sheet.text("Well Field", "Open")).toBe("10 May")
  expect(await sheet.text("Well Field", "Weeks")).toBe(changed)
  expect(trouble).toEqual([])
})

it("runs its studies in workers, those of draws and those that calculate a workbook", async () => {
  const {page, trouble} = await open()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.choose("Long Acre", "Stop price")
  await page.getByRole("button", {name: "Work back"}).click()
  const panel = page.locator(".work-back")
  await panel.getByLabel("It should be").fill("2.60")
  await panel
    .getByLabel("by changing")
    .selectOption(await panel.locator("option", {hasText: "Pick_cost"}).getAttribute("value"))
  await panel.getByRole("button", {name: "Work it back"}).click()
  await expect
    .poll(() => panel.innerText(), {timeout: 20_000})
    .toMatch(/With 1\.\d+\smoney\/kg it is 2\.60\smoney\/kg/)
  expect(page.workers()).toHaveLength(0) // let go of once it has answered

  await sheet.open("Reserve")
  await page.getByRole("button", {name: "Work out how sure"}).click()
  await expect
    .poll(() =>
      page
        .workers()
        .map((worker) => worker.url())
        .join(),
    )
    .toMatch(/^blob:/)
  await page.getByText("in 8 draws of 10").waitFor({timeout: 40_000})
  expect(trouble).toEqual([])
})

it("runs no script but its own, and asks nothing of any network", async () => {
  const {page} = await open()
  const broken = await page.evaluate(async () => {
    const broken: string[] = []
    document.addEventListener("securitypolicyviolation", ({effectiveDirective}) =>
      broken.push(effectiveDirective),
    )
    document.body.append(Object.assign(document.createElement("script"), {textContent: "window.ran = 1"}))
    document.body.insertAdjacentHTML("beforeend", "<img src='data:,' onerror='window.ran = 2'>")
    await fetch("https://elsewhere.invalid/").catch(() => {})
    await new Promise((wait) => setTimeout(wait, 300))
    return [...broken, "ran" in window]
  })
  expect(broken).toEqual(expect.arrayContaining(["script-src-elem", "script-src-attr", "connect-src", false]))
})

it("hands a reading copy on as a page of its own, that opens with nothing installed (LE1, LE12)", async () => {
  const maker = await open()
  await maker.page.locator(".ag-cell").first().waitFor()
  await maker.page.evaluate(() => Object.assign(window, {showSaveFilePicker: undefined}))
  await sheetOn(maker.page).open("Lender's page")
  const [download] = await Promise.all([
    maker.page.waitForEvent("download"),
    maker.page.getByRole("button", {name: "Make a reading copy"}).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/^hollow-brook-farm-reading-copy-\d{4}-\d\d-\d\d\.html$/)
  const folder = await mkdtemp(`${tmpdir()}/reading-`)
  const copy = `${folder}/copy.html`
  await download.saveAs(copy)
  const text = await readFile(copy, "utf8")
  const program = await readFile(`${top}/dist/fernledger.html`, "utf8")
  expect(text).toContain(/<script id="program">[^]*?<\/script>/.exec(program)![0])
  expect(text).toContain("MIT") // the licences go with it

  const {page, trouble} = await openPlanner({at: pathToFileURL(copy).href, browser: {offline: true}})
  await page.locator(".ag-cell").first().waitFor()
  expect(await page.locator("h1").innerText()).toBe("Lender's page")
  const line = page.getByRole("note")
  await expect
    .poll(() => line.innerText())
    .toMatch(/made by R\.T\. on .*Unchanged since it was made\. Digest/)
  const sheet = sheetOn(page)
  await sheet.open("Prices")
  await sheet.choose(1, "Price")
  await page.keyboard.type("9")
  await page.getByRole("alertdialog").getByText("This is a reading copy.").waitFor()
  // A copy of the copy is the same page, and the reader's own workbook is not touched.
  expect(await page.evaluate(() => localStorage.getItem("fernledger look 1"))).toBeNull()
  expect(trouble).toEqual([])

  await writeFile(copy, text.replace("[1,3.65,", "[1,3.75,"))
  const changed = await openPlanner({at: pathToFileURL(copy).href, browser: {offline: true}})
  await expect
    .poll(() => changed.page.getByRole("note").innerText(), {timeout: 20_000})
    .toContain("Changed since it was made")
})
