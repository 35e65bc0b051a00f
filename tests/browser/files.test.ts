import {AxeBuilder} from "@axe-core/playwright"
import type {Page} from "playwright-core"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** Without dialogs of its own for files the browser downloads, and asks with a field for a file. */
async function openFiles() {
  const {page, trouble} = await openPlanner()
  await page.evaluate(() => {
    Object.assign(globalThis, {showSaveFilePicker: undefined, showOpenFilePicker: undefined})
  })
  await page.locator(".ag-cell").first().waitFor()
  return {page, trouble, sheet: sheetOn(page), panel: page.locator(".files-panel")}
}

async function sent(page: Page, copy: string) {
  await page.getByLabel(copy).check()
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", {name: "Send it out"}).click(),
  ])
  const pieces = await (await download.createReadStream()).toArray()
  return {name: download.suggestedFilename(), buffer: Buffer.concat(pieces as Buffer[])}
}

async function chosen(page: Page, file: {name: string; buffer: Buffer}) {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", {name: "Choose a file…"}).click(),
  ])
  await chooser.setFiles({...file, mimeType: "application/octet-stream"})
}

const faults = async (page: Page) => (await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)

it("sends the workbook out with its formulas, shows it before it opens again, and undoes the opening", async () => {
  const {page, trouble, sheet, panel} = await openFiles()
  await sheet.open("Plantings")
  const cells = () => page.locator(".ag-cell").allInnerTexts()
  const own = await cells()
  await page.getByRole("button", {name: "Send out…"}).click()
  const file = await sent(page, "With formulas, .xlsx")
  expect(file.name).toMatch(/^hollow-brook-farm-\d{4}-\d\d-\d\d\.xlsx$/)
  await expect.poll(() => panel.innerText()).toContain("The totals under the columns are not in it.")
  expect(await faults(page)).toEqual([])

  await page.getByRole("button", {name: "Bring in…"}).click()
  await chosen(page, file)
  await panel.getByRole("row", {name: /^Plantings 6/}).waitFor()
  expect(await faults(page)).toEqual([])
  await page.getByRole("button", {name: "Open it as a workbook"}).click()
  await expect.poll(sheet.said).toContain("Hollow Brook Farm is open.")
  await sheet.open("Plantings")
  await expect.poll(async () => (await cells()).slice(0, 3)).toEqual(own.slice(0, 3))
  await page.getByRole("button", {name: /^Undo: opening Hollow Brook Farm/}).click()
  await expect.poll(cells).toEqual(own)
  expect(trouble).toEqual([])
})

it("says what to do where the part of the program that writes files does not come", async () => {
  const {page, panel} = await openFiles()
  await page.route("**/*.js", (route) => route.abort())
  await page.getByRole("button", {name: "Send out…"}).click()
  await expect.poll(() => panel.innerText()).toContain("load this page again")
  await page.getByRole("button", {name: "Send it out"}).click()
  await page.getByText("Nothing was sent out. A part of the program did not come").first().waitFor()
  expect(await page.getByRole("button", {name: "Send it out"}).isEnabled()).toBe(true)
})

it("brings a table into a sheet once its units are said, without the lines that cannot be read", async () => {
  const {page, trouble, sheet, panel} = await openFiles()
  await page.getByRole("button", {name: "Bring in…"}).click()
  const text =
    "Planting;Day;Weight (lb)\nLong Acre;2026-05-27;100,5\nWell Field;2026-05-27;n/a\nWell Field;2026-05-28;90,5\n"
  await sheet.open("Pickings")
  const before = await page.locator(".ag-center-cols-container [role=row]").count()
  await chosen(page, {name: "scales.csv", buffer: Buffer.from(text)})
  await panel.getByLabel("Into the sheet").waitFor()
  expect(await panel.getByLabel("Into the sheet").locator("option:checked").innerText()).toBe("Pickings")
  expect(await panel.innerText()).toContain("Say first")
  await panel.getByLabel("Unit of Weight (lb)").selectOption({label: "in lb: turn it into kg"})
  await expect.poll(() => panel.innerText()).toContain("2 rows would be added below the last one, 1 cannot")
  expect(await panel.innerText()).toContain("line 3: “n/a” is not a number")
  expect(await faults(page)).toEqual([])
  await panel.getByRole("button", {name: "Bring in 2 rows"}).click()
  await expect.poll(sheet.said).toContain("2 rows of scales.csv brought into Pickings.")
  await page.getByRole("button", {name: /^Undo: 2 rows brought into Pickings/}).click()
  await expect.poll(() => page.locator(".ag-center-cols-container [role=row]").count()).toBe(before)
  expect(trouble).toEqual([])
})

it("refuses a file that is cut short with a sentence, and what is open stays", async () => {
  const {page, trouble, sheet, panel} = await openFiles()
  await sheet.open("Plantings")
  const own = await page.locator(".ag-cell").allInnerTexts()
  await page.getByRole("button", {name: "Send out…"}).click()
  const {buffer} = await sent(page, "Values alone, .ods")
  await page.getByRole("button", {name: "Bring in…"}).click()
  await chosen(page, {name: "cut.ods", buffer: buffer.subarray(0, buffer.length / 2)})
  await expect
    .poll(() => panel.locator(".why").innerText())
    .toBe(
      "cut.ods is not read. It is no workbook of this kind, or its end is missing. What was open is as it was.",
    )
  expect(await page.locator(".ag-cell").allInnerTexts()).toEqual(own)
  expect(trouble).toEqual([])
})
