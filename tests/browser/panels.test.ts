import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {lineBindings} from "../../src/editor/lineKeys"
import {sheetBindings} from "../../src/editor/sheetKeys"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function open() {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const faults = async () => (await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)
  return {page, trouble, sheet: sheetOn(page), faults}
}

it("lists every key from the table that binds them, and finds one", async () => {
  const {page, trouble, sheet, faults} = await open()
  await sheet.choose("Long Acre", "Open")
  await page.keyboard.press("Control+/")
  const panel = page.locator(".keys-panel")
  await panel.waitFor()
  expect(await panel.locator("tr").count()).toBe(sheetBindings.length + lineBindings.length)
  expect(await faults()).toEqual([])
  await panel.getByLabel("Find a key").fill("fill down")
  expect(await panel.locator("tr").allInnerTexts()).toEqual([expect.stringMatching(/^Fill down.*Ctrl \+ D/s)])
  expect(trouble).toEqual([])
})

it("changes a column's heading, format, width and rule by keys alone, in steps that can be undone", async () => {
  const {page, trouble, sheet, faults} = await open()
  await sheet.open("Prices")
  await sheet.choose(1, "Price")
  await page.keyboard.press("Shift+F10")
  await page.getByRole("button", {name: "Column: heading, width, format"}).click()
  const panel = page.locator(".column-panel")
  await expect
    .poll(() => page.evaluate(() => window.document.activeElement?.textContent))
    .toBe("Column B: Price")
  const wide = (await (await sheet.cell(1, "Price")).boundingBox())!.width
  const fields = () => Promise.all(["Heading", "Width"].map((name) => panel.getByLabel(name).inputValue()))
  const asTheyWere = await fields()
  await panel.getByLabel("Heading").fill("Price net")
  await panel.getByLabel("Shown as").selectOption("3 decimals")
  await panel.getByLabel("Width").fill("12")
  await panel.getByLabel("to", {exact: true}).fill("9")
  await page.keyboard.press("Enter")
  await expect.poll(() => sheet.text(1, "Price net")).toBe("3.650")
  expect((await (await sheet.cell(1, "Price net")).boundingBox())!.width).toBeGreaterThan(wide)
  expect(await faults()).toEqual([])
  await sheet.choose(1, "Price net")
  await page.keyboard.type("12")
  await page.keyboard.press("Enter")
  await expect.poll(sheet.said).toContain("Price net 12 money/kg is above 9 money/kg")
  await page.keyboard.press("Escape")
  await page.getByRole("button", {name: "Undo: column Price of Prices changed"}).click()
  await expect.poll(() => sheet.text(1, "Price")).toBe("3.65")
  expect(await fields()).toEqual(asTheyWere) // kept again, they would bring back what was undone
  await page.getByRole("button", {name: "Put away"}).click()
  await expect
    .poll(() => page.evaluate(() => window.document.activeElement?.getAttribute("col-id")))
    .toBe("1") // the sheet has the keyboard's focus again
  await page.keyboard.press("Shift+F10")
  await page.getByRole("button", {name: "Column: heading, width, format"}).click()
  await panel.getByLabel("Width").fill("wide")
  await page.keyboard.press("Enter")
  expect(await panel.locator("[aria-live]").innerText()).toBe(
    "“wide” is no width: type a number from 2 to 60.",
  )
  await panel.getByLabel("Width").fill("8")
  await panel.getByLabel("below").fill("1")
  await panel.getByLabel("or above").fill("Infinity") // a file holds no such number
  await page.keyboard.press("Enter")
  expect(await panel.locator("[aria-live]").innerText()).toBe(
    "What is usual needs two numbers, the lower first.",
  )
  expect(trouble).toEqual([])
})

it("adds, renames, moves, copies and deletes a sheet, each in a step that can be undone", async () => {
  const {page, trouble, sheet, faults} = await open()
  await sheet.open("Prices")
  await page.keyboard.press("Tab")
  await page.getByRole("button", {name: "More acts"}).click()
  await page.getByRole("button", {name: "Sheet: name, place, copy"}).click()
  const panel = page.locator(".column-panel")
  const title = page.getByRole("heading", {level: 1})
  await panel.getByLabel("Name", {exact: true}).fill("Fern")
  await panel.getByRole("button", {name: "Rename it"}).click()
  expect(await panel.locator("[aria-live]").innerText()).toContain("Fern")
  await panel.getByLabel("Name", {exact: true}).fill("Prices net")
  await panel.getByRole("button", {name: "Rename it"}).click()
  await expect.poll(() => title.innerText()).toBe("Prices net")
  const focused = () => page.evaluate(() => window.document.activeElement?.textContent)
  expect(await focused()).toBe("Rename it") // where it was: the next act is at hand
  await panel.getByRole("button", {name: "Move down"}).click()
  await page.getByRole("button", {name: "Undo: sheet Prices net moved"}).waitFor()
  expect(await focused()).toBe("Move down")
  await panel.getByRole("button", {name: "Move up"}).click()
  expect(await faults()).toEqual([])
  await panel.getByRole("button", {name: "Copy it"}).click()
  await expect.poll(() => title.innerText()).toBe("Prices net copy")
  await panel.getByRole("button", {name: "Delete it"}).click()
  await page.getByRole("alertdialog").getByRole("button", {name: "Delete"}).click()
  await expect.poll(() => title.innerText()).not.toBe("Prices net copy")
  await sheet.open("Season plan")
  expect(await sheet.text("North Bench", "Held by")).toBe("price")
  await page.getByRole("button", {name: "Undo: sheet Prices net copy taken out"}).click()
  await page.getByRole("button", {name: "Undo: sheet Prices net copied"}).click()
  await page.getByRole("button", {name: "Undo: sheet Prices net moved"}).click()
  await page.getByRole("button", {name: "Undo: sheet Prices net moved"}).click()
  await page.getByRole("button", {name: "Undo: sheet Prices renamed"}).click()
  expect(await sheet.text("North Bench", "Held by")).toBe("price")
  expect(trouble).toEqual([])
})

it("is put away by Esc, but not with a note that is not kept yet; the sheet has the keyboard's focus again", async () => {
  const {page, trouble, sheet} = await open()
  const focused = () => page.evaluate(() => window.document.activeElement?.getAttribute("col-id"))
  const title = () => page.evaluate(() => window.document.activeElement?.tagName)
  await sheet.choose("Long Acre", "Open")
  const chosen = await focused()
  await page.keyboard.press("Control+/")
  await expect.poll(title).toBe("H2")
  await page.keyboard.press("Escape")
  await expect.poll(focused).toBe(chosen)
  expect(await page.locator(".keys-panel").count()).toBe(0)

  await page.keyboard.press("Shift+F2")
  await expect.poll(title).toBe("H2")
  await page.getByLabel("What to know").fill("Ask the shed")
  await page.keyboard.press("Escape")
  await expect.poll(() => page.locator(".note-panel").innerText()).toContain("not kept yet")
  await page.keyboard.press("Escape")
  await expect.poll(focused).toBe(chosen)
  expect(await page.locator(".note-panel").count()).toBe(0)
  expect(trouble).toEqual([])
})

it("shows the cells that a question speaks of while it waits, and comes back after the answer", async () => {
  const {page, trouble, sheet} = await open()
  await sheet.open("Named values")
  const used = page.locator('.ag-cell[col-id="0"]', {hasText: /^Season$/})
  await used.click()
  await page.keyboard.press("Delete")
  const asked = page.getByRole("alertdialog")
  await expect.poll(() => asked.innerText()).toMatch(/formulas? uses? Season by its name/)
  const link = asked.getByRole("button", {name: "Records!J1"})
  await link.click()
  await page.getByRole("heading", {level: 1, name: "Records"}).waitFor()
  await expect.poll(() => page.locator(".content .at").inputValue()).toBe("J1")
  await asked.getByRole("button", {name: "Leave it"}).click()
  await page.getByRole("heading", {level: 1, name: "Named values"}).waitFor()
  await expect.poll(() => page.evaluate(() => window.document.activeElement?.textContent)).toBe("Season")
  expect(trouble).toEqual([])
})

it("gives the keyboard back to the title where a panel is left over a plan without a planting", async () => {
  const {page, trouble} = await open()
  await page.getByRole("button", {name: "A blank workbook"}).click()
  await page.getByRole("heading", {level: 1, name: "Season plan"}).waitFor()
  const focused = () => page.evaluate(() => window.document.activeElement?.tagName)
  await expect.poll(focused).toBe("H1") // what is opened has the keyboard
  await page.getByRole("button", {name: "Help", exact: true}).press("Enter")
  await expect.poll(focused).toBe("H2") // of the panel
  await page.keyboard.press("Escape")
  await expect.poll(focused).toBe("H1")
  expect(trouble).toEqual([])
})
