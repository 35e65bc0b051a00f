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
  await sought.fill("pickings") // Season plan has such a column
  await sought.press("Enter")
  await page.getByRole("heading", {level: 1, name: "Pickings"}).waitFor()
  expect(await sought.inputValue()).toBe("")
  expect(trouble).toEqual([])
})

it("shows the sheet that is open in its list, whichever way it was opened", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const contents = page.getByRole("navigation", {name: "Contents"})
  await contents.getByRole("button", {name: /^Lender's page/}).click()
  await contents.evaluate((list) => (list.scrollTop = 0))
  await page.getByRole("button", {name: "Cash and debt as a table"}).click()
  await page.getByRole("heading", {level: 1, name: "Cash and debt"}).waitFor()
  const line = contents.getByRole("button", {name: /^Cash and debt/})
  await expect.poll(async () => (await line.boundingBox())!.y).toBeLessThan(860)
  expect((await line.boundingBox())!.y).toBeGreaterThan(0)

  await contents.getByRole("button", {name: /^Season plan/}).click()
  await contents.getByRole("button", {name: "A blank workbook"}).click() // at the list's end, opens the same sheet
  await page.getByText("No plantings in this plan yet.").waitFor()
  const first = contents.getByRole("button", {name: /^Season plan/})
  await expect.poll(async () => (await first.boundingBox())!.y).toBeGreaterThan(0)
  expect(trouble).toEqual([])
})

it("reads a page from its title where its sheet lies below what is seen", async () => {
  const opened = async (view: {width: number; height: number}, name: string) => {
    const {page} = await openPlanner(view)
    await page.locator(".ag-cell").first().waitFor()
    if (view.width < 600) await page.locator("summary", {hasText: "Contents"}).click()
    const contents = page.getByRole("navigation", {name: "Contents"})
    await contents.getByRole("button", {name: new RegExp(`^${name} ?\\d`)}).click()
    await page.getByRole("heading", {level: 1, name}).waitFor()
    await page.locator(".ag-cell").first().waitFor()
    await page.waitForTimeout(500) // nothing is to come
    return page.evaluate(() => ({tag: document.activeElement?.tagName, top: scrollY}))
  }
  const phone = {width: 390, height: 844}
  expect(await opened(phone, "Root samples")).toEqual({tag: "H1", top: 0})
  expect(await opened(phone, "Field life")).toEqual({tag: "H1", top: 0})
  expect(await opened(phone, "Pickings")).toEqual({tag: "DIV", top: 0})
  expect(await opened({width: 1440, height: 900}, "Root samples")).toEqual({tag: "DIV", top: 0})
})

it("gives the keyboard to the sheet that is opened, and puts all that is typed at once there", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const contents = page.getByRole("navigation", {name: "Contents"})
  const focused = () =>
    page.evaluate(() => {
      const {activeElement: one} = window.document
      return one?.getAttribute("aria-label") ?? one?.textContent
    })
  await contents.getByRole("button", {name: /^Prices/}).focus()
  const keys = ["Enter", "ArrowRight", ..."3.86", "Enter", ..."3.27", "Enter"]
  await Promise.all(keys.map((key) => page.keyboard.press(key)))
  await expect.poll(focused).toMatch(/Price of 3\. typed$/)
  const cell = (row: number) => page.locator(`[row-index="${row}"] .ag-cell[col-id="1"]`).innerText()
  expect([await cell(0), await cell(1)]).toEqual(["3.86", "3.27"])
  const said = page.locator(".folio [role=status]").first()
  await expect.poll(() => said.innerText()).toMatch(/values changed\.$/) // else it may be said after what comes next

  await contents.getByLabel("Sheets with").focus()
  await page.keyboard.type("fern")
  await page.keyboard.press("Enter")
  await expect.poll(focused).toMatch(/^North Bench\. Planting/)
  expect(await said.innerText()).toBe("Fern is open, at A1.")

  // A page to read before its sheet begins at its title.
  await contents.getByRole("button", {name: /^This week/}).click()
  await expect.poll(focused).toBe("This week")
  expect(await page.evaluate(() => scrollY)).toBe(0)
  await page.getByRole("button", {name: "Close to fern…"}).first().focus()
  await page.keyboard.press("Enter")
  await page.getByLabel("because").focus()
  await page.keyboard.press("Enter")
  await expect.poll(focused).toMatch(/^North Bench\s*Closed to fern/)

  await contents.getByRole("button", {name: "A blank workbook"}).focus()
  await page.keyboard.press("Enter")
  await page.getByText("No plantings in this plan yet.").waitFor()
  await expect.poll(focused).toBe("Season plan")
  expect(trouble).toEqual([])
})
