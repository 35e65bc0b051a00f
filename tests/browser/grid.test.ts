import {expect, it} from "vitest"
import {seeded} from "../workbook/documents"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function openSheet(name: string) {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open(name)
  return {page, trouble, sheet, chosen: page.locator(".content .at")}
}

it("names the cell by which a formula fails, and leads to it", async () => {
  const {trouble, sheet, chosen} = await openSheet("Losses")
  const why = sheet.whereFrom().locator(".why")
  await sheet.type(2, "Lost", "0")
  await sheet.type(1, "What it was", "=C1/C2")
  await sheet.choose(1, "What it was")
  expect(await sheet.text(1, "What it was")).toBe("#DIV/0!")
  await expect.poll(() => why.innerText()).toMatch(/^Divides by zero: Lost of North Bench is 0\s%\.$/)
  await sheet.type(2, "What it was", "=D1+1") // the error goes on, and says where it began
  await sheet.choose(2, "What it was")
  await expect
    .poll(() => why.innerText())
    .toBe("Divides by zero. Started in What it was of Long Acre, Losses")
  await why.getByRole("button").click()
  await why.getByRole("button", {name: "Lost of North Bench"}).waitFor()
  expect(await chosen.inputValue()).toBe("D2") // reading on does not choose another cell
  expect(trouble).toEqual([])
})

it("tells at its heading which column the rows were sorted by, until that is undone", async () => {
  const {page, trouble, sheet} = await openSheet("Plantings")
  const sorted = () =>
    page
      .locator("[role=columnheader][aria-sort]")
      .evaluateAll((all) =>
        all.map((head) => [head.querySelector(".heading")!.textContent, head.getAttribute("aria-sort")]),
      )
  await sheet.choose(1, "Area")
  await page.getByRole("button", {name: "More acts"}).click()
  await page.getByRole("button", {name: "Sort rows, highest first"}).click()
  await expect.poll(sorted).toEqual([["Area", "descending"]])
  await sheet.open("Fern")
  expect(await sorted()).toEqual([])
  await sheet.open("Plantings")
  expect(await sorted()).toEqual([["Area", "descending"]])
  await page.keyboard.press("Control+z")
  await expect.poll(sorted).toEqual([])
  expect(trouble).toEqual([])
})

it("gives a column another width by dragging, and takes it back by the keys at once", async () => {
  const {page, trouble, sheet} = await openSheet("Prices")
  await sheet.choose(2, "Price")
  const head = page.locator('.ag-header-cell[col-id="1"]')
  const width = async () => Math.round((await head.boundingBox())!.width)
  const was = await width()
  const edge = (await head.locator(".ag-header-cell-resize").boundingBox())!
  await page.mouse.move(edge.x + edge.width / 2, edge.y + 20)
  await page.mouse.down()
  await page.mouse.move(edge.x + edge.width / 2 + 80, edge.y + 20, {steps: 5})
  await page.mouse.up()
  await expect.poll(width).toBe(was + 80)
  await page.getByRole("button", {name: "Undo: "}).waitFor() // the grid tells of the drag's end a moment after it
  await page.keyboard.press("Control+z")
  await expect.poll(width).toBe(was)
  await page.keyboard.press("Control+y")
  await expect.poll(width).toBe(was + 80)
  expect(trouble).toEqual([])
})

it("cuts no heading and no cell of the demonstration farm", async () => {
  const {page, trouble} = await openPlanner({width: 3600, height: 1400}) // all columns are drawn
  await page.locator(".ag-cell").first().waitFor()
  const contents = page.getByRole("navigation", {name: "Contents"}).locator("li button:has(span)")
  const names = await contents.evaluateAll((all) => all.map((one) => one.firstChild!.textContent!))
  expect(names.length).toBeGreaterThan(50)
  const cut: Record<string, string[]> = {}
  for (const name of names) {
    await sheetOn(page).open(name)
    const found = await page
      .locator(".ag-header-cell .heading, .ag-header-cell .unit, .ag-cell .text")
      .evaluateAll((all) =>
        all
          .filter((one) => one.scrollWidth > one.clientWidth || one.scrollHeight > one.clientHeight + 3)
          .map((one) => one.textContent!),
      )
    if (found.length > 0) cut[name] = found
  }
  expect(cut).toEqual({})
  expect(trouble).toEqual([])
})

it("shows a sentence of the sheet whole on a narrow page, and a long name in two lines of its row", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844})
  await page.locator(".ag-cell").first().waitFor()
  const cell = page.locator('.ag-cell[col-id="0"] .text', {hasText: "North Bench"}).first()
  const one = await cell.evaluate((text) => text.clientHeight)
  await sheetOn(page).choose("North Bench", "Planting")
  await page.locator("summary", {hasText: "Contents"}).click()
  await sheetOn(page).open("Stands ahead")
  const two = page.locator('.ag-cell[col-id="0"] .text', {hasText: "North Bench anew"})
  await two.waitFor()
  expect(await two.evaluate((text) => [text.scrollWidth > text.clientWidth, text.clientHeight])).toEqual([
    false,
    one + 16,
  ])
  await page.locator("summary", {hasText: "Contents"}).click()
  await sheetOn(page).open("Read me")
  const told = (await page.locator('[row-index="0"] .ag-cell[col-id="1"]').boundingBox())!
  expect(told.x + told.width).toBeLessThanOrEqual(390)
  expect(trouble).toEqual([])
})

it("ends where it began, whatever keys were pressed, by undoing all of it", async () => {
  const {page, trouble, sheet} = await openSheet("Prices")
  const {keyboard} = page
  await sheet.choose(3, "Price")
  const cells = () => page.locator(".ag-cell").allInnerTexts()
  const began = await cells()
  const random = seeded(7)
  const pick = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)]!
  const moves = ["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "Control+ArrowDown"]
  const reaches = ["Shift+ArrowDown", "Shift+ArrowUp", "Shift+ArrowRight"]
  const acts = ["Delete", "Control+d", "Control+r", "Control+v"]
  for (let i = 0; i < 24; i++) {
    if (i % 4 === 0) for (const key of ["Control+x", "ArrowDown", "Control+v"]) await keyboard.press(key)
    await keyboard.press(pick([...moves, ...reaches, ...acts]))
    if (i % 3 === 0) {
      await keyboard.type(pick(["3.1", "7", "=B1*2", "word", "="]))
      await keyboard.press(pick(["Enter", "Tab", "Escape"]))
    }
    await keyboard.press("Escape") // a question or a refusal is left, and does no harm where there is none
    await keyboard.press("Escape")
    if (i % 7 === 6) await keyboard.press(pick(["Control+z", "Control+y"]))
  }
  const undo = page.getByRole("button", {name: /^Undo/})
  const redo = page.getByRole("button", {name: /^Redo/})
  const after = await cells()
  expect(after).not.toEqual(began)
  while (await undo.isEnabled()) await undo.click()
  await expect.poll(cells).toEqual(began)
  while (await redo.isEnabled()) await redo.click()
  await expect.poll(cells).toEqual(after)
  expect(trouble).toEqual([])
}, 180_000)
