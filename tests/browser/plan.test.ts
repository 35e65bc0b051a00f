import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import type {Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {openedWith} from "../bench/openedWith"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** Opens the demonstration farm on its season plan. */
async function openPlan() {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  return {page, trouble, sheet: sheetOn(page)}
}

describe("the season plan", () => {
  it("says for each planting when to stop, what holds it, for how many weeks and for how much crop", async () => {
    const {page, trouble, sheet} = await openPlan()
    const row = (planting: string) =>
      Promise.all(["Close", "Held by", "Weeks"].map((heading) => sheet.text(planting, heading)))
    // Well Field: weeks 27 Apr + 56 - 1 = 21 Jun, crew 20 Jun, last date 24 Jun, fern and floor later: 55 days.
    expect(await row("Well Field")).toEqual(["20 Jun", "crew", "7.9"])
    // Two weeks at age 2: 28 Apr + 14 - 1.
    expect(await row("Home Strip")).toEqual(["11 May", "weeks for its age", "2.0"])
    expect(await row("Sand Piece")).toEqual(["7 Jun", "spear size", "6.6"])
    expect(await row("Top Corner")).toEqual(["not cut", "young", ""])
    expect(await page.locator(".finding").innerText()).toMatch(
      /^North Bench closes next, on 29 May, held by price; Sand Piece 9 days later, held by spear size/,
    )
    expect(trouble).toEqual([])
  })

  it("takes the earliest of the limits, names it and says how far off the next is (typed limit dates)", async () => {
    const {page, trouble, sheet} = await openPlan()
    const limits = {
      reserve: "12 Jun",
      "spear size": "9 Jun",
      "fern days": "18 Jun",
      price: "20 Jun",
      "last date": "24 Jun",
    }
    for (const [limit, day] of Object.entries(limits)) await sheet.type("Long Acre", limit, day)
    expect(await sheet.text("Long Acre", "Close")).toBe("9 Jun")
    expect(await sheet.text("Long Acre", "Held by")).toBe("spear size")
    expect(await sheet.text("Long Acre", "Slack")).toBe("3")
    const bar = page.locator(".cal [aria-label^='Long Acre']")
    expect(await bar.getAttribute("aria-label")).toMatch(/25 Apr.* 9 Jun.*spear size.*reserve.*3 days/)
    expect(await (await sheet.cell("Long Acre", "reserve")).getAttribute("data-kind")).toBe("typed over")
    expect(trouble).toEqual([])
  })

  it("moves the spear size limit when the fourth weekly mean is typed, and says from when", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.open("Spear size")
    await sheet.choose(4, "Mean diameter")
    await page.keyboard.press("Delete")
    await sheet.open("Season plan")
    // The line through 13.1, 12.4, 11.6 mm on days 0, 7, 14 meets 9.5 mm 33.8 days after 4 May.
    expect(await sheet.text("Sand Piece", "spear size")).toBe("6 Jun")
    await sheet.open("Spear size")
    await sheet.type(4, "Mean diameter", "10.9")
    expect(await sheet.said()).toContain("Close of Sand Piece moved from 6 Jun to 7 Jun")
    await sheet.type(4, "Spears counted", "55") // moves nothing
    await sheet.open("Season plan")
    expect(await sheet.text("Sand Piece", "spear size")).toBe("7 Jun")
    await sheet.choose("Sand Piece", "spear size")
    expect(await sheet.whereFrom().innerText()).toContain("moved from 6 Jun 2026")
    expect(trouble).toEqual([])
  })

  it("works out the trend of the same diameters in a cell", async () => {
    const {page, sheet} = await openPlan()
    await sheet.open("Named values")
    await sheet.choose(1, "Unit")
    await page.keyboard.type("=SPEAR.TREND('Spear size'!B:B,'Spear size'!C:C)")
    await page.keyboard.press("Enter")
    // Least squares by hand: sums of (x - 10.5)(y - 12) over (x - 10.5)^2 = -25.9 / 245.
    expect(Number((await sheet.text(1, "Unit")).replace("\u2212", "-"))).toBeCloseTo(-25.9 / 245, 6)
  })

  it("lets price hold a planting when its prices fall", async () => {
    const {trouble, sheet} = await openPlan()
    expect(await sheet.text("Sand Piece", "Held by")).toBe("spear size")
    await sheet.open("Prices")
    for (const week of [6, 7, 8, 9, 10]) await sheet.type(week, "Price", "1.90")
    await sheet.open("Season plan")
    expect(await sheet.text("Sand Piece", "Held by")).toBe("price")
    // Five paying weeks from 23 Apr: 23 Apr + 35 - 1.
    expect(await sheet.text("Sand Piece", "Close")).toBe("27 May")
    expect(Number((await sheet.text("Sand Piece", "One more day")).replace("\u2212", "-"))).toBeLessThan(0)
    expect(trouble).toEqual([])
  })

  it("follows the fern's end date, a named value", async () => {
    const {sheet} = await openPlan()
    await sheet.open("Named values")
    await sheet.type("Fern_end_date", "Value", "2026-10-01")
    await sheet.open("Season plan")
    // By a separate calculation of the balance: closed on 18 Jun it refills on 31 Aug, 31 days before the end; a day later, 29.
    expect(await sheet.text("Well Field", "Close")).toBe("18 Jun")
    expect(await sheet.text("Well Field", "Held by")).toBe("fern days")
  })
})

describe("root samples", () => {
  // Ten dormant samples of Long Acre: 412 388 455 430 367 441 402 398 420 376, mean 408.9; t interval with 9 degrees of freedom.
  it("give the mean with its interval and how many were used", async () => {
    const {sheet} = await openPlan()
    await sheet.open("Crowns")
    expect(await sheet.text("Long Acre", "Sugar")).toBe("408.9")
    expect(await sheet.text("Long Acre", "Spread")).toBe("28.2")
    expect([await sheet.text("Long Acre", "Lower"), await sheet.text("Long Acre", "Upper")]).toEqual([
      "396.6",
      "421.2",
    ])
    expect([await sheet.text("Long Acre", "Used"), await sheet.text("Long Acre", "Taken")]).toEqual([
      "10",
      "10",
    ])
  })

  it("leave a blank out and say so, and take a typed 0 as 0 and question it", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.open("Root samples")
    // Rows 11 to 20 are Long Acre's; the last two are emptied.
    for (const row of [19, 20]) {
      await sheet.choose(row, "Sugar")
      await page.keyboard.press("Delete")
      expect(await (await sheet.cell(row, "Sugar")).getAttribute("data-kind")).toBe("missing")
    }
    await sheet.open("Crowns")
    expect([await sheet.text("Long Acre", "Used"), await sheet.text("Long Acre", "Taken")]).toEqual([
      "8",
      "10",
    ])
    // (412 + 388 + 455 + 430 + 367 + 441 + 402 + 398) / 8
    expect(await sheet.text("Long Acre", "Sugar")).toBe("411.6")
    await sheet.choose("Long Acre", "Sugar")
    expect(await sheet.whereFrom().innerText()).toContain("8 of 10 used, 2 blank")

    await sheet.open("Root samples")
    await sheet.type(20, "Sugar", "0")
    await page.getByRole("alertdialog").getByLabel("Reason").fill("a dead plant")
    await page.keyboard.press("Enter")
    expect(await (await sheet.cell(20, "Sugar")).getAttribute("data-kind")).toBe("questioned")
    await sheet.open("Crowns")
    expect(await sheet.text("Long Acre", "Used")).toBe("9")
    expect(await sheet.text("Long Acre", "Sugar")).toBe("365.9") // 3293 / 9
    expect(trouble).toEqual([])
  })

  it("say how many plants to sample for a wanted margin", async () => {
    const {page, sheet} = await openPlan()
    await sheet.open("Named values")
    await sheet.choose(1, "Unit")
    await page.keyboard.type("=ROOT.SAMPLES(30,15,0.9)")
    await page.keyboard.press("Enter")
    // The normal quantile 1.645: (1.645 * 30 / 15)^2 = 10.8, rounded up.
    expect(await sheet.text(1, "Unit")).toBe("11")
  })
})

describe("Where from", () => {
  it("leads from a close date to its ten samples, the calibration and its source in three steps", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.choose("Long Acre", "Close")
    const trace = sheet.whereFrom()
    const follow = (name: RegExp) => trace.getByRole("button", {name}).last().click()
    await follow(/^reserve 10 Jun 2026$/)
    await follow(/^Store at start/)
    await follow(/^Sugar/)
    const told = await trace.innerText()
    for (const sample of [412, 388, 455, 430, 367, 441, 402, 398, 420, 376])
      expect(told).toContain(`${sample}`)
    expect(told).toContain("10 of 10 used")
    expect(told).toContain("Sugar slope")
    await follow(/^Sugar slope/)
    expect(await trace.innerText()).toMatch(/Source|Tag/)
    expect(await trace.locator("ol > li").count()).toBeLessThanOrEqual(3)
    await page.getByRole("button", {name: "Step back"}).click()
    expect(await trace.innerText()).toContain("Sugar slope")
    expect(trouble).toEqual([])
  })

  it("says where an error began", async () => {
    const {page, sheet} = await openPlan()
    await sheet.open("Plantings")
    await sheet.choose("Long Acre", "Dry root")
    await page.keyboard.press("Delete")
    await sheet.open("Crowns")
    await sheet.choose("Long Acre", "Store at start")
    const told = await sheet.whereFrom().innerText()
    expect(told).toContain("not measured yet")
    expect(told).toMatch(/Started in\s+Structure of Long Acre, Crowns/)
  })
})

it("names each row of the calendar where the sheet is too long to stand in line with it, and stays in view", async () => {
  const {document: farm} = readFile(
    readFileSync(`${import.meta.dirname}/../../workbooks/hollow-brook-farm.json`, "utf8"),
  ) as {document: Document}
  const more = Array.from({length: 24}, (_, i) => `Field ${i + 7}`)
  const sheets = farm.sheets.map((sheet) => {
    const own = sheet.rows.find(([key]) => key === "Well Field")
    return sheet.rowEach === "planting" && own
      ? {...sheet, rows: [...sheet.rows, ...more.map((name) => [name, ...own.slice(1)])]}
      : sheet
  })
  const page = await openedWith({...farm, sheets})
  const names = page.locator(".cal svg .season")
  await expect.poll(() => names.count()).toBe(30)
  await expect.poll(() => names.nth(29).textContent()).toContain("Field 30")
  await page.locator(".ag-cell").first().waitFor()
  await names.nth(29).scrollIntoViewIfNeeded()
  const sheet = (await page.locator(".sheet").boundingBox())!
  expect(sheet.y + sheet.height).toBeGreaterThan(300)
})
