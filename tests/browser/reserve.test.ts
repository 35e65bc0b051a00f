import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function openReserve() {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Reserve")
  return {page, trouble, sheet}
}

it("shows the reserve of the planting that is chosen", async () => {
  const {page, trouble} = await openReserve()
  const finding = page.locator(".finding")
  expect(await finding.innerText()).toMatch(/^Long Acre: .*lowest 1.607 kg\/ha on 29 Jun, 7 above your floor/)
  await page.getByRole("combobox", {name: "Planting"}).selectOption("Well Field")
  expect(await finding.innerText()).toMatch(/^Well Field: .*full again on 4 Sep\.$/)
  expect(await page.locator(".reserve-year svg title").textContent()).toBe(await finding.innerText())
  const {violations} = await new AxeBuilder({page}).analyze()
  expect(violations.map(({id}) => id)).toEqual([])
  expect(trouble).toEqual([])
})

it("works out how sure in the background and keeps the ranges in the plan", async () => {
  const {page, trouble, sheet} = await openReserve()
  await page.getByRole("button", {name: "Work out how sure"}).click()
  const told = page.locator(".how-sure")
  await told.getByText("To narrow it").waitFor()
  expect(await told.innerText()).toMatch(/The width comes from own record \d+ %/)
  expect(await page.locator(".reserve-year .band").count()).toBe(2)
  await sheet.open("How sure")
  expect(await sheet.text(1, "Planting")).toBe("Long Acre")
  const number = async (heading: string) => Number((await sheet.text(1, heading)).replace(/\D/g, ""))
  const [low, middle] = [await number("Crop, 1 in 10 below"), await number("Crop, middle")]
  expect(low).toBeLessThan(middle)
  await sheet.open("Season plan")
  // The crop is 3 894.8 kg/ha on 6.4 ha; its lower end is the same share of it as in the study.
  await sheet.choose("Long Acre", "Crop")
  await page.keyboard.press("ArrowRight")
  expect(Number(await sheet.text("Long Acre", "Low"))).toBeCloseTo((24.927 * low) / middle, 1)
  expect(trouble).toEqual([])
})

it("stops a study when asked to", async () => {
  const {page, sheet} = await openReserve()
  await page.getByRole("button", {name: "Work out how sure"}).click()
  await page.getByRole("button", {name: "Stop"}).click()
  await page.getByRole("button", {name: "Work out how sure"}).waitFor()
  await sheet.open("How sure")
  expect(await page.locator('[row-index="0"] .ag-cell').first().innerText()).not.toContain("Long Acre")
})
