import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner, type View} from "./page"
import {sheetOn} from "./sheet"

async function openLender(view: View = {}) {
  const {page, trouble} = await openPlanner(view)
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  if ((view.width ?? 1440) < 600) await page.locator("nav summary").first().click()
  await sheet.open("Lender's page")
  await page.locator(".lender").waitFor()
  return {page, trouble, sheet}
}

it("answers a lender's first questions on the first page (LE1)", async () => {
  const {page, trouble} = await openLender()
  const text = await page.locator(".lender").innerText()
  expect(text).toMatch(/Hollow Brook Farm, season 2026/)
  expect(text).toMatch(/Version 7, after the frost, as it stood on 25 May 2026, by R\.T\./)
  expect(text).toMatch(/2027: cover 1\.\d\d, .* with replanting North Bench/)
  expect(text).toMatch(/t planned, 90\.2.t by their three-year mean/)
  expect(text).toContain("No number typed over")
  expect(text).toContain("No input without a source, where a sheet has a place for one")
  expect(await page.locator(".finding").innerText()).toMatch(
    /^As planned, nothing left to chance, every year pays what is due; 2027 is the tightest with cover 1\.\d\d.*\. At the pace so far 2026 covers 1\.\d\d, not the 1\.51 planned/,
  )
  const caption = page.locator(".lender-picture figcaption").first()
  expect(await caption.innerText()).toContain("Nothing is due in 2035: not drawn.")
  const [cash, yields] = await page.locator(".lender-picture svg").all()
  expect(await cash!.getAttribute("aria-label")).toMatch(/2027: 39.127 money for 34.310 due, cover 1\.14/)
  expect(await yields!.getAttribute("aria-label")).toMatch(
    /Long Acre: projection for age 9 is 3.777 kg\/ha, 30.% under the three-year record of 5.360\./,
  )
  expect(trouble).toEqual([])
})

it("says first what makes the tight year where its line comes from, and leads on to the loans (LE7)", async () => {
  const {sheet} = await openLender()
  await sheet.choose("Tight year", "Text")
  const used = sheet.whereFrom().getByRole("list", {name: "What it uses"})
  const lines = () => used.last().locator(":scope > li").allInnerTexts()
  await expect.poll(async () => (await lines())[0]).toMatch(/^Tight year 2027 from Tight cover/)
  const told = await lines()
  expect(told).toContainEqual(
    expect.stringMatching(/^Margin of 2027, Cash and debt 4.817.money from Capacity/),
  )
  await sheet.open("Cash and debt")
  await sheet.choose(2, "Interest")
  await expect.poll(async () => (await lines())[0]).toMatch(/^Interest, Debt by year, rows 2 and 12: /)
  await used.last().locator("li").first().getByRole("button").last().click() // the planting loan's, in row 12
  await expect.poll(async () => (await lines())[0]).toMatch(/^Money of Planting loan, Loans 60.000.money/)
  await used.last().getByRole("button", {name: "Money of Planting loan"}).click()
  await expect
    .poll(() => sheet.whereFrom().innerText())
    .toMatch(/For: clearing .* Document: planned\. Date: 16 Feb 2026\./)
})

it("sorts what changed since a version by what it moves the lowest cover (LE9)", async () => {
  const {page, trouble, sheet} = await openLender()
  const panel = page.locator(".versions-panel")
  await page.getByRole("button", {name: "Versions"}).click()
  await panel.getByLabel("Name").fill("January")
  await page.keyboard.press("Enter")
  await panel.locator(".versions li").waitFor()
  await sheet.open("Named values")
  await sheet.type("Pick_cost", "Value", "1")
  await sheet.open("Prices")
  await sheet.type(1, "Price", "3")
  await sheet.open("Lender's page")
  await panel.locator("li", {hasText: "January"}).getByRole("button", {name: "Compare with now"}).click()
  const changes = panel.getByRole("region", {name: "What changed since January"})
  await changes.getByText("What changed, by what it moves the lowest cover").waitFor({timeout: 60_000})
  const [moved, changed] = await changes.locator("ul.changes").all()
  expect(await moved!.locator("li").first().innerText()).toMatch(/^Lowest cover: 1\.14\s+→\s+became\s+0\.79/)
  // Of the 87.3 t sold in 2027, 101.5 t as harvested, for 34 310 due: a mean price 0.65/8 lower takes 0.21, picking for 0.05 more 0.15.
  expect((await changed!.locator("li").allInnerTexts()).slice(0, 2)).toEqual([
    expect.stringMatching(/^Price of 1, Prices: .* moves lowest cover −0\.21, /s),
    expect.stringMatching(/^Value of Pick_cost, Named values: .* moves lowest cover −0\.15, /s),
  ])
  expect(trouble).toEqual([])
})

it("lists what is typed over, with the formula's own value (LE8)", async () => {
  const {page, sheet} = await openLender()
  await sheet.open("Cash and debt")
  await sheet.type(2, "Cover", "1.30")
  await sheet.open("Lender's page")
  const section = page.getByRole("region", {name: "Numbers typed over"})
  await section.waitFor()
  expect(await page.locator("#typed-over").innerText()).toBe("1 number typed over")
  expect(await section.locator("tbody tr").innerText()).toMatch(
    /Cover of 2027, Cash and debt\s+1\.30\s+1\.14\s+no reason noted/,
  )
  await section.getByRole("button").click()
  expect(await page.locator("h1").innerText()).toBe("Cash and debt")
})

it.each<View>([
  {},
  {colorScheme: "dark"},
  {width: 390, height: 844},
  {width: 390, height: 844, colorScheme: "dark"},
])("can be read by everyone at %o", async (view) => {
  const {page, trouble} = await openLender(view)
  const {violations} = await new AxeBuilder({page}).analyze()
  expect(violations.map(({id, nodes}) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(wide).toBeLessThanOrEqual(0)
  expect(trouble).toEqual([])
})

it("keeps a reading copy that opens for reading only and says whether it was changed (LE12)", async () => {
  const {page, trouble, sheet} = await openLender()
  await page.evaluate(() =>
    Object.assign(window, {showSaveFilePicker: undefined, showOpenFilePicker: undefined}),
  )
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", {name: "Make a reading copy"}).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/^hollow-brook-farm-reading-copy-\d{4}-\d\d-\d\d\.html$/)
  const text = await (await download.createReadStream()).toArray()
  const copy = Buffer.concat(text).toString("utf8")
  const said = await sheet.said()
  expect(said).toMatch(/Its digest is ([0-9a-f]{4} ){2}[0-9a-f]{4}\./)
  const openCopy = async (content: string) => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", {name: "Open a file copy"}).click(),
    ])
    await chooser.setFiles({name: "copy.html", mimeType: "text/html", buffer: Buffer.from(content)})
  }
  const line = page.getByRole("note")

  await sheet.open("Season plan")
  await openCopy(copy)
  await expect
    .poll(() => line.innerText())
    .toMatch(/made by R\.T\. on .*Unchanged since it was made\. Digest/)
  expect(said).toContain(/Digest (.*)\./.exec(await line.innerText())![1])
  expect(await page.locator("h1").innerText()).toBe("Lender's page")
  await sheet.open("Prices")
  await sheet.choose(1, "Price")
  await page.keyboard.type("9")
  const asked = page.getByRole("alertdialog")
  await asked.getByText("This is a reading copy. Make your own copy to try changes?").waitFor()
  expect(await sheet.text(1, "Price")).toBe("3.65")
  await asked.getByRole("button", {name: "Make my own copy"}).click()
  await expect.poll(() => page.locator(".book").innerText()).toContain("Hollow Brook Farm, own copy")
  expect(await line.count()).toBe(0)
  await sheet.type(1, "Price", "3.70")
  expect(await sheet.text(1, "Price")).toBe("3.70")

  await openCopy(copy.replace("[1,3.65,", "[1,3.75,"))
  await expect.poll(() => line.innerText()).toContain("Changed since it was made")
  expect(trouble).toEqual([])
})

it("prints on its own, whole, with the years as a table and a number on each page (LE10)", async () => {
  const {page, sheet} = await openLender()
  await page.emulateMedia({media: "print"})
  const A4_WITHIN = 688 // px: 210 mm less the margins
  await page.setViewportSize({width: A4_WITHIN, height: 900})
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(A4_WITHIN)
  expect(await page.locator(".on-paper").isVisible()).toBe(true)
  for (const away of [".alone", ".contents", ".folio", ".reading-copy"])
    expect(await page.locator(away).first().isVisible(), away).toBe(false)
  const wide = await page
    .locator(".lender svg, .lender table")
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right))
  expect(Math.max(...wide)).toBeLessThanOrEqual(A4_WITHIN)
  for (const format of ["A4", "Letter"]) {
    const pdf = (await page.pdf({format, printBackground: true})).toString("latin1")
    expect(pdf.match(/\/Type\s*\/Page\b/g)!.length, format).toBeGreaterThanOrEqual(2)
  }
  const foot = page.locator(".lender style")
  expect(await foot.textContent()).toMatch(
    /@bottom-left .*Hollow Brook Farm, season 2026\. Version 7, after the frost.*@bottom-right .*Fernledger \d+\.\d+\.\d+, printed \d+ [A-Z][a-z]{2} 20\d\d\. Page/,
  )
  // The pictures stand side by side, whole, on the first sheet, that of Letter too: 279.4 mm less margins of 14 and 18 mm.
  const pictures = await page.locator(".lender-picture").evaluateAll((all) =>
    all.map((one) => {
      const {top, bottom, width} = one.getBoundingClientRect()
      return {top: top + scrollY, bottom: bottom + scrollY, width: Math.round(width)}
    }),
  )
  expect(pictures).toHaveLength(2)
  expect(pictures[0]!.top).toBe(pictures[1]!.top)
  expect(pictures.map(({width}) => width)).toEqual([332, 332]) // as they are drawn when the browser prints
  for (const {bottom} of pictures) expect(bottom).toBeLessThan((279.4 - 32) * (96 / 25.4))
  // What was typed over and what has no source stand above the pictures, so on the first page whatever the paper.
  const tops = await page
    .locator(".lender .five, .lender .lists, .lender .pictures")
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top))
  expect(tops).toHaveLength(3)
  expect(tops).toEqual(tops.toSorted((a, b) => a - b))
  // What paper cannot do is not asked of it, and a study that was not run has no place on it.
  expect(await page.locator(".guide").innerText()).toMatch(/^Cover: term debt coverage/)
  expect(await page.locator(".risk").isVisible()).toBe(false)
  await page.emulateMedia({media: "screen"})
  await page.getByRole("button", {name: "Work out the risk"}).click()
  await page.locator(".risk table").waitFor()
  await page.emulateMedia({media: "print"})
  expect(await page.locator(".risk").isVisible()).toBe(true)
  const pages = (await page.pdf({format: "Letter", printBackground: true})).toString("latin1")
  expect(pages.match(/\/Type\s*\/Page\b/g)).toHaveLength(3) // with the study, the years whole on the last one
  await page.emulateMedia({media: "screen"})
  await page.setViewportSize({width: 1440, height: 900})
  await page.getByRole("button", {name: "A blank workbook"}).click()
  await page.getByText("No plantings in this plan yet.").waitFor()
  await sheet.open("Lender's page")
  await expect.poll(() => foot.textContent()).toMatch(/"New season\. No day is typed/)
  // Of an empty plan paper says why there is no study, and has no tables of headings alone.
  await page.getByRole("button", {name: "Work out the risk"}).click()
  await page.emulateMedia({media: "print"})
  expect(await page.locator(".risk").innerText()).toMatch(
    /^What chance may do to the cover\s+There are no years of cash and debt yet: the season is not known\.$/,
  )
  expect(await page.locator(".lender table").count()).toBe(0)
  expect(await page.locator(".lender svg").count()).toBe(0) // nor axes without a mark
})

it("holds all its answers on the first sheet of paper, with what was typed over and has no source", async () => {
  const {page, sheet} = await openLender()
  await sheet.open("Cash and debt")
  await sheet.type(2, "Cover", "1.30")
  await sheet.type(3, "Taxes", "5000")
  await sheet.open("Loans")
  await sheet.choose(2, "Document")
  await page.keyboard.press("Delete")
  await sheet.open("Named values")
  await sheet.choose("Pick_cost", "Source")
  await page.keyboard.press("Delete")
  await sheet.open("Lender's page")
  await page.getByRole("button", {name: "Work out the risk"}).click()
  await page.locator(".risk table").waitFor()
  expect(await page.locator(".lists h2").allInnerTexts()).toEqual([
    "2 numbers typed over",
    "2 inputs without a source, where a sheet has a place for one",
  ])
  await page.emulateMedia({media: "print"})
  // px within the margins of 14, 14 and 18 mm; Letter is the wider and the lower of the two.
  for (const [paper, width, height] of [
    ["A4", 182, 265],
    ["Letter", 187.9, 247.4],
  ] as const) {
    await page.setViewportSize({width: Math.floor(width * (96 / 25.4)), height: 900})
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")))
    const bottoms = await page
      .locator(".lender-picture")
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().bottom + scrollY))
    expect(bottoms).toHaveLength(2)
    expect(Math.max(...bottoms), paper).toBeLessThan(height * (96 / 25.4))
    const pdf = (await page.pdf({format: paper, printBackground: true})).toString("latin1")
    expect(pdf.match(/\/Type\s*\/Page\b/g), paper).toHaveLength(3) // and none of them blank
  }
})

it("works out the risk in the background, states its seed, and can be stopped", async () => {
  const {page, trouble, sheet} = await openLender()
  const start = page.getByRole("button", {name: "Work out the risk"})
  await start.click()
  await page.getByRole("button", {name: "Stop"}).click()
  await start.waitFor()
  expect(await page.locator(".risk table").count()).toBe(0)
  await start.click()
  await page.locator(".risk table").waitFor()
  const said = await page.locator(".risk").innerText()
  expect(said).toMatch(/In \d+ runs of 100 the cover is below 1 in 20\d\d/)
  expect(said).toContain("10\u202f000 draws, seed 1")
  const [inRuns] = /in \d+ runs of 100 the cover is below 1 in 20\d\d/i.exec(said)!
  expect(await page.locator(".finding").innerText()).toContain(inRuns.replace(/^In/, "in"))
  const row = await page.locator(".risk tbody tr").nth(1).innerText()
  const [, planned, low, middle, high, below, , , under] = row
    .replaceAll("\u2212", "-")
    .split(/\s+/)
    .map(Number)
  expect(planned).toBe(1.14) // 2027, by the plan of the sheet
  expect(low).toBeLessThan(middle!)
  expect(middle).toBeLessThan(high!)
  expect(under).toBeGreaterThan(below!)
  expect(await page.locator(".lender-picture .band").count()).toBeGreaterThan(8)
  expect(said).toContain("No crop on record: Home Strip and Top Corner.")
  const {violations} = await new AxeBuilder({page}).analyze()
  expect(violations.map(({id}) => id)).toEqual([])
  // A year that cannot be worked out ends the study, and it says so.
  await sheet.open("Cash and debt")
  await sheet.type(3, "Capacity", "=NA()")
  await sheet.open("Lender's page")
  await start.click()
  await page.locator(".risk table").waitFor()
  expect(await page.locator(".risk tbody th").allInnerTexts()).toEqual(["2026", "2027"])
  expect(await page.locator(".risk").innerText()).toMatch(/^In \d+ .*, the most of the years that are known/)
  expect(await page.locator(".risk").innerText()).toContain("Not in the study: 2028 to 2035.")
  expect(trouble).toEqual([])
})
