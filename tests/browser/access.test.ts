import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

type Page = Awaited<ReturnType<typeof openPlanner>>["page"]

/** What reaches beyond the right edge of the page, other than within something that scrolls by itself. */
const beyondTheEdge = (page: Page) =>
  page.evaluate(() => {
    const width = window.document.documentElement.clientWidth
    const isCut = (one: Element) => {
      for (let at = one.parentElement; at; at = at.parentElement)
        if (getComputedStyle(at).overflowX !== "visible") return true
      return false
    }
    return [...window.document.querySelectorAll("body *")]
      .filter((one) => {
        const {right, width: wide} = one.getBoundingClientRect()
        return wide > 0 && right > width + 1 && !isCut(one)
      })
      .map((one) => `${one.tagName} ${one.className}`)
      .slice(0, 3)
  })

// At 1280 px, 200 % leaves 640 and 400 % leaves 320 px (WCAG 2.2, 1.4.4 and 1.4.10).
it.each([640, 320])(
  "loses nothing to the side at %d px: sheets, pages, panels and the field page",
  async (width) => {
    const {page, trouble} = await openPlanner({width, height: 800})
    await page.locator(".ag-cell").first().waitFor()
    const open = async (name: string) => {
      await page.evaluate((wanted) => {
        const buttons = [...window.document.querySelectorAll<HTMLButtonElement>("nav button")]
        buttons.find(({textContent}) => textContent?.replace(/\d+ rows$/, "") === wanted)!.click()
      }, name)
      await page.getByRole("heading", {level: 1, name, exact: true}).waitFor()
    }
    const found: Record<string, unknown> = {}
    const look = async (what: string) => {
      const beyond = await beyondTheEdge(page)
      if (beyond.length) found[what] = beyond
    }
    for (const name of ["Season plan", "This week", "Crew and cooler", "Reserve", "Records"]) {
      await open(name)
      await look(name)
    }
    for (const act of ["Note on the cell", "Name this value", "Cases", "Column: heading, width, format"]) {
      await page.getByRole("button", {name: "More acts"}).click()
      await page.getByRole("button", {name: act}).click()
      await look(act)
      await page.getByRole("button", {name: "Put away"}).click()
    }
    for (const panel of ["Versions", "Find", "Checks", "Help"]) {
      if (panel === "Versions" || panel === "Help") await page.locator(".head summary").click()
      await page
        .locator(".head")
        .getByRole("button", {name: new RegExp(`^${panel}`)})
        .click()
      await look(panel)
      await page.getByRole("button", {name: "Put away"}).click()
    }
    await page.getByRole("button", {name: "Field page"}).click()
    await look("field")
    expect(found).toEqual({})
    expect(trouble).toEqual([])
  },
)

it("shows the chosen cell in whole beside a long name at 320 px", async () => {
  const {page, trouble} = await openPlanner({width: 320, height: 640})
  await page.locator(".ag-cell").first().waitFor()
  await page.locator("summary", {hasText: "Contents"}).click()
  await sheetOn(page).open("Measures")
  await page.locator('[row-index="0"] .ag-cell[col-id="0"]').click()
  await page.keyboard.press("ArrowRight")
  const sheet = (await page.locator(".sheet").boundingBox())!
  const cell = page.locator('[row-index="0"] .ag-cell[col-id="1"]')
  const beyond = async () => {
    const {x, width} = (await cell.boundingBox())!
    return {left: Math.max(0, sheet.x - x), right: Math.max(0, x + width - sheet.x - sheet.width)}
  }
  await expect.poll(beyond).toEqual({left: 0, right: 0})
  expect(trouble).toEqual([])
})

it("keeps every mark of a cell where the system forces its own colours", async () => {
  const {page, trouble} = await openPlanner({browser: {forcedColors: "active"}})
  await page.locator(".ag-cell").first().waitFor()
  const marks = await page.locator(".key .sw").evaluateAll((all) =>
    all.map((one) => {
      const [before, after] = [getComputedStyle(one, "::before"), getComputedStyle(one, "::after")]
      const canvas = getComputedStyle(window.document.body).backgroundColor
      const drawn = [before, after].some(
        (style) =>
          style.content !== "none" &&
          (style.content.length > 2 ||
            parseFloat(style.borderTopWidth) > 0 ||
            style.backgroundImage !== "none" ||
            (style.backgroundColor !== canvas && style.backgroundColor !== "rgba(0, 0, 0, 0)")),
      )
      return [one.getAttribute("data-kind"), drawn]
    }),
  )
  expect(marks).toEqual(marks.map(([kind]) => [kind, true]))
  expect(marks).toHaveLength(7)
  expect(trouble).toEqual([])
})

it("shows a block that is chosen, and one that is cut, where the system forces its own colours", async () => {
  const {page, trouble} = await openPlanner({browser: {forcedColors: "active"}})
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).choose(1, "Open")
  for (let i = 0; i < 2; i++) await page.keyboard.press("Shift+ArrowDown")
  const look = (row: number) =>
    page.locator(`[row-index="${row}"] .ag-cell[col-id="4"]`).evaluate((cell) => {
      const probe = document.body.appendChild(document.createElement("i"))
      probe.style.color = "Highlight"
      const {backgroundColor, outlineStyle} = getComputedStyle(cell)
      const isMarked = backgroundColor === getComputedStyle(probe).color
      probe.remove()
      return [isMarked, outlineStyle]
    })
  await page.locator('.ag-cell[data-chosen="block"]').first().waitFor()
  expect([(await look(2))[0], (await look(4))[0]]).toEqual([true, false])
  await page.keyboard.press("Control+x")
  await expect.poll(async () => (await look(2))[1]).toBe("dashed")
  expect(trouble).toEqual([])
})

it("draws every picture in the system's own colours where it forces them", async () => {
  const {page, trouble} = await openPlanner({browser: {forcedColors: "active"}})
  await page.locator(".ag-cell").first().waitFor()
  const strangers = async () =>
    page.locator("svg.pic").evaluateAll((all) => {
      const probe = document.body.appendChild(document.createElement("i"))
      const systems = ["CanvasText", "Canvas", "GrayText", "Highlight"].map((name) => {
        probe.style.color = name
        return getComputedStyle(probe).color
      })
      probe.remove()
      const own = new Set(["none", "rgba(0, 0, 0, 0)", ...systems])
      const shapes = all.flatMap((one) => [...one.querySelectorAll("path, rect, circle, text")])
      return shapes.flatMap((shape) => {
        const {fill, stroke, fillOpacity, strokeWidth} = getComputedStyle(shape)
        const seen = [fillOpacity === "0" ? "none" : fill, strokeWidth === "0px" ? "none" : stroke]
        const isStrange = seen.some((colour) => !own.has(colour) && !colour.startsWith("url"))
        return isStrange && !shape.classList.contains("tint") ? [shape.getAttribute("class")] : []
      })
    })
  const found: Record<string, unknown> = {}
  for (const name of ["Season plan", "This week", "Crew and cooler", "Reserve", "Replant", "Lender's page"]) {
    await sheetOn(page).open(name)
    const classes = new Set(await strangers())
    if (classes.size > 0) found[name] = [...classes]
  }
  expect(found).toEqual({})
  expect(trouble).toEqual([])
})

it("draws a picture in the width of the paper, so that its words are not made smaller with it", async () => {
  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Reserve")
  const picture = page.locator(".reserve-year svg")
  const width = async () => Number(await picture.getAttribute("width"))
  await expect.poll(width).toBeGreaterThan(1000)
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")))
  expect(await width()).toBe(688) // px that A4 leaves between its margins
  await page.evaluate(() => dispatchEvent(new Event("afterprint")))
  await expect.poll(width).toBeGreaterThan(1000)
})

it("prints a sheet without what only the screen needs, and says on each page what it is", async () => {
  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Spear size")
  await page.emulateMedia({media: "print"})
  for (const one of [".content", ".trace", ".title .acts", ".folio"])
    expect(await page.locator(one).first().isVisible(), one).toBe(false)
  expect(await page.locator("figure").first().isVisible()).toBe(true)
  expect(await page.locator("main > style").textContent()).toMatch(
    /Spear size, version .+, as of 25 May 2026/,
  )
})

it("prints a wide sheet whole, in groups of columns that each begin with the names of the rows", async () => {
  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await page.emulateMedia({media: "print"})
  await page.setViewportSize({width: 688, height: 900}) // px that A4 leaves between its margins
  const tables = page.locator(".paper-sheet table")
  expect(await tables.count()).toBeGreaterThan(1)
  const heads = await tables.evaluateAll((all) =>
    all.map((table) => [...table.querySelectorAll("th")].map((one) => one.firstChild!.textContent!.trim())),
  )
  expect(heads.every(([first]) => first === "Planting")).toBe(true)
  expect(heads.flat()).toContain("last date")
  for (const table of await tables.all()) expect((await table.boundingBox())!.width).toBeLessThanOrEqual(688)
  expect(await tables.first().innerText()).toContain("Long Acre")
  expect(await page.locator(".ag-root-wrapper").first().isVisible()).toBe(false)
  await page.emulateMedia({media: "screen"})
  await expect.poll(() => tables.count()).toBe(0)
})

it("prints in words what a mark says on the screen: a note, and a number that was typed over", async () => {
  const {page} = await openPlanner()
  const sheet = sheetOn(page)
  await page.locator(".ag-cell").first().waitFor()
  await sheet.open("Pickings")
  await sheet.type(2, "By area", "99")
  await sheet.choose(3, "Weight")
  await page.keyboard.press("Shift+F2")
  await page.getByLabel("What to know").fill("Scale was wet")
  await page.getByRole("button", {name: "Keep the note"}).click()
  await sheet.choose(4, "Planting")
  await page.getByLabel("What to know").fill("First day of the second crew")
  await page.getByRole("button", {name: "Keep the note"}).click()
  await page.emulateMedia({media: "print"})
  const paper = page.locator(".paper-sheet")
  await expect
    .poll(() => paper.locator("ol li").allInnerTexts())
    .toEqual([
      "By area of North Bench: typed over.",
      expect.stringMatching(/^Weight of Long Acre: Scale was wet \d+ [A-Z][a-z]{2} 20\d\d$/),
      expect.stringMatching(/^Sand Piece: First day of the second crew \d/),
    ])
  expect(await paper.locator("td:has(sup)").allInnerTexts()).toEqual(["99a", "338b", "Sand Piecec"])
})

it("prints the packing list with its day, and what the shed needs to know of a planting on one line", async () => {
  const {page} = await openPlanner({width: 1440})
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Packing list")
  await page.emulateMedia({media: "print"})
  await page.setViewportSize({width: 688, height: 900})
  expect(await page.locator(".finding").innerText()).toMatch(/^28 May 2026: .* come in by the plan/)
  const first = page.locator(".paper-sheet table").first()
  const heads = await first
    .locator("th")
    .evaluateAll((all) => all.map((one) => one.firstChild!.textContent!.trim()))
  expect(heads).toEqual(
    expect.arrayContaining(["Planting", "In", "Packed", "very large", "Crates", "Cartons"]),
  )
  expect((await first.boundingBox())!.width).toBeLessThanOrEqual(688)
  const heights = await first.locator("tbody tr").evaluateAll((all) => all.map((one) => one.clientHeight))
  expect(Math.max(...heights)).toBeLessThan(30) // no name is wrapped
})
