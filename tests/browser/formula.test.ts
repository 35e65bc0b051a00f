import {AxeBuilder} from "@axe-core/playwright"
import type {Page} from "playwright-core"
import {describe, expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** The sheet Plantings, whose areas are typed. */
async function openPlantings() {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Plantings")
  return {page, trouble, sheet, field: page.getByRole("textbox", {name: /^Content of/})}
}

/** A number as it is shown, without the spaces between its thousands. */
const number = (text: string) => Number(text.replace(/[^\d.]/g, ""))

const isTyping = (page: Page) => page.evaluate(() => document.activeElement?.tagName === "TEXTAREA")

/** The letter of a column of the open sheet. */
const letterOf = (page: Page, heading: string) =>
  page.locator("[role=columnheader]", {hasText: heading}).first().locator(".let").innerText()

describe("pointing with the mouse", () => {
  it("puts in the cell that is clicked, a range with Shift, and keeps the typing in the line", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    const area = await letterOf(page, "Area")
    const sum = number(await sheet.text(1, "Area")) + number(await sheet.text(2, "Area"))
    await sheet.choose(3, "Area")
    await page.keyboard.type("=SUM(")
    await sheet.choose(2, "Area")
    expect(await field.inputValue()).toBe(`=SUM(${area}2`)
    expect(await isTyping(page)).toBe(true)
    await sheet.choose(1, "Area") // in its place, since nothing else was typed
    expect(await field.inputValue()).toBe(`=SUM(${area}1`)
    await (await sheet.cell(2, "Area")).click({modifiers: ["Shift"]})
    expect(await field.inputValue()).toBe(`=SUM(${area}1:${area}2`)
    expect(await (await sheet.cell(2, "Area")).getAttribute("data-ref")).toBe("1")
    expect(await page.locator(".mirror .r1").innerText()).toBe(`${area}1:${area}2`)
    await page.keyboard.type(")")
    await page.keyboard.press("Enter")
    await expect.poll(async () => number(await sheet.text(3, "Area"))).toBeCloseTo(sum, 6)
    expect(trouble).toEqual([])
  })

  it("makes a range by dragging, and a whole column by its heading", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    const area = await letterOf(page, "Area")
    await sheet.choose(4, "Area")
    await page.keyboard.type("=SUM(")
    const [from, to] = [await sheet.cell(1, "Area"), await sheet.cell(3, "Area")]
    await from.hover()
    await page.mouse.down()
    await to.hover()
    await page.mouse.up()
    expect(await field.inputValue()).toBe(`=SUM(${area}1:${area}3`)
    await (await sheet.cell(2, "Area")).hover() // the button is up: pointing is done
    expect(await field.inputValue()).toBe(`=SUM(${area}1:${area}3`)
    await page.locator("[role=columnheader]", {hasText: "Area"}).first().click()
    expect(await field.inputValue()).toBe(`=SUM(${area}:${area}`)
    expect(await isTyping(page)).toBe(true)
    await page.locator('.ag-row[row-id="1"] .ag-cell[col-id="row"]').click() // a row's number is no reference
    expect(await field.inputValue()).toBe(`=SUM(${area}:${area}`)
    expect(await isTyping(page)).toBe(true)
    await page.keyboard.press("Escape")
    expect(trouble).toEqual([])
  })

  it("keeps a formula that waits for no reference when another cell is clicked", async () => {
    const {page, sheet, field} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=2+3")
    await sheet.choose(2, "Area")
    await expect.poll(async () => number(await sheet.text(1, "Area"))).toBe(5)
    await (await sheet.cell(2, "Area")).dblclick()
    await expect.poll(() => page.locator(".content .state").innerText()).toBe("editing")
    await page.keyboard.press("Home")
    await page.keyboard.type("=2*")
    expect(await field.inputValue()).toMatch(/^=2\*\d/)
  })
})

describe("pointing at another sheet", () => {
  it("keeps the formula while the sheet is opened from the contents, and comes back with Enter", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=2*")
    await sheet.open("Crop values")
    expect(await field.inputValue()).toBe("=2*'Crop values'!A1")
    expect(await isTyping(page)).toBe(true)
    const value = number(await sheet.text(3, "Number"))
    await sheet.choose(3, "Number")
    const letter = await letterOf(page, "Number")
    expect(await field.inputValue()).toBe(`=2*'Crop values'!${letter}3`)
    expect(await (await sheet.cell(3, "Number")).getAttribute("data-ref")).toBe("1")
    await page.keyboard.press("Enter")
    await page.getByRole("heading", {level: 1, name: "Plantings", exact: true}).waitFor()
    await page.locator(".ag-cell").first().waitFor()
    await expect.poll(async () => number(await sheet.text(1, "Area"))).toBeCloseTo(2 * value, 1)
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute("aria-label"))
    await expect.poll(focused).toMatch(/Area of/) // the keyboard is on the next row
    expect(trouble).toEqual([])
  })
})

describe("pointing with keys", () => {
  it("goes by Ctrl and arrows, widens with Shift, fixes with F4, and says what is pointed at", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    const area = await letterOf(page, "Area")
    await sheet.choose(3, "Area")
    await page.keyboard.type("=SUM(")
    await page.keyboard.press("Control+ArrowUp")
    expect(await field.inputValue()).toBe(`=SUM(${area}2`)
    expect(await sheet.said()).toMatch(new RegExp(`^${area}2, Area of `))
    await page.keyboard.press("Control+Shift+ArrowUp")
    expect(await field.inputValue()).toBe(`=SUM(${area}1:${area}2`)
    for (const [col, row] of [
      ["$", "$"],
      ["", "$"],
      ["$", ""],
      ["", ""],
    ]) {
      await page.keyboard.press("F4")
      expect(await field.inputValue()).toBe(`=SUM(${col}${area}${row}1:${col}${area}${row}2`)
    }
    await page.keyboard.press("Alt+PageDown")
    expect(await field.inputValue()).toMatch(/^=SUM\(('[^']+'|\w+)!A1$/)
    await page.keyboard.press("Escape")
    await page.getByRole("heading", {level: 1, name: "Plantings", exact: true}).waitFor()
    expect(trouble).toEqual([])
  })
})

describe("what is off in a formula", () => {
  it("is told under the field before Enter, with its place marked", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=SUM((2+3")
    const line = page.locator(".off-line")
    await expect.poll(() => line.innerText()).toBe("2 brackets are not closed.")
    expect(await line.getAttribute("role")).toBe("status")
    expect(await field.getAttribute("aria-describedby")).toContain(await line.getAttribute("id"))
    expect(await page.locator(".mirror .off").allInnerTexts()).toEqual(["(", "("])
    await page.keyboard.type(")")
    expect(await line.innerText()).toBe("")
    expect(await page.locator(".mirror .pair").allInnerTexts()).toEqual(["(", ")"])
    await expect.poll(() => line.innerText()).toBe("1 bracket is not closed.")
    await page.keyboard.press("Enter")
    expect(await page.locator(".hint").innerText()).toContain("1 bracket is not closed")
    await page.keyboard.type(")")
    await page.keyboard.press("Enter")
    expect(number(await sheet.text(1, "Area"))).toBe(5)
    expect(trouble).toEqual([])
  })

  it("names the function that was probably meant", async () => {
    const {page, sheet} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=SPEAR.AVERAGE(2)")
    await expect
      .poll(() => page.locator(".off-line").innerText())
      .toBe("There is no function SPEAR.AVERAGE (did you mean SPEAR.MEAN?).")
    expect(await page.locator(".mirror .off").allInnerTexts()).toEqual(["SPEAR.AVERAGE"])
    await page.keyboard.press("ArrowLeft") // into the call
    expect(await page.locator(".hint").innerText()).not.toContain("standard function")
  })
})

describe("a standard function", () => {
  it("is offered before what only begins like it, and tells the names of its arguments", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=SU")
    await page.keyboard.press("Tab")
    expect(await field.inputValue()).toBe("=SUM(")
    const hint = page.locator(".hint")
    await expect.poll(() => hint.innerText()).toBe("SUM(numbers, …)")
    await page.keyboard.type("IF(B1>2,")
    await expect.poll(() => hint.innerText()).toBe("IF(condition, ifTrue, [ifFalse])")
    expect(await hint.locator(".now").innerText()).toContain("ifTrue")
    await page.keyboard.type('1,2,"')
    await expect.poll(() => hint.innerText()).toContain("one argument too many")
    expect(trouble).toEqual([])
  })
})

describe("a standard function that was added", () => {
  it("is offered with its card, and tells its arguments, those that repeat too", async () => {
    const {page, trouble, sheet, field} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=AVERAGEIF")
    await page.getByRole("option", {name: /AVERAGEIFS/}).click()
    await expect.poll(() => field.inputValue()).toBe("=AVERAGEIFS(")
    const hint = page.locator(".hint")
    await page.keyboard.type('B:B,B:B,">0",')
    await expect.poll(() => hint.locator(".now").innerText()).toContain("range")
    expect(await hint.innerText()).toContain("AVERAGEIFS(averaged, range, condition, …)")
    await page.keyboard.press("Escape")
    await page.keyboard.press("Escape")
    await page.getByRole("button", {name: "Help", exact: true}).click()
    await page.locator(".help-panel").getByRole("searchbox").fill("convert")
    await page.getByRole("button", {name: "CONVERT"}).click()
    const card = await page.locator(".help-panel .help").innerText()
    expect(card).toContain('=CONVERT(1,"lbm","g") gives 453.59237')
    expect(card).toContain("section 6.16.18")
    expect(trouble).toEqual([])
  })
})

describe("accessibility while a formula is typed", () => {
  const findings = async (page: Page) => {
    // Where typing shows: the line with what is beside it, the cell typed in, the one pointed at, the row to fill.
    const {violations} = await new AxeBuilder({page: page as never})
      .include(".foot")
      .include('[row-index="1"],[row-index="2"],[row-index="6"]')
      .analyze()
    return violations.map(({id, nodes}) => `${id}: ${nodes.map(({html}) => html.slice(0, 160)).join(" | ")}`)
  }

  it("comes into view whole, under a sheet that leaves no room", async () => {
    const {page, trouble, sheet} = await openPlantings()
    await sheet.open("Prices")
    await sheet.choose(11, "Price")
    await page.keyboard.type("=SPE")
    const list = page.getByRole("listbox")
    const foot = (await page.locator(".folio").boundingBox())!
    const end = async () => {
      const {y, height} = (await list.boundingBox())!
      return y + height
    }
    await expect.poll(end).toBeLessThanOrEqual(foot.y)
    expect(trouble).toEqual([])
  })

  it("tells the chosen name of the list, and axe finds nothing", async () => {
    const {page, sheet, field} = await openPlantings()
    await sheet.choose(1, "Area")
    await page.keyboard.type("=SPEAR.")
    await page.keyboard.press("ArrowDown")
    await page.keyboard.press("ArrowDown")
    const chosen = page.getByRole("option", {selected: true})
    expect(await field.getAttribute("aria-activedescendant")).toBe(await chosen.getAttribute("id"))
    expect(await field.getAttribute("aria-controls")).toBe(await page.getByRole("listbox").getAttribute("id"))
    await expect.poll(() => page.locator(".off-line").innerText()).toMatch(/\d names; Tab takes SPEAR\./)
    expect(await findings(page)).toEqual([])
    await page.keyboard.press("Escape")
    expect(await field.getAttribute("aria-controls")).toBeNull()
    expect(await field.getAttribute("aria-activedescendant")).toBeNull()
  })

  it("finds nothing while cells are pointed at and something is off", async () => {
    const {page, sheet} = await openPlantings()
    await sheet.choose(3, "Area")
    await page.keyboard.type("=SUM(")
    await page.keyboard.press("Control+ArrowUp")
    await expect.poll(() => page.locator(".off-line").innerText()).not.toBe("")
    expect(await findings(page)).toEqual([])
  })
})
