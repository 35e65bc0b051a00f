import type {Locator, Page} from "playwright-core"

/** What a person does at the sheet on screen: reads cells by planting and heading, chooses them, types. */
export function sheetOn(page: Page) {
  const headings = async () => {
    const heads = await page.locator("[role=columnheader]").evaluateAll((all) =>
      all.map((head) => ({
        id: head.getAttribute("col-id"),
        heading: head.querySelector(".heading")?.textContent ?? "",
        unit: head.querySelector(".unit")?.textContent?.trim() ?? "",
      })),
    )
    return heads.filter(({heading}) => heading !== "")
  }
  const columnId = async (heading: string, unit?: string) => {
    const found = (await headings()).find(
      (one) => one.heading === heading && (unit === undefined || one.unit === unit),
    )
    if (!found) throw new Error(`There is no column ${heading}`)
    return found.id
  }
  /** Turns a long sheet on until a cell is drawn: rows far from what is seen are not. */
  const scrolledTo = async (cell: Locator) => {
    const rows = page.locator(".sheet .ag-grid-viewport, .sheet .ag-body-viewport").first()
    for (let turns = 0; turns < 60 && (await cell.count()) === 0; turns++) {
      await rows.evaluate((one) => (one.scrollTop += 300))
      await page.waitForTimeout(50)
    }
  }
  /** The cell of a row, named by what stands in its first column, or by its number from 1. */
  const cell = async (row: string | number, heading: string, unit?: string) => {
    const col = await columnId(heading, unit)
    const named =
      typeof row === "number"
        ? page.locator(`[row-index="${row - 1}"] .ag-cell[col-id="0"]`)
        : page.locator('.ag-cell[col-id="0"]', {hasText: new RegExp(`^${row}$`)})
    await scrolledTo(named.first())
    const index = await named.first().evaluate((one) => one.closest("[row-index]")!.getAttribute("row-index"))
    return page.locator(`[row-index="${index}"] .ag-cell[col-id="${col}"]`).first()
  }
  const choose = async (row: string | number, heading: string, unit?: string) =>
    (await cell(row, heading, unit)).click()
  return {
    cell,
    choose,
    async open(name: string) {
      await page
        .getByRole("navigation", {name: "Contents"})
        .getByRole("button", {name: new RegExp(`^${name} ?\\d`)})
        .click()
      await page.getByRole("heading", {level: 1, name, exact: true}).waitFor()
      await page.locator(".ag-cell").first().waitFor()
    },
    async text(row: string | number, heading: string, unit?: string) {
      return (await (await cell(row, heading, unit)).innerText()).trim()
    },
    /** Types into a cell and keeps it; a worked-out cell is typed over. */
    async type(row: string | number, heading: string, text: string) {
      await choose(row, heading)
      await page.keyboard.type(text)
      await page.keyboard.press("Enter")
      const yes = page.getByRole("button", {name: "Type over it"})
      if (await yes.isVisible()) await yes.click()
    },
    said: () => page.locator(".folio [role=status]").first().innerText(),
    whereFrom: () => page.locator(".trace"),
  }
}
