import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

it("sets a case beside the plan as it is, and puts it in when asked to", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const crop = await sheet.text("Well Field", "Crop")
  await sheet.choose("Well Field", "Open")
  await page.keyboard.press("Shift+F10")
  await page.getByRole("button", {name: "Cases"}).click()
  const panel = page.locator(".cases-panel")
  await panel.getByLabel("Name of a new case").fill("Late spring")
  await page.keyboard.press("Enter")
  await panel.getByRole("button", {name: "Change open of Well Field in cases"}).click()
  await panel.getByLabel("Open of Well Field in case Late spring").fill("10 May")
  await page.keyboard.press("Enter")
  const row = panel.locator("tr", {hasText: "Crop of Well Field"})
  await expect.poll(() => row.innerText(), {timeout: 15_000}).toMatch(/\d\st$/)
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  expect(await sheet.text("Well Field", "Crop")).toBe(crop) // the plan stays as it is
  const [, then] = /\t([\d.]+)\st [+\u2212][\d.]+\st$/.exec(await row.innerText())!
  await panel.getByRole("button", {name: "Put it into the workbook"}).click()
  await expect.poll(() => sheet.text("Well Field", "Crop")).toBe(then)
  await page.getByRole("button", {name: "Undo: case Late spring put in"}).click()
  await expect.poll(() => sheet.text("Well Field", "Crop")).toBe(crop)
  expect(trouble).toEqual([])
})

it("gives a price a name, which its cell and other formulas then read", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Prices")
  await sheet.choose(3, "Price")
  await page.keyboard.press("Shift+F10")
  await page.getByRole("button", {name: "Name this value"}).click()
  const panel = page.locator(".names-panel")
  await panel.getByLabel("Name for price of 3").fill("Q10")
  await page.keyboard.press("Enter")
  await expect.poll(() => panel.innerText()).toContain("“Q10” cannot be a name")
  await panel.getByLabel("Name for price of 3").fill("Third_week_price")
  await page.keyboard.press("Enter")
  await panel.getByLabel("Look for a name").fill("third_week")
  await expect
    .poll(() => panel.locator("li").allInnerTexts())
    .toEqual([expect.stringMatching(/^Third_week_price 3.3.money\/kg .*Used in 1 formula\.$/s)])
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  expect(await sheet.text(3, "Price")).toBe("3.30")
  expect(trouble).toEqual([])
})
