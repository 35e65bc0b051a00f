import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

it("walks over the spears by the keys, says each mark, and goes to the cell behind one", async () => {
  const {page, trouble} = await openPlanner()
  const sheet = sheetOn(page)
  await page.locator(".ag-cell").first().waitFor()
  await sheet.open("Spear size")
  const walk = page.getByRole("group", {name: /^Spear size of Sand Piece, 5 marks/})
  const words = () => walk.locator("[aria-live]").innerText()
  await walk.focus()
  expect(await words()).toBe("")
  await page.keyboard.press("ArrowRight")
  expect(await words()).toBe(
    "4 May: mean 13.1 mm, 40 spears counted, 15\u202f% under the limit. Enter goes to its cell.",
  )
  const ring = (await walk.locator(".ring").boundingBox())!
  const dot = (await walk.locator(".among").first().boundingBox())!
  expect(Math.abs(ring.x + ring.width / 2 - dot.x - dot.width / 2)).toBeLessThan(1.5)
  expect(Math.abs(ring.y + ring.height / 2 - dot.y - dot.height / 2)).toBeLessThan(1.5)
  await page.keyboard.press("End")
  expect(await words()).toMatch(/about 7 Jun, by the line\.$/)
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  await page.keyboard.press("Escape")
  expect(await walk.locator(".ring").count()).toBe(0)
  expect(await walk.evaluate((one) => one === window.document.activeElement)).toBe(false)
  await walk.focus()
  for (const key of ["End", "ArrowLeft", "Enter"]) await page.keyboard.press(key)
  await expect.poll(() => page.evaluate(() => window.document.activeElement?.textContent)).toBe("10.9")
  expect(trouble).toEqual([])
})

it.each([
  ["Root samples", /^Spread of the root samples, 55 marks/, /^North Bench, 5 Mar: 10 plants of 10 used/],
  ["Crew and cooler", /^cutters on the busiest day/, /^Week 17: 11 needed, 22 booked\. 25 Apr: .* Enter/],
  ["Reserve", /^Reserve through the year/, /measured/],
  [
    "This week",
    /^Picked so far, by planting, 5 marks/,
    /^North Bench: 4\s744\skg picked before 25 May, 81\s% of/,
  ],
  [
    "This week",
    /^Days that each close moved, 1 mark/,
    /^Sand Piece: from 6 Jun to 7 Jun, held by spear size, as/,
  ],
  [
    "Replant",
    /^This field and a new planting, 13 marks/,
    /^2026: this field brings 2\s705 money\/ha \(.* must bring 1\s541\./,
  ],
  [
    "Replant",
    /^A new planting by year of its life, 12 marks/,
    /^Year 1 of its life: \u22129\s800 money\/ha\./,
  ],
  ["Lender's page", /^Cash and debt by year/, /^2026: 36\s885 money for 24\s456 due/],
  ["Cash and debt", /^Cash and debt by year/, /^2026: 36\s885 money for 24\s456 due/],
  ["Yield by age", /^Yields by age/, /^North Bench, age 11: 3\s420 kg\/ha recorded/],
  ["Lender's page", /^Yields by age/, /age \d+: .* recorded/],
])("walks over the picture of %s", async (name, group, first) => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open(name)
  const walk = page.getByRole("group", {name: group})
  await walk.focus()
  await page.keyboard.press("ArrowRight")
  expect(await walk.locator("[aria-live]").innerText()).toMatch(first)
  expect(await walk.locator(".ring").count()).toBe(1)
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  expect(trouble).toEqual([])
})

it("leads up and down between the lines of a picture, and from the line to the week's own cell", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Reserve")
  const walk = page.getByRole("group", {name: /^Reserve through the year, .* of 2 lines$/})
  const words = () => walk.locator("[aria-live]").innerText()
  await walk.focus()
  await page.keyboard.press("ArrowRight")
  expect(await words()).toMatch(/measured of 10 plants: 409 mg\/g, 5 Mar\./)
  await page.keyboard.press("ArrowDown")
  expect(await words()).toMatch(/^Long Acre: 4\s519 kg\/ha on 4 Mar\. Enter goes to its cell\.$/)
  await page.keyboard.press("ArrowRight")
  expect(await words()).toMatch(/on 11 Mar\./)
  for (const key of ["ArrowLeft", "Enter"]) await page.keyboard.press(key)
  await expect.poll(() => page.evaluate(() => window.document.activeElement?.textContent)).toMatch(/^4\s519$/)
  expect(trouble).toEqual([])
})

it("reaches a mark by a press of the pointer, and its cell by a second one", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Crew and cooler")
  const walk = page.getByRole("group", {name: /^cutters on the busiest day/})
  const press = () =>
    walk
      .locator("svg rect.to-come")
      .first()
      .click({position: {x: 10, y: 60}})
  await press()
  // 26 May is the busiest day of week 22; the crop of that day is made of what is picked on it.
  expect(await walk.locator("[aria-live]").innerText()).toMatch(
    /^Week 22: 19 needed, 16 booked, 3 short\. 26 May: [A-Z][\w ]+ \d\.\d.t.*\. Enter goes/,
  )
  await press()
  await expect.poll(() => page.evaluate(() => window.document.activeElement?.textContent)).toBe("19")
  expect(trouble).toEqual([])
})
