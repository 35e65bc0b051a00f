import {AxeBuilder} from "@axe-core/playwright"
import type {Locator} from "playwright-core"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function openPrices() {
  const {page, trouble} = await openPlanner()
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"])
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Prices")
  const chosen = () => page.locator(".content .at").inputValue()
  const summary = async () => (await page.locator(".folio .sum").innerText()).replaceAll("\u00a0", " ")
  const copied = () => page.evaluate(() => navigator.clipboard.readText())
  const put = (text: string) => page.evaluate((text) => navigator.clipboard.writeText(text), text)
  return {page, trouble, sheet, chosen, summary, copied, put}
}

it("chooses the same rectangle by dragging, by Shift and a click, by keys and by its address", async () => {
  const {page, trouble, sheet, chosen, summary} = await openPrices()
  const sum =
    "4 of 4 filled; 4 numbers: sum 12.95 money/kg, mean 3.238 money/kg, 3.00 money/kg to 3.50 money/kg"
  const [from, to] = [await sheet.cell(2, "Price"), await sheet.cell(5, "Price")]
  await from.hover()
  await page.mouse.down()
  await to.hover()
  await page.mouse.up()
  expect([await chosen(), await summary()]).toEqual(["B2:B5", sum])

  await sheet.choose(9, "Price")
  await sheet.choose(2, "Price")
  await to.click({modifiers: ["Shift"]})
  expect([await chosen(), await summary()]).toEqual(["B2:B5", sum])

  await sheet.choose(2, "Price")
  for (let i = 0; i < 3; i++) await page.keyboard.press("Shift+ArrowDown")
  expect([await chosen(), await summary(), await sheet.said()]).toEqual([
    "B2:B5",
    sum,
    "B2:B5 chosen, 4 cells.",
  ])
  expect(await page.locator('.ag-cell[aria-selected="true"]').count()).toBe(4)

  await sheet.choose(1, "Price")
  await page.locator(".content .at").fill("b2:b5")
  await page.keyboard.press("Enter")
  expect([await chosen(), await summary()]).toEqual(["B2:B5", sum])
  await page.keyboard.press("Shift+ArrowUp") // the keyboard is on the sheet again
  expect(await chosen()).toBe("B2:B4")
  await page.locator('[row-index="2"] .ag-cell[col-id="row"]').click()
  expect(await chosen()).toBe("A3:C3")
  await page.locator('.ag-header-cell[col-id="1"]').click()
  expect(await chosen()).toBe("B1:B10")
  expect(trouble).toEqual([])
})

it("chooses rows and columns by dragging over their numbers and letters", async () => {
  const {page, trouble, sheet, chosen} = await openPrices()
  await sheet.choose(1, "Price")
  const drag = async (from: string, to: string) => {
    await page.locator(from).hover()
    await page.mouse.down()
    await page.locator(to).hover()
    await page.mouse.up()
    return chosen()
  }
  const number = (row: number) => `[row-index="${row - 1}"] .ag-cell[col-id="row"]`
  expect(await drag(number(3), number(6))).toBe("A3:C6")
  expect(await drag(number(6), '[row-index="4"] .ag-cell[col-id="2"]')).toBe("A5:C6") // over its cells too
  expect(await drag('.ag-header-cell[col-id="2"] .heading', '.ag-header-cell[col-id="1"] .heading')).toBe(
    "B1:C10",
  )
  expect(trouble).toEqual([])
})

it("goes on choosing while the mouse is held beyond the sheet, and shows how far", async () => {
  const {page, trouble, sheet, chosen} = await openPrices()
  await sheet.open("Weather by day") // longer than what is shown of it
  const cell = (await (await sheet.cell(2, "Soil")).boundingBox())!
  await page.mouse.move(cell.x + 9, cell.y + 9)
  await page.mouse.down()
  await page.mouse.move(cell.x + 9, cell.y + 99)
  const below = (await page.locator(".sheet").boundingBox())!
  await page.mouse.move(cell.x + 9, Math.min(below.y + below.height + 20, 880), {steps: 3})
  await page.locator('[row-index="39"]').first().waitFor() // the fortieth row is drawn
  await page.mouse.up()
  const reached = Number(/^[A-Z]2:[A-Z](\d+)$/.exec(await chosen())![1])
  expect(reached).toBeGreaterThan(30)
  await page.waitForTimeout(200)
  expect(await chosen()).toMatch(new RegExp(`:[A-Z]${reached}$`)) // it ends where the button is let go
  expect(trouble).toEqual([])
})

it("opens the acts on a cell, or on those chosen, by the mouse's second button", async () => {
  const {page, trouble, sheet, chosen} = await openPrices()
  const copy = page.getByRole("button", {name: /^Copy\b/}).first()
  const list = page.getByRole("group", {name: "More acts on the chosen cells"})
  const isOn = (name: string) => page.locator(`${name}:focus`).waitFor()
  /** Where the list opens, from the upper left of the cell; the keyboard goes into it and back to the cell. */
  const ask = async (row: number, open: (cell: Locator) => Promise<void>) => {
    const cell = await sheet.cell(row, "Price")
    await open(cell)
    await copy.waitFor()
    await isOn(".acts-list button")
    const [at, of, {height}] = [
      (await list.boundingBox())!,
      (await cell.boundingBox())!,
      page.viewportSize()!,
    ]
    expect(at.y).toBeGreaterThanOrEqual(0)
    expect(at.y + at.height).toBeLessThanOrEqual(height)
    await page.keyboard.press("Escape")
    await isOn(".ag-cell")
    return [await chosen(), Math.round(at.x - of.x)]
  }
  const second = (cell: Locator) => cell.click({button: "right", position: {x: 9, y: 9}})
  const key = () => page.keyboard.press("Shift+F10")
  await sheet.choose(2, "Price")
  await page.keyboard.press("Shift+ArrowDown")
  expect(await ask(3, second)).toEqual(["B2:B3", 9])
  expect(await ask(5, second)).toEqual(["B5", 9])
  expect(await ask(5, key)).toEqual(["B5", 0])
  await page.setViewportSize({width: 1440, height: 400}) // the list is longer: it scrolls
  expect(await ask(5, key)).toEqual(["B5", 0])
  expect(trouble).toEqual([])
})

it("puts the keyboard on the row of an address that was not drawn yet", async () => {
  const {page, trouble, sheet, chosen} = await openPrices()
  await sheet.open("Pickings")
  const focused = () =>
    page.evaluate(
      () =>
        window.document.activeElement?.closest("[row-index]")?.getAttribute("row-index") ??
        "not on the sheet",
    )
  for (const address of ["A60", "A2", "C40"]) {
    await page.locator(".content .at").fill(address)
    await page.keyboard.press("Enter")
    await expect.poll(focused).toBe(String(Number(address.slice(1)) - 1))
  }
  await page.keyboard.press("ArrowDown")
  expect(await chosen()).toBe("C41")
  expect(trouble).toEqual([])
})

it("copies to other programs and takes their blocks, asking where some of it cannot stand", async () => {
  const {page, trouble, sheet, copied, put} = await openPrices()
  await sheet.choose(1, "Week from opening")
  await page.keyboard.press("Shift+ArrowDown")
  await page.keyboard.press("Shift+ArrowRight")
  await page.keyboard.press("Control+c")
  await expect.poll(copied).toBe("1\t3.65\r\n2\t3.5")

  await put("3,9\r\n3,25\r\nmuch\r\n")
  await sheet.choose(1, "Price")
  await page.keyboard.press("Control+v")
  const asked = page.getByRole("alertdialog")
  await asked.waitFor()
  expect(await asked.innerText()).toContain(
    "1 of 3 cells cannot be pasted. B3: “much” is not a number; Price takes a number in money/kg. Bring in the others?",
  )
  await page.getByRole("button", {name: /^Bring in \d/}).click()
  expect([await sheet.text(1, "Price"), await sheet.text(2, "Price"), await sheet.text(3, "Price")]).toEqual([
    "3.90",
    "3.25",
    "3.30",
  ])
  await page.getByRole("button", {name: "Undo: paste of 2 cells in Prices"}).click()
  expect(await sheet.text(1, "Price")).toBe("3.65")
  expect(trouble).toEqual([])
})

it("moves what was cut to where it is pasted, formulas after it, by keys alone", async () => {
  const {page, trouble, sheet} = await openPrices()
  const cut = page.locator(".ag-cell[data-cut]")
  const line = page.getByRole("textbox", {name: /^Content of B5/})
  await sheet.type(5, "Price", "=B3*2")
  await sheet.choose(3, "Price")
  await page.keyboard.press("Shift+ArrowDown")
  await page.keyboard.press("Control+x")
  await expect.poll(() => cut.allInnerTexts()).toEqual(["3.30", "3.15"])
  await page.keyboard.press("Escape")
  await expect.poll(() => cut.count()).toBe(0)
  expect(await sheet.said()).toBe("B3:B4 stays where it is. Tab now leaves the sheet.")

  await page.keyboard.press("Control+x")
  await cut.first().waitFor()
  for (let i = 0; i < 8; i++) await page.keyboard.press("ArrowDown")
  await page.keyboard.press("Control+v")
  await expect.poll(() => sheet.text(11, "Price")).toBe("3.30")
  expect([await sheet.text(3, "Price"), await sheet.text(12, "Price"), await cut.count()]).toEqual([
    "",
    "3.15",
    0,
  ])
  expect(await sheet.said()).toContain("2 cells moved to B11:B12.")
  await sheet.choose(5, "Price")
  await expect.poll(() => line.inputValue()).toBe("=B11*2")
  expect(await sheet.text(5, "Price")).toBe("6.60")
  await page.keyboard.press("Control+z")
  await expect.poll(() => line.inputValue()).toBe("=B3*2")
  expect([await sheet.text(3, "Price"), await sheet.text(4, "Price")]).toEqual(["3.30", "3.15"])
  expect(trouble).toEqual([])
})

it("draws every row in view, though a block that is named reaches far below it", async () => {
  const {page, trouble} = await openPlanner({height: 1200})
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Pickings")
  const goTo = async (address: string) => {
    await page.getByLabel(/^Chosen cells/).fill(address)
    await page.keyboard.press("Enter")
    await page.locator(".ag-cell:focus").waitFor()
  }
  /** The rows that are seen, from the head of the sheet to its foot, point by point; "none" where none is drawn. */
  const seen = () =>
    page.evaluate(() => {
      const {left, bottom} = window.document.querySelector(".sheet")!.getBoundingClientRect()
      const head = window.document.querySelector(".sheet [role=columnheader]")!.getBoundingClientRect().bottom
      const points = Array.from({length: Math.floor((bottom - head - 20) / 10)}, (_, i) => head + 10 + i * 10)
      const rowAt = (y: number) => window.document.elementFromPoint(left + 100, y)?.closest("[row-index]")
      return points.map((y) => rowAt(y)?.getAttribute("row-index") ?? "none")
    })
  for (const [address, reach] of [
    ["B1:B60", "59"],
    ["B1", "0"],
  ] as const) {
    await goTo(address)
    await expect.poll(seen, {message: address}).toContain(reach)
    expect(await seen()).not.toContain("none")
  }
  expect(trouble).toEqual([])
})

it("fills down and continues a series from the list of acts, by keys alone", async () => {
  const {page, trouble, sheet} = await openPrices()
  await sheet.choose(2, "Price")
  for (let i = 0; i < 2; i++) await page.keyboard.press("Shift+ArrowDown")
  await page.keyboard.press("Control+d")
  await expect.poll(() => sheet.text(4, "Price")).toBe("3.50")
  await page.keyboard.press("Shift+F10")
  const acts = page.getByRole("group", {name: "More acts on the chosen cells"})
  await acts.waitFor()
  const {violations} = await new AxeBuilder({page}).analyze()
  expect(violations.map(({id, nodes}) => [id, nodes.map(({html}) => html)])).toEqual([])
  await page.getByLabel("Continue by steps of").fill("-0.1")
  await page.keyboard.press("Enter")
  await expect.poll(() => sheet.text(4, "Price")).toBe("3.30")
  await page.keyboard.press("ArrowDown") // the keyboard is on the sheet again
  expect(await page.locator(".content .at").inputValue()).toBe("B3")
  expect(trouble).toEqual([])
})

it("shows only the rows that are like the chosen one, and all again", async () => {
  const {page, trouble, sheet} = await openPrices()
  await sheet.open("Root samples")
  await sheet.choose(12, "Planting")
  const name = await sheet.text(12, "Planting")
  await page.keyboard.press("Shift+F10")
  await page.getByRole("button", {name: "Show only rows like this"}).click()
  await page.getByText(`10 of 50 rows shown: Planting is ${name}.`).first().waitFor()
  expect(await page.getByRole("grid").getAttribute("aria-label")).toContain("10 of 50 rows")
  await page.keyboard.press("Control+Home")
  await page.keyboard.press("ArrowDown")
  expect(await page.locator(".content .at").inputValue()).toBe("A12")
  await page.locator('.ag-row[row-index="2"] .ag-cell[col-id="4"]').click()
  expect(await page.locator(".content .at").inputValue()).toBe("E13")
  await page.keyboard.type("433")
  await page.keyboard.press("Enter")
  expect(await page.locator('.ag-row[row-index="2"] .ag-cell[col-id="4"]').innerText()).toBe("433")
  await page.getByRole("button", {name: "Show all rows"}).click()
  expect(await page.locator(".content .at").inputValue()).toBe("E14")
  expect(trouble).toEqual([])
})

it("keeps what is chosen while a finger scrolls the sheet", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  await page.locator(".ag-cell").first().waitFor()
  const chosen = page.locator(".content .at")
  await chosen.fill("B2:C3")
  await page.keyboard.press("Enter")
  const {x, y} = (await page.locator('.ag-row[row-index="1"] .ag-cell[col-id="3"]').boundingBox())!
  const touch = await page.context().newCDPSession(page)
  const finger = (type: "touchStart" | "touchMove" | "touchEnd", touchPoints: {x: number; y: number}[]) =>
    touch.send("Input.dispatchTouchEvent", {type, touchPoints})
  await finger("touchStart", [{x: x + 20, y: y + 10}])
  for (let i = 1; i <= 8; i++) await finger("touchMove", [{x: x + 20 - i * 20, y: y + 10}])
  await finger("touchEnd", [])
  const scrolled = () => page.locator(".ag-body-horizontal-scroll-viewport").evaluate((one) => one.scrollLeft)
  await expect.poll(scrolled).toBeGreaterThan(50)
  expect(await chosen.inputValue()).toBe("B2:C3")
  expect(trouble).toEqual([])
})

it("chooses a block by a finger that rests and moves on, and opens its acts by one that rests", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  await page.locator(".ag-cell").first().waitFor()
  const cellAt = (row: number, col: number) =>
    page.locator(`.ag-row[row-index="${row}"] .ag-cell[col-id="${col}"]`).first()
  await cellAt(4, 2).scrollIntoViewIfNeeded()
  const middle = async (row: number, col: number) => {
    const cell = cellAt(row, col)
    const {x, y, width, height} = (await cell.boundingBox())!
    return {x: x + width / 2, y: y + height / 2}
  }
  const touch = await page.context().newCDPSession(page)
  const finger = (type: "touchStart" | "touchMove" | "touchEnd", touchPoints: {x: number; y: number}[]) =>
    touch.send("Input.dispatchTouchEvent", {type, touchPoints})
  const chosen = page.locator(".content .at")
  const acts = page.getByRole("group", {name: "More acts on the chosen cells"})
  const [from, to] = [await middle(1, 1), await middle(3, 2)]
  const scrolled = await page.evaluate(() => scrollY)
  await finger("touchStart", [from])
  await expect.poll(() => chosen.inputValue()).toBe("B2") // it rests
  for (let i = 1; i <= 6; i++)
    await finger("touchMove", [
      {x: from.x + ((to.x - from.x) * i) / 6, y: from.y + ((to.y - from.y) * i) / 6},
    ])
  await finger("touchEnd", [])
  await expect.poll(() => chosen.inputValue()).toBe("B2:C4")
  expect(await page.evaluate(() => scrollY)).toBe(scrolled)
  expect(await acts.count()).toBe(0)

  await finger("touchStart", [await middle(2, 2)])
  await page.waitForTimeout(900) // longer than a finger has to rest
  await finger("touchEnd", [])
  await acts.waitFor()
  expect(await chosen.inputValue()).toBe("B2:C4") // the acts are on the block it rested in
  expect(trouble).toEqual([])
})

it("shows the whole list of acts on a phone, and puts it away for a tap elsewhere", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  await page.locator(".ag-cell").first().waitFor()
  for (const width of [320, 390, 480, 800]) {
    await page.setViewportSize({width, height: 844})
    await page.getByRole("button", {name: "More acts"}).tap()
    const list = (await page.getByRole("group", {name: "More acts on the chosen cells"}).boundingBox())!
    expect(list.x).toBeGreaterThanOrEqual(0)
    expect(list.x + list.width).toBeLessThanOrEqual(width)
    await page.getByRole("heading", {level: 1}).tap()
    expect(await page.getByRole("button", {name: "Fill down"}).count()).toBe(0)
  }
  expect(trouble).toEqual([])
})

it("has the acts of rows in the list alone on a phone and on a page that answers, so that the answer stands first", async () => {
  const {page, trouble, sheet} = await openPrices()
  const act = (name: string) => page.getByRole("button", {name, exact: true})
  await act("Delete row").waitFor()
  await page.setViewportSize({width: 390, height: 844})
  expect(await act("Delete row").count()).toBe(0)
  const rows = async () => (await page.getByRole("grid").getAttribute("aria-label"))!.match(/\d+ rows/)![0]
  const before = await rows()
  await act("More acts").click()
  await act("Put a row in above").click()
  await expect.poll(rows).toBe(`${Number.parseInt(before) + 1} rows`)
  await act("More acts").click()
  await act("Delete row").click()
  await expect.poll(rows).toBe(before)
  await page.setViewportSize({width: 1440, height: 900})
  await sheet.open("Replant")
  await act("More acts").waitFor()
  expect(await act("Delete row").count()).toBe(0)
  expect(trouble).toEqual([])
})

it("opens the line by a second tap, and chooses a block by two taps and no drag", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  await page.locator(".ag-cell").first().waitFor()
  const cell = (row: number, col: number) =>
    page.locator(`.ag-row[row-index="${row}"] .ag-cell[col-id="${col}"]`).first()
  const chosen = page.locator(".content .at")
  const line = page.getByRole("textbox", {name: /^Content of /})
  const hasLine = () => line.evaluate((one) => one === window.document.activeElement)
  await cell(1, 1).tap()
  await expect.poll(() => chosen.inputValue()).toBe("B2")
  expect(await hasLine()).toBe(false)
  await cell(1, 1).tap()
  await expect.poll(hasLine).toBe(true)
  await page.keyboard.press("Escape")

  await page.getByRole("button", {name: "More acts"}).tap()
  await page.getByRole("button", {name: "Choose up to another cell"}).tap()
  await expect.poll(() => page.locator(".folio [role=status]").first().innerText()).toContain("from B2")
  await cell(3, 2).tap()
  await expect.poll(() => chosen.inputValue()).toBe("B2:C4")
  await cell(0, 1).tap()
  await expect.poll(() => chosen.inputValue()).toBe("B1")
  expect(trouble).toEqual([])
})
