import {AxeBuilder} from "@axe-core/playwright"
import type {Page} from "playwright-core"
import {describe, expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function open(view: Parameters<typeof openPlanner>[0] = {}) {
  const {page, trouble} = await openPlanner(view)
  await page.locator(".ag-cell").first().waitFor()
  const panel = page.getByRole("region", {name: "Checks"})
  return {
    page,
    trouble,
    sheet: sheetOn(page),
    panel,
    button: page.getByRole("banner").getByRole("button", {name: /^Checks/}),
    rows: panel.getByRole("listitem"),
    status: () => panel.getByRole("status").innerText(),
    faults: async () => (await new AxeBuilder({page}).analyze()).violations.map(({id}) => id),
  }
}

/** The workbook is looked through when the page is idle, and what mends it is tried in a worker. */
const WAITS = {timeout: 20_000}

const focused = (page: Page) =>
  page.evaluate(() => (document.activeElement as HTMLElement | null)?.innerText.split("\n")[0])

describe("checks", () => {
  it("are counted in the head, and listed with what mending moves first", async () => {
    const {page, trouble, sheet, panel, button, rows, status, faults} = await open()
    const before = async () => Number(/\d+/.exec(await button.innerText())?.[0] ?? 0)
    await expect.poll(before, WAITS).toBeGreaterThan(0)
    const unspoiled = await before()
    const close = await sheet.text("Long Acre", "Close")
    await sheet.type("Long Acre", "Close", "29 Jun")
    await expect.poll(before, WAITS).toBe(unspoiled + 1)

    await button.click()
    await panel.waitFor()
    await expect.poll(status, WAITS).toContain(`${unspoiled + 1} to look at`)
    await expect.poll(() => panel.innerText(), WAITS).not.toMatch(/Looking through|Trying/)
    const first = await rows.first().innerText()
    expect(first).toContain("Season plan F2")
    expect(first).toContain(`its formula gives ${close} 2026`)
    expect(first).toContain(`Mending it moves the close of Long Acre from 29 Jun 2026 to ${close} 2026`)
    expect(await faults()).toEqual([])

    await rows.first().getByRole("button", {name: "Put formula back"}).click()
    expect(await focused(page)).toBe("Checks")
    await expect.poll(() => sheet.text("Long Acre", "Close")).toBe(close)
    await expect.poll(status, WAITS).toContain(`${unspoiled} to look at`)
    expect(trouble).toEqual([])
  })

  it("are walked by keys alone, to a number that was kept for a reason, and back to the sheet", async () => {
    const {page, trouble, sheet, panel, button, rows, status} = await open()
    await sheet.open("Plantings")
    await sheet.type("Sand Piece", "Dry root", "4000") // above the usual
    await page.getByRole("alertdialog").getByRole("textbox").fill("Dug with the soil on")
    await page.getByRole("button", {name: "Keep it for this reason"}).click()
    await sheet.open("Season plan")
    await button.focus()
    await page.keyboard.press("Enter")
    await panel.waitFor()
    await expect.poll(() => focused(page)).toBe("Checks")
    const dryRoot = async () =>
      (await rows.allInnerTexts()).findIndex((line) => line.includes("Dry root of Sand Piece"))
    await expect.poll(dryRoot, WAITS).toBeGreaterThanOrEqual(0)
    await expect.poll(() => panel.innerText(), WAITS).not.toMatch(/Looking through|Trying/)
    const place = await dryRoot()
    const line = await rows.nth(place).innerText()
    expect(line).toContain("Note: Kept: Dug with the soil on")
    expect(line).toMatch(/Mending it moves the close of Sand Piece/)
    for (let i = 0; i < 4; i++) await page.keyboard.press("Tab") // Next, Previous, Put away, then the list
    for (let i = 0; i < place; i++) await page.keyboard.press("ArrowDown")
    await page.keyboard.press("Enter")
    await expect.poll(() => page.getByRole("heading", {level: 1}).innerText()).toBe("Plantings")
    expect(await status()).toContain(`Now at ${place + 1}: Plantings F3.`)
    await expect.poll(() => page.locator("[data-chosen=cell]").innerText()).toMatch(/4\s000/)
    await page.keyboard.press("Escape")
    await expect.poll(() => panel.count()).toBe(0)
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest(".ag-row")?.getAttribute("row-index")))
      .toBe("2")
    expect(trouble).toEqual([])
  })

  it("are reached from the help, and stay within a narrow and a dark page", async () => {
    const {page, trouble, panel, status, faults} = await open({width: 390, height: 844, colorScheme: "dark"})
    await page.getByRole("banner").getByText("Files and help").click()
    await page.getByRole("banner").getByRole("button", {name: "Help"}).click()
    await page.locator(".help-panel").getByRole("button", {name: "Checks"}).click()
    await panel.waitFor()
    await expect.poll(status, WAITS).toContain("to look at")
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    expect(await faults()).toEqual([])
    expect(trouble).toEqual([])
  })
})
