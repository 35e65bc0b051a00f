import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner, type View} from "./page"
import {sheetOn} from "./sheet"

async function open(name: string, view: View = {}) {
  const {page, trouble} = await openPlanner(view)
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open(name)
  const axe = async () => (await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)
  return {page, trouble, sheet, axe, finding: page.locator(".finding")}
}

const plain = (text: string) => text.replaceAll("\u202f", "").replaceAll("\u2212", "-")

// The level yearly sums of the new planting are those of its discounted flows, by hand: 2 092 at 7 %, 2 425 at 4 % and 1 753 at
// 10 %. The old field brings 2 250 in 2028 and 1 700 in 2029.
const MARGINS = [3100, 2700, 2250, 1700, 1200]
const NEW = [-9800, -1500, 900, 3600, 5200, 5600, 5600, 5500, 5300, 5000, 4600, 4200]

it("weighs typed margins against a typed new planting, at three rates", async () => {
  const {page, trouble, sheet, finding} = await open("Own margins")
  const setValue = async (name: string, text: string) => {
    await sheet.open("Named values")
    await page.locator(".content .at").fill(name) // the rows far down are drawn once they are in view
    await page.keyboard.press("Enter")
    await sheet.type(name, "Value", text)
  }
  await sheet.type(4, "Field", "Hill Field")
  for (const [i, margin] of MARGINS.entries()) await sheet.type(4, `Season ${i + 1}`, String(margin))
  await sheet.open("Establishment")
  for (const [i, cash] of NEW.entries()) await sheet.type(i + 1, "Own net cash", String(cash))
  await setValue("Clear_cost", "0")
  await sheet.open("New planting")
  expect(plain(await sheet.text("Over all years typed", "Answer"))).toBe("2092")
  expect(await sheet.text("In the black", "Answer")).toBe("6")
  await sheet.open("Replant")
  await sheet.type(10, "Field", "Hill Field")
  await sheet.choose(10, "Field")
  expect(await finding.innerText()).toMatch(
    /^Hill Field: replant after the 2028 harvest; 2027 comes within 150/,
  )
  const picture = page.locator(".old-new svg")
  expect(plain((await picture.getAttribute("aria-label"))!)).toContain(
    "a year must bring 2092 to be kept. The lines cross between 2028 and 2029.",
  )
  // Its twelve years of a new planting end before one is best cleared.
  await page
    .getByText("To look at: a new planting may live longer than the years on Establishment.")
    .waitFor()
  const table = page.getByRole("region", {name: "First season that is better replanted, by rate and price"})
  const rows = await table.locator("tbody tr").allInnerTexts()
  expect(rows.map((row) => plain(row).split(/\s+/))).toEqual([
    ["4%", "2425", "2028"],
    ["7%", "2092", "2029"],
    ["10%", "1753", "2029"],
  ])
  await setValue("Rate", "0.04")
  await sheet.open("New planting")
  expect(plain(await sheet.text("Over all years typed", "Answer"))).toBe("2425")
  await sheet.open("Replant")
  await sheet.choose("Hill Field", "Field")
  expect(await finding.innerText()).toMatch(/^Hill Field: replant after the 2027 harvest/)
  expect(trouble).toEqual([])
})

it("shows the field that is chosen, in the sheet or in the list", async () => {
  const {page, trouble, sheet, finding, axe} = await open("Replant")
  expect(await finding.innerText()).toMatch(
    /^North Bench: replant after the 2028 harvest; 2027 and 2029 come within 150/,
  )
  await page.getByRole("combobox", {name: "Field"}).selectOption("Lease field")
  expect(await finding.innerText()).toBe(
    "Lease field: keep it to the end of its lease, through the 2031 harvest: nothing planted in the 6 seasons left would bring more.",
  )
  await sheet.choose("Setback field", "Gain of waiting")
  expect(await page.getByRole("combobox", {name: "Field"}).inputValue()).toBe("Setback field")
  expect(await finding.innerText()).toMatch(
    /Its first season alone would lose 2.277 money\/ha, which later ones make up for\.$/,
  )
  await page.getByText("After a poor start, this field beats a new planting").waitFor()
  await page.getByRole("combobox", {name: "Field"}).selectOption("Well Field")
  await page.getByText(/To look at: longer may be better: only 12 seasons/).waitFor()
  expect(await axe()).toEqual([])
  expect(trouble).toEqual([])
})

it("finds the best weeks in the background, keeps them, and asks before it moves the plan", async () => {
  const {page, trouble, sheet, finding, axe} = await open("Field life")
  expect(await finding.innerText()).toContain("Nothing is kept here yet")
  await page.getByRole("button", {name: "Find the best weeks"}).click()
  const told = await page.getByText(/^Cleared ground is worth/).innerText()
  const [fresh, old] = plain(told)
    .match(/worth \d+/g)!
    .map((words) => Number(words.slice(6)))
  expect(plain(told)).toContain("a new planting loses 15% of its yield.")
  expect(old).toBeLessThan(fresh!)
  expect(await axe()).toEqual([])
  await page.getByRole("button", {name: "Keep these in the sheets"}).click()
  expect(await finding.innerText()).toMatch(
    /^As last run: North Bench \d+ weeks, clear after 20\d\d( or later)? \(20\d\d to 20\d\d come near\);/,
  )
  expect(Number(await sheet.text("Long Acre", "Weeks"))).toBeGreaterThan(0)
  await page.getByRole("button", {name: /^Use \d+ for Next_year_cost/}).click()
  const asked = page.getByRole("alertdialog")
  const [, cost] = /The study gives (\d+),/.exec(await asked.innerText())!
  await asked.getByRole("button", {name: `Put ${cost} there`}).click()
  await sheet.open("Named values")
  expect(await sheet.text("Next_year_cost", "Value")).toBe(cost)
  await sheet.open("Weeks ahead")
  expect(await sheet.text(1, "Planting")).toBe("North Bench")
  expect(await sheet.text(1, "Season")).toBe("2026")
  // Two acts: the rows kept, and the value that was asked for.
  await page.getByRole("button", {name: /^Undo/}).click()
  await page.getByRole("button", {name: /^Undo/}).click()
  await sheet.open("Field life")
  expect(await finding.innerText()).toContain("Nothing is kept here yet")
  expect(trouble).toEqual([])
})

it("runs one planting alone, sets it beside other ways on drawn years, and can be stopped", async () => {
  const {page, trouble, axe} = await open("Field life")
  await page.getByRole("combobox", {name: "Planting"}).selectOption("Long Acre")
  await page.getByRole("button", {name: "Find the best weeks"}).click()
  await page.getByText(/^Cleared ground is worth/).waitFor()
  expect(
    await page
      .getByRole("region", {name: /^This season/})
      .locator("tbody tr")
      .count(),
  ).toBe(1)
  // What was found is there; the draws begin by themselves.
  await page.getByText(/^(Of those tried no other way|Better in the mean than as found)/).waitFor()
  const drawn = page.getByRole("table", {name: "Long Acre", exact: true})
  const ways = (await drawn.locator("tbody tr").allInnerTexts()).map(plain)
  expect(ways.length).toBeGreaterThan(2)
  expect(ways[0]).toMatch(/^as found\s+\d+\s+± \d+\s+-?\d+\s+± \d+\s*$/)
  for (const way of ways.slice(1)) expect(way).toMatch(/[+-]?\d+ ± \d+\s+\d+\.\d of 10$/)
  expect(await axe()).toEqual([])
  await page.getByRole("combobox", {name: "Planting"}).selectOption("")
  await page.getByRole("button", {name: "Find the best weeks"}).click()
  await page.getByRole("button", {name: "Stop", exact: true}).click()
  await page.getByRole("button", {name: "Find the best weeks"}).click()
  const well = page.getByRole("region", {name: /^This season/}).getByRole("rowheader", {name: "Well Field"})
  await well.waitFor()
  await page.getByRole("button", {name: "Stop the draws"}).click()
  await page.getByRole("button", {name: "Draw the years"}).click()
  await page.getByRole("button", {name: "Stop the draws"}).click()
  await page.getByRole("button", {name: "Draw the years"}).waitFor()
  expect(await well.count()).toBe(1)
  expect(trouble).toEqual([])
})

it.each([
  ["Replant", "light"],
  ["Replant", "dark"],
  ["Field life", "dark"],
] as const)("fits a telephone: %s, %s", async (name, colorScheme) => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, colorScheme})
  await page.locator(".ag-cell").first().waitFor()
  await page.getByText(/^Contents:/).click()
  await sheetOn(page).open(name)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  const {violations} = await new AxeBuilder({page}).analyze()
  expect(violations.map(({id}) => id)).toEqual([])
  expect(trouble).toEqual([])
})
