import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

const open = async () => {
  const {page, trouble} = await openPlanner({browser: {permissions: ["clipboard-read", "clipboard-write"]}})
  await page.locator(".ag-cell").first().waitFor()
  const put = (text: string) => page.evaluate((words) => navigator.clipboard.writeText(words), text)
  return {page, trouble, sheet: sheetOn(page), put}
}

it("shows twelve rows with decimal commas before they come in, and takes eleven in one step", async () => {
  const {page, trouble, sheet, put} = await open()
  await sheet.open("Pickings")
  await sheet.choose(1, "Planting")
  await page.keyboard.press("Control+ArrowDown")
  await page.keyboard.press("ArrowDown")
  const rows = Array.from(
    {length: 12},
    (_, i) => `Sand Piece\t2026-05-${25 + (i % 6)}\t${i === 6 ? "n/a" : `${148 + i},5`}`,
  )
  await put(`${rows.join("\r\n")}\r\n`)
  await page.keyboard.press("Control+v")
  const asked = page.getByRole("alertdialog")
  await expect
    .poll(() => asked.innerText())
    .toMatch(/1 of 36 cells cannot be pasted\. C74: “n\/a” is not a number; Weight takes a number in kg/)
  // What cannot be read comes first, then what reads otherwise than it was copied.
  const listed = await asked.locator("tbody tr").allInnerTexts()
  expect(listed[0]).toMatch(/^C74\tn\/a\t“n\/a” is not a number/)
  expect(listed.map((line) => line.replace("\u00a0", " "))).toContain("C68\t148,5\t148.5 kg")
  await page.getByRole("button", {name: "Bring in 35 cells"}).click()
  await page.getByRole("button", {name: /^Undo: paste of 35 cells in Pickings/}).click()
  await expect.poll(() => page.locator("[role=grid]").getAttribute("aria-label")).toContain("67 rows")
  expect(trouble).toEqual([])
})

it("questions an odd reading, keeps it with a reason, and shows the median beside the mean", async () => {
  const {page, trouble, sheet} = await open()
  await sheet.open("Crowns")
  expect(await sheet.text("Long Acre", "Sugar")).toBe("408.9")
  await sheet.open("Root samples")
  await sheet.choose(20, "Sugar") // rows 11 to 20 are Long Acre's; the last holds 376
  await page.keyboard.type("190")
  await page.keyboard.press("Enter")
  const asked = page.getByRole("alertdialog")
  await expect.poll(() => asked.innerText()).toMatch(/Sugar of Long Acre 190.mg\/g is far from the 9 others/)
  await asked.getByLabel("Reason").fill("measured twice")
  await page.keyboard.press("Enter")
  await sheet.open("Crowns")
  // Nine others and 190: mean 390.3, the middle of 402 and 412 is 407 (AG2).
  await expect.poll(() => sheet.text("Long Acre", "Sugar")).toBe("390.3")
  await page.keyboard.press("End")
  expect(await sheet.text("Long Acre", "Middle")).toBe("407.0")
  expect(trouble).toEqual([])
})

it("leaves blanks out of a mean and says so; a typed nought is used and questioned", async () => {
  const {page, trouble, sheet} = await open()
  await sheet.open("Root samples")
  for (const row of [11, 12]) {
    await sheet.choose(row, "Sugar")
    await page.keyboard.press("Delete")
  }
  await sheet.open("Crowns")
  await expect.poll(() => sheet.text("Long Acre", "Used")).toBe("8")
  await sheet.choose("Long Acre", "Sugar")
  await expect.poll(() => sheet.whereFrom().innerText()).toContain("8 of 10 used, 2 blank")
  await sheet.open("Root samples")
  await sheet.choose(13, "Sugar")
  await page.keyboard.type("0")
  await page.keyboard.press("Enter")
  await page.getByRole("alertdialog").getByLabel("Reason").fill("dead plant")
  await page.keyboard.press("Enter")
  await sheet.open("Crowns")
  await expect.poll(() => sheet.text("Long Acre", "Used")).toBe("8")
  expect(trouble).toEqual([])
})

it("enters a week, changes a width, keeps the name in view, fills a series and moves a close without a mouse", async () => {
  const {page, trouble, sheet} = await open()
  const focus = () => page.evaluate(() => window.document.activeElement?.tagName ?? "BODY")
  const at = (name: string) => page.getByRole("button", {name}).first()
  await at("Pickings").focus()
  await page.keyboard.press("Enter")
  await page.getByRole("heading", {level: 1, name: "Pickings"}).waitFor()
  await page.locator(".ag-cell").first().waitFor()
  await page.locator(".ag-cell").first().focus()
  await page.keyboard.press("Control+Home")
  await page.keyboard.press("Control+ArrowDown")
  await page.keyboard.press("ArrowDown")
  for (const day of [25, 26]) {
    await page.keyboard.type("Well Field")
    await page.keyboard.press("Tab")
    await page.keyboard.type(`${day} May`)
    await page.keyboard.press("Tab")
    await page.keyboard.type("1600")
    await page.keyboard.press("Enter")
    await page.keyboard.press("Home")
    expect(await focus()).not.toBe("BODY")
  }
  await expect.poll(() => page.locator("[role=grid]").getAttribute("aria-label")).toContain("69 rows")
  await page.keyboard.press("Shift+F10")
  await at("Column: heading, width, format").focus()
  await page.keyboard.press("Enter")
  const panel = page.locator(".column-panel")
  await panel.getByLabel("Width").focus()
  await page.keyboard.press("Control+a")
  await page.keyboard.type("12")
  await page.keyboard.press("Enter")
  await at("Keep no columns in view").focus()
  await page.keyboard.press("Enter")
  await at("Keep the columns up to this one in view").focus()
  await page.keyboard.press("Enter")
  await at("Put away").focus()
  await page.keyboard.press("Enter")
  await page.getByRole("button", {name: /^Undo: 1? ?column/}).waitFor()
  expect(await focus()).not.toBe("BODY")
  await sheet.open("Season plan")
  await page.locator(".calendar .target").nth(3).focus()
  await page.keyboard.press("ArrowLeft")
  await expect.poll(() => sheet.text("Well Field", "Close")).toBe("19 Jun")
  expect(await focus()).not.toBe("BODY")
  expect(trouble).toEqual([])
})

it("says of every cell its value, unit, column, planting, plant and kind, as a screen reader hears it", async () => {
  const {page, trouble, sheet} = await open()
  await sheet.open("Root samples")
  const said = await page
    .locator('[row-index="0"] .ag-cell[aria-label]')
    .evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")))
  expect(said).toEqual([
    "North Bench. Planting. typed",
    "1. Plant of North Bench. typed",
    "5 Mar 2026. Sampled of North Bench, plant 1. measured",
    "blank. Reading of North Bench, plant 1. measured",
    "470 mg/g. Sugar of North Bench, plant 1. measured",
    "470 mg/g. Sugar used of North Bench, plant 1. worked out",
    "laboratory. Method of North Bench, plant 1. typed",
    "dormant. Counts as of North Bench, plant 1. worked out",
  ])
  await sheet.open("Crowns")
  expect(await (await sheet.cell("Top Corner", "Sugar")).getAttribute("aria-label")).toBe(
    "#N/A Nothing there yet. Sugar of Top Corner. worked out",
  )
  expect(trouble).toEqual([])
})
