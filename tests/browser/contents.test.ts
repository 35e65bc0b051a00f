import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"

it("opens a blank workbook under its own headings, with no words of the grid where there are no rows", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const open = page.locator('[role=columnheader][col-id="4"]')
  await expect.poll(() => open.innerText()).toMatch(/Open\s+2026/)
  await page.getByRole("button", {name: "A blank workbook"}).click()
  await page.getByText("No plantings in this plan yet.").waitFor()
  await expect.poll(() => open.innerText()).not.toContain("2026")
  expect(await page.locator(".sheet").innerText()).not.toContain("No Rows")
  expect(trouble).toEqual([])
})

it("narrows the contents to the sheets that are called so, or have such a column, and opens the first", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const contents = page.getByRole("navigation", {name: "Contents"})
  const all = await contents.getByRole("listitem").count()
  const sought = contents.getByLabel("Sheets with")
  await sought.fill("root s")
  await expect.poll(() => contents.getByRole("status").innerText()).toMatch(/^1 of \d+ sheets$/)
  await sought.fill("cutters needed")
  await expect.poll(() => contents.getByRole("button", {name: /^Days of cutting/}).isVisible()).toBe(true)
  expect(await contents.getByRole("button", {name: /^Season plan/}).count()).toBe(0)
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  await sought.fill("zzz")
  await expect.poll(() => contents.innerText()).toContain("No sheet, group or column is called so.")
  await sought.press("Escape")
  await expect.poll(() => contents.getByRole("listitem").count()).toBe(all)
  await sought.fill("root samples")
  await sought.press("Enter")
  await page.getByRole("heading", {level: 1, name: "Root samples"}).waitFor()
  expect(await sought.inputValue()).toBe("")
  expect(trouble).toEqual([])
})
