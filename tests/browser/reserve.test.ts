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
  expect(await page.locator(".reserve-year svg").getAttribute("aria-label")).toBe(await finding.innerText())
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
  // The lower end of the crop is the same share of it as in the study.
  await sheet.choose("Long Acre", "Crop")
  const crop = Number(await sheet.text("Long Acre", "Crop"))
  await page.keyboard.press("ArrowRight")
  expect(Number(await sheet.text("Long Acre", "Low"))).toBeCloseTo((crop * low) / middle, 1)
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

it("brings in a file of weather after it has said what is in it, and moves the plan", async () => {
  const {page, trouble, sheet} = await openReserve()
  await page.evaluate(() => Object.assign(window, {showOpenFilePicker: undefined}))
  await sheet.open("Season plan")
  const before = await sheet.text("Well Field", "Yield")
  const bring = async (content: string) => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", {name: "Bring in a file"}).click(),
    ])
    await chooser.setFiles({name: "station.csv", mimeType: "text/csv", buffer: Buffer.from(content)})
  }
  await sheet.open("Weather records")
  await bring("date,rain\n2026-03-01,4")
  await expect
    .poll(sheet.said)
    .toBe(
      "station.csv was not brought in. It has no column for the highest temperature; its headings are date, rain. The sheet is as it was.",
    )
  const days = Array.from({length: 80}, (_, i) =>
    new Date(Date.UTC(2026, 2, 1 + i)).toISOString().slice(0, 10),
  )
  const lines = days
    .filter((day) => day !== "2026-03-12")
    .map((day, i) => `${day},${12 + i / 5},${4 + i / 5}`)
  await bring(`Date,Max °C,Min °C\n${lines.join("\n")}\n2026-05-20,cold,2`)
  const asked = page.getByRole("alertdialog")
  await asked.getByText("79 days of weather, 1 Mar 2026 to 19 May 2026.").waitFor()
  expect(await asked.innerText()).toContain("1 day between is missing: 12 Mar.")
  expect(await asked.innerText()).toContain("1 line is left out: line 81: “cold” is not a number")
  await page.getByRole("button", {name: "Bring them in"}).click()
  expect(await sheet.text(1, "Mean air")).toBe("8.0")
  await sheet.open("Season plan")
  expect(await sheet.text("Well Field", "Yield")).not.toBe(before)
  await page.getByRole("button", {name: /^Undo/}).click()
  expect(await sheet.text("Well Field", "Yield")).toBe(before)
  expect(trouble).toEqual([])
})

it("puts the values of a white crop in use", async () => {
  const {page, sheet} = await openReserve()
  const finding = page.locator(".finding")
  const green = await finding.innerText()
  await sheet.open("Value sets")
  await page.locator('[row-index="3"] .ag-cell[col-id="0"]').click()
  await page.getByRole("button", {name: "Use the set “white”"}).click()
  await sheet.open("Reserve")
  expect(await finding.innerText()).not.toBe(green)
})
