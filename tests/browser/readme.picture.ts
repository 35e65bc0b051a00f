import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

const folder = `${import.meta.dirname}/../../workbooks/pictures`

it.each([
  ["season-plan", 1440, 900, "light"],
  ["season-plan-dark", 1440, 900, "dark"],
  ["season-plan-narrow", 390, 1000, "light"],
] as const)("takes %s", async (name, width, height, colorScheme) => {
  const {page} = await openPlanner({width, height, colorScheme})
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).choose("Long Acre", "Close")
  await page.evaluate(() => document.fonts.ready)
  await page.mouse.move(0, 0)
  expect((await page.screenshot({path: `${folder}/${name}.png`})).byteLength).toBeGreaterThan(10_000)
})

it.each([
  ["this-week", "This week"],
  ["spear-size", "Spear size"],
  ["replant", "Replant"],
  ["lenders-page", "Lender's page"],
] as const)("takes %s", async (name, title) => {
  const {page} = await openPlanner({width: 1440, height: 900})
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open(title)
  await page.evaluate(() => document.fonts.ready)
  await page.mouse.move(0, 0)
  expect((await page.screenshot({path: `${folder}/${name}.png`})).byteLength).toBeGreaterThan(10_000)
})
