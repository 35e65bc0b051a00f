import {AxeBuilder} from "@axe-core/playwright"
import type {Page} from "playwright-core"
import {describe, expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** The planner with the panel opened from the sheet by its key. */
async function openFind(view: Parameters<typeof openPlanner>[0] = {}) {
  const {page, trouble} = await openPlanner(view)
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.choose("Long Acre", "Planting")
  await page.keyboard.press("Control+f")
  const panel = page.getByRole("region", {name: "Find in the workbook"})
  const list = panel.getByRole("list", {name: "Found"})
  return {
    page,
    trouble,
    sheet,
    panel,
    field: panel.getByRole("searchbox", {name: "Look for"}),
    hits: list.getByRole("button"),
    lines: list.getByRole("listitem"),
    count: () => panel.getByRole("status").innerText(),
  }
}

const title = (page: Page) => page.getByRole("heading", {level: 1}).innerText()

/** What the chosen cell shows, or null while it cannot be seen in its sheet. */
const chosen = (page: Page) =>
  page.evaluate(() => {
    const cell = document.querySelector<HTMLElement>("[data-chosen=cell]")
    const sheet = document.querySelector(".sheet")!.getBoundingClientRect()
    const {top, bottom} = cell?.getBoundingClientRect() ?? {top: 0, bottom: 0}
    return cell && sheet.top < top && bottom <= sheet.bottom ? cell.innerText : null
  })

const focused = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.tagName)

describe("finding", () => {
  it("goes to rows that are not on screen, on sheets that are not open, and back to the sheet", async () => {
    const {page, trouble, field, hits, count} = await openFind()
    await page.keyboard.type("31 Dec 2026")
    await expect.poll(count).toBe("2 found.")
    expect(await hits.allInnerTexts()).toEqual([
      expect.stringMatching(/^Weather by day A365, Day 31 Dec 2026$/),
      expect.stringMatching(/^Reserve B53, .* 31 Dec 2026$/),
    ])
    expect(await page.locator('.ag-row[row-index="364"]').count()).toBe(0)
    await page.keyboard.press("Enter")
    await expect.poll(() => chosen(page)).toBe("31 Dec 2026")
    expect(await title(page)).toBe("Weather by day")
    expect(await count()).toContain("Now at 1: Weather by day A365, Day.")

    await page.keyboard.press("Enter")
    await expect.poll(() => title(page)).toBe("Reserve")
    await expect.poll(() => chosen(page)).toMatch(/^31 Dec/)
    await page.keyboard.press("Enter") // round the end
    await expect.poll(() => title(page)).toBe("Weather by day")
    await page.keyboard.press("Shift+Enter")
    await expect.poll(() => title(page)).toBe("Reserve")
    expect(await field.evaluate((one) => one === document.activeElement)).toBe(true)

    await page.keyboard.press("Escape")
    await expect.poll(() => focused(page)).toMatch(/^31 Dec.*Until/)
    expect(await field.count()).toBe(0)
    expect(await page.locator(".trace").count()).toBe(1)
    expect(trouble).toEqual([])
  })

  it("says that nothing is found only once it has looked", async () => {
    const {page, panel, count} = await openFind()
    await panel.getByRole("status").evaluate((one) => {
      new MutationObserver(
        () => (one.dataset["said"] = `${one.dataset["said"] ?? ""}|${one.textContent}`),
      ).observe(one, {childList: true, characterData: true, subtree: true})
    })
    await page.keyboard.type("31 Dec 2026", {delay: 20})
    await expect.poll(count).toBe("2 found.")
    expect(await panel.getByRole("status").getAttribute("data-said")).not.toContain("Nothing")
    await page.keyboard.type("?")
    await expect.poll(count).toBe("Nothing found.")
  })

  it("gives the focus to the cell that was gone to, however soon the panel is put away", async () => {
    const {page, field, count} = await openFind()
    await page.keyboard.type("31 Dec 2026")
    await expect.poll(count).toBe("2 found.")
    await field.evaluate((one) => {
      for (const key of ["Enter", "Escape"])
        one.dispatchEvent(new KeyboardEvent("keydown", {key, bubbles: true, cancelable: true}))
    })
    await expect.poll(() => focused(page)).toMatch(/^31 Dec 2026.*Day/)
  })

  it("opens a sheet of long texts on the row that was found", async () => {
    const {page, hits, count} = await openFind()
    await page.keyboard.type("Irrigation and Drainage")
    await expect.poll(count).toBe("1 found.")
    await hits.click()
    await expect.poll(() => chosen(page)).toMatch(/^Allen, R\.G\./)
    expect(await title(page)).toBe("Sources")
  })

  it("opens from its button too, and asks again for its key", async () => {
    const {page, panel, field} = await openFind()
    await page.keyboard.type("never written")
    await expect.poll(() => panel.getByRole("status").innerText()).toBe("Nothing found.")
    await panel.getByRole("button", {name: "Put away"}).click()
    expect(await focused(page)).toMatch(/^Long Acre\. Planting/)
    const button = page.getByRole("button", {name: "Find", exact: true})
    await button.click()
    expect(await button.getAttribute("aria-expanded")).toBe("true")
    expect(await field.evaluate((one) => one === document.activeElement)).toBe(true)
    await (await sheetOn(page).cell("Well Field", "Planting")).click()
    await page.keyboard.press("Control+f")
    await expect.poll(() => field.evaluate((one) => one === document.activeElement)).toBe(true)
    await button.click()
    expect(await panel.count()).toBe(0)
  })

  it("lists the first 200 and tells how many there are", async () => {
    const {page, panel, hits, count} = await openFind()
    await panel.getByRole("combobox").selectOption("formulas")
    await panel.getByRole("searchbox").fill("CLIMATE.ON_DAY")
    // Air, soil and sun of 365 days.
    await expect.poll(count).toBe("1095 found, the first 200 are listed.")
    expect(await hits.count()).toBe(200)
    await page.keyboard.press("Shift+Enter") // from the season plan backwards: the last
    await expect.poll(() => title(page)).toBe("Weather by day")
    expect(await count()).toContain("Now at 1095: Weather by day E365, Sun of")
  })
})

describe("replacing", () => {
  it("shows what would change, changes what is ticked in one act, and undoes it", async () => {
    const {page, trouble, sheet, panel, field, lines, count} = await openFind()
    await page.keyboard.type("well field")
    await panel.getByRole("button", {name: "Replace", exact: true}).click()
    await panel.getByRole("textbox", {name: "Replace with"}).fill("Mill Piece")
    const typed = lines.filter({has: page.getByRole("checkbox")})
    const others = lines.filter({hasText: "Stays as it is."})
    await expect.poll(() => typed.first().innerText()).toMatch(/Well Field →[^]*Mill Piece/)
    const [willChange, willStay] = [await typed.count(), await others.count()]
    // In every sheet that is kept by planting, and in sentences that formulas make.
    expect(willChange).toBeGreaterThan(20)
    expect(willStay).toBeGreaterThan(0)
    expect((await others.allInnerTexts()).join()).toContain("A formula gives this value")
    const stay = willStay === 1 ? "1 stays as it is" : `${willStay} stay as they are`
    expect(await count()).toBe(`${willChange + willStay} found. ${stay}.`)
    expect(await sheet.text(4, "Planting")).toBe("Well Field")

    await typed.last().getByRole("checkbox").uncheck()
    await panel.getByRole("button", {name: `Replace ${willChange - 1}`, exact: true}).click()
    await expect.poll(() => sheet.text(4, "Planting")).toBe("Mill Piece")
    const name = `${willChange - 1} cells replaced, “well field” by “Mill Piece”`
    await expect.poll(count).toContain(`Done: ${name}.`)
    expect(await field.evaluate((one) => one === document.activeElement)).toBe(true)
    await page.getByRole("button", {name: `Undo: ${name}`}).click()
    await expect.poll(() => sheet.text(4, "Planting")).toBe("Well Field")
    await expect.poll(() => typed.count()).toBe(willChange)
    expect(await page.getByRole("button", {name: /^Undo/}).isDisabled()).toBe(true)
    expect(trouble).toEqual([])
  })

  it("keeps what is being typed, and replaces in that too", async () => {
    const {page, sheet, panel, field} = await openFind()
    await page.keyboard.type("Strip")
    await panel.getByRole("button", {name: "Replace", exact: true}).click()
    await panel.getByRole("textbox", {name: "Replace with"}).fill("Piece")
    await (await sheet.cell("Long Acre", "Planting")).click()
    await page.keyboard.type("Long Strip")
    await panel.getByRole("button", {name: /^Replace \d/}).click()
    await expect.poll(() => sheet.text(2, "Planting")).toBe("Long Piece")
    expect(await sheet.text(5, "Planting")).toBe("Home Piece")
    expect(await field.inputValue()).toBe("Strip")
  })
})

it.each([
  [1440, 900, "light"],
  [390, 844, "dark"],
] as const)("shows nothing that axe objects to at %i x %i, %s", async (width, height, colorScheme) => {
  const {page, panel, lines} = await openFind({width, height, colorScheme})
  await page.keyboard.type("Acre")
  await panel.getByRole("button", {name: "Replace", exact: true}).click()
  await panel.getByRole("textbox", {name: "Replace with"}).fill("Field")
  await expect.poll(() => lines.first().innerText()).toContain("Field")
  await lines.nth(1).getByRole("button").click()
  const {violations} = await new AxeBuilder({page: page as never})
    .include(".find-panel")
    .include(".head")
    .analyze()
  expect(
    violations.map(({id, nodes}) => `${id}: ${nodes.map(({html}) => html.slice(0, 160)).join(" | ")}`),
  ).toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
})
