import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

it("works back from a wanted stop price to the cost of picking, and puts it in", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.choose("Long Acre", "Stop price")
  const before = await sheet.text("Long Acre", "Stop price")
  await page.getByRole("button", {name: "Work back"}).click()
  const panel = page.locator(".work-back")
  await panel.getByLabel("It should be").fill("2.60")
  const cost = await panel.locator("option", {hasText: "Pick_cost"}).getAttribute("value")
  await panel.getByLabel("by changing").selectOption(cost)
  await panel.getByRole("button", {name: "Work it back"}).click()
  const put = panel.getByRole("button", {name: /^Put .* in$/})
  await put.waitFor()
  expect(await panel.innerText()).toMatch(/With 1\.\d+\smoney\/kg it is 2\.60\smoney\/kg/)
  const {violations} = await new AxeBuilder({page}).analyze()
  expect(violations.map(({id}) => id)).toEqual([])
  await put.click()
  await expect.poll(() => sheet.text("Long Acre", "Stop price")).toBe("2.60")
  // The stop price rises by picking over packed share: the difference times 0.86 is what the cost rose by.
  await sheet.open("Named values")
  const raised = Number(await sheet.text("Pick_cost", "Value")) - 0.95
  expect(raised / 0.86).toBeCloseTo(2.6 - Number(before), 2)
  await page.getByRole("button", {name: /^Undo/}).click()
  expect(await sheet.text("Pick_cost", "Value")).toBe("0.95")
  expect(trouble).toEqual([])
})
