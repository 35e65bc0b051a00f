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

it("keeps five pickings of the field through a new start, without a network (GR2)", async () => {
  const browser = {offline: true, hasTouch: true}
  const {page, trouble} = await openPlanner({at: `${at}#field`, width: 390, height: 844, browser})
  for (const kg of ["405", "61", "88", "120", "352"]) {
    for (const key of kg) await page.getByRole("button", {name: key, exact: true}).tap()
    await page.locator(".field-do").tap()
    // Run after the close of the plan, the day of the test is asked about.
    const sure = page.getByRole("button", {name: "Add it all the same"})
    if (await sure.isVisible()) await sure.tap()
  }
  await page.getByText(/^Saved on this device \d\d:\d\d/).waitFor()
  await page.reload()
  await page.getByText(/^As saved on this device \d\d:\d\d/).waitFor()
  await page.getByRole("button", {name: "Back", exact: true}).tap()
  await page.locator("nav summary").first().tap()
  await page.getByRole("button", {name: /^Pickings\s*72/}).waitFor() // 67 of the farm
  expect(trouble).toEqual([])
})

it("answers a lender's questions (LE2-LE8)", async () => {
  const {page, trouble} = await open()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Yield evidence")
  // LE2: Long Acre's three years are typed on Records; their mean is a third of their sum.
  const years = await Promise.all(
    ["Three years ago", "Two years ago", "Last year"].map((heading) => sheet.text("Long Acre", heading)),
  )
  const number = (text: string) => Number(text.replace(/[^\d.-]/g, ""))
  const mean = years.reduce((sum, one) => sum + number(one), 0) / 3
  expect(Math.abs(number(await sheet.text("Long Acre", "Three-year mean")) - mean)).toBeLessThanOrEqual(1)

  await sheet.open("Cash and debt")
  const [capacity, due, cover] = await Promise.all(
    ["Capacity", "Due", "Cover"].map(async (heading) => number(await sheet.text(2, heading))),
  )
  expect(Math.abs(capacity! / due! - cover!)).toBeLessThanOrEqual(0.005) // LE3, as printed
  expect(await sheet.text(2, "Cause")).toContain("North Bench") // LE4
  await sheet.choose(2, "Cover")
  await expect.poll(() => sheet.whereFrom().innerText()).toMatch(/Capacity[^]*Principal/) // LE7

  // LE6: a set of one's own changes what is under stress, and no number of the plan.
  await sheet.open("Stress")
  const plan = await sheet.text("yours", "Capacity in plan")
  const stressed = await sheet.text("yours", "Capacity")
  await sheet.type("yours", "Price", "-25 %")
  await expect.poll(() => sheet.text("yours", "Capacity")).not.toBe(stressed)
  expect(await sheet.text("yours", "Capacity in plan")).toBe(plan)

  await sheet.open("Cash and debt")
  // LE5: at the break price, typed as the price to a hundredth as it is shown, capacity pays what is due.
  await sheet.type(2, "Price", await sheet.text(2, "Break price"))
  const off = (0.005 * 1000 * number(await sheet.text(2, "Sold"))) / due! + 0.005
  await expect.poll(async () => Math.abs(number(await sheet.text(2, "Cover")) - 1)).toBeLessThanOrEqual(off)
  await sheet.open("Lender's page")
  await expect.poll(() => page.locator("#typed-over").innerText()).toBe("1 number typed over") // LE8
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
  await page.getByText("in 8 draws of 10").first().waitFor({timeout: 40_000})
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
