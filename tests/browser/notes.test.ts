import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function openRecords() {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Records")
  const faults = async () => (await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)
  return {page, trouble, sheet, faults}
}

it("asks about a yield ten times the record, and keeps it with its reason as a note", async () => {
  const {page, trouble, sheet, faults} = await openRecords()
  await sheet.choose(2, "Saleable crop")
  await page.keyboard.type("44 000")
  await page.keyboard.press("Enter")
  const asked = page.getByRole("alertdialog")
  await expect
    .poll(() => asked.innerText())
    .toMatch(/44.000.kg\/ha is outside the usual.*Did you mean 4.400.kg\/ha\?/s)
  expect(await faults()).toEqual([])
  await page.getByRole("button", {name: "Keep it for this reason"}).click()
  await expect.poll(() => asked.innerText()).toContain("A reason is needed")
  await asked.getByLabel("Reason").fill("two years on one note")
  await page.keyboard.press("Enter")
  await expect.poll(() => sheet.text(2, "Saleable crop")).toBe("44\u202f000")
  const cell = await sheet.cell(2, "Saleable crop")
  expect(await cell.getAttribute("aria-label")).toMatch(/questioned\. Note: Kept: two years on one note$/)
  // One step back takes the number and its note away.
  await page.getByRole("button", {name: "Undo: saleable crop of North Bench"}).click()
  await expect.poll(() => sheet.text(2, "Saleable crop")).toBe("3\u202f010")
  expect(await cell.getAttribute("data-note")).toBeNull()

  // What was probably meant is one key away.
  await sheet.choose(2, "Saleable crop")
  await page.keyboard.type("44000")
  await page.keyboard.press("Enter")
  await asked.waitFor()
  await page.keyboard.press("Enter")
  await expect.poll(() => sheet.text(2, "Saleable crop")).toBe("4\u202f400")
  expect(trouble).toEqual([])
})

it("writes, reads, finds and settles a note by keys alone", async () => {
  const {page, trouble, sheet, faults} = await openRecords()
  await sheet.choose(4, "Document")
  await page.keyboard.press("Shift+F2")
  const panel = page.locator(".note-panel")
  await panel.waitFor()
  await page.keyboard.press("Tab") // put away
  await page.keyboard.press("Tab")
  await page.keyboard.type("Ask the shed for the weights")
  await page.keyboard.press("Tab")
  await page.keyboard.type("AB")
  await page.keyboard.press("Enter")
  await expect.poll(() => panel.innerText()).toContain("The note is kept.")
  expect(await faults()).toEqual([])
  await page.getByRole("button", {name: "Undo: note of document"}).click()
  await expect.poll(() => panel.locator("textarea").inputValue()).toBe("")
  await page.getByRole("button", {name: "Redo: note of document"}).click()
  await expect.poll(() => panel.locator("textarea").inputValue()).toBe("Ask the shed for the weights")
  await panel.getByRole("button", {name: "Settled"}).click()
  await expect.poll(() => panel.locator(".notes").innerText()).toMatch(/AB, .* settled/)

  // The note is read where the cell is looked at, and found from anywhere.
  await panel.getByRole("button", {name: "Put away"}).click()
  await expect.poll(() => sheet.whereFrom().innerText()).toContain("Note: Ask the shed for the weights")
  await page.keyboard.press("Control+f")
  await page.getByLabel("Look for").fill("ask the shed")
  await page.getByRole("button", {name: /^Records D4, Document of Long Acre, note/}).waitFor()
  expect(trouble).toEqual([])
})

it("keeps columns in view, and takes a width by dragging a column's edge", async () => {
  const {page, trouble, sheet} = await openRecords()
  await sheet.choose(1, "Year")
  await page.keyboard.press("Shift+F10")
  await page.getByRole("button", {name: "Column: heading, width, format"}).click()
  await page.getByRole("button", {name: "Keep the columns up to this one in view"}).click()
  await expect
    .poll(() =>
      page.locator(".ag-pinned-left-header [col-id], .ag-grid-pinned-left-cells [col-id='1']").count(),
    )
    .toBeGreaterThan(0)
  await sheet.choose(1, "Year")
  await page.keyboard.press("End")
  const year = (await (await sheet.cell(1, "Year")).boundingBox())!
  expect(year.x).toBeGreaterThan(0)
  await page.keyboard.press("Home")
  const edge = (await page.locator('.ag-header-cell[col-id="1"]').boundingBox())!
  await page.mouse.move(edge.x + edge.width - 2, edge.y + 30)
  await page.mouse.down()
  await page.mouse.move(edge.x + edge.width + 46, edge.y + 30, {steps: 4})
  await page.mouse.up()
  await page.getByRole("button", {name: "Undo: column Year of Records changed"}).waitFor()
  const wider = (await (await sheet.cell(1, "Year")).boundingBox())!.width
  expect(wider).toBeGreaterThan(year.width + 30)
  expect(trouble).toEqual([])
})
