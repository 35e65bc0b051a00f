import type {Locator} from "playwright-core"
import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

const faultsOn = async (page: Awaited<ReturnType<typeof openPlanner>>["page"]) =>
  (await new AxeBuilder({page}).analyze()).violations.map(
    ({id, nodes}) => `${id} ${nodes[0]?.html.slice(0, 90)}`,
  )

/** Adds a picking; run after the close of the plan, the day of the test is asked about first. */
async function addSurely(add: Locator) {
  await add.tap()
  if ((await add.innerText()) === "Add it all the same") await add.tap()
}

it("takes five pickings on the field page without a network, one of them back, and they stand in the workbook", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  await page.locator(".ag-cell").first().waitFor()
  await page.context().setOffline(true)
  await page.getByRole("button", {name: "Field page"}).tap()
  const amount = page.getByLabel("Typed so far")
  const add = page.locator(".field-do")
  for (const [i, kg] of ["1160", "405", "98.5", "61", "77"].entries()) {
    for (const key of kg) await page.getByRole("button", {name: key, exact: true}).tap()
    await expect.poll(() => amount.innerText()).toContain(i === 2 ? "98.5" : kg.slice(-2))
    await addSurely(add)
  }
  await page.getByRole("button", {name: "Take back"}).tap()
  await expect
    .poll(() => page.locator(".field-saved").innerText(), {timeout: 10_000})
    .toMatch(/^Saved on this device \d\d:\d\d\. .*No network needed\./)
  expect(await faultsOn(page)).toEqual([])
  const small = await page
    .locator(".field :is(button, select)")
    .evaluateAll((all) =>
      all.filter((one) => one.getBoundingClientRect().height < 48).map((one) => one.textContent),
    )
  expect(small).toEqual([])
  await page.getByRole("button", {name: "Back", exact: true}).tap()
  await page.locator("summary", {hasText: "Contents"}).tap()
  await page.getByRole("button", {name: /^Pickings\s*71/}).waitFor() // 67 of the farm, four of these
  expect(trouble).toEqual([])
})

it("counts spears by tapping, and the count moves the plan's spear size", async () => {
  const {page, trouble} = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  await page.locator(".ag-cell").first().waitFor()
  await page.getByRole("button", {name: "Field page"}).tap()
  await page.getByRole("button", {name: "Count spears"}).tap()
  await page.getByLabel("Planting").selectOption("Sand Piece")
  for (const size of [9, 9, 10, 12]) await page.getByRole("button", {name: new RegExp(`^${size} mm`)}).tap()
  await page.getByRole("button", {name: "Take back one"}).tap()
  await expect
    .poll(() => page.locator(".field-sums").innerText())
    .toMatch(/3\s*spears.*9\.3\s*mm mean.*2\s*under 9\.5 mm/s)
  expect(await faultsOn(page)).toEqual([])
  await page.locator(".field-do").tap()
  await expect
    .poll(() => page.locator(".field-added").last().innerText())
    .toMatch(/Added \d\d:\d\d Sand Piece 3 spears, 9\.3 mm/)
  expect(trouble).toEqual([])
})

it("shows the week, takes its plan, and closes a planting to fern with the reason", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("This week")
  expect(await page.locator(".week").innerText()).toMatch(
    /15\.5.t came in from 18 May to 24 May, 104.% of plan/,
  )
  expect(await faultsOn(page)).toEqual([])
  await page.getByRole("button", {name: "Use this week’s plan"}).click()
  await expect
    .poll(() => page.locator(".week").innerText())
    .toContain("No close has moved since the plan of last week.")
  await page.getByRole("button", {name: "Close to fern…"}).first().click()
  await page.getByLabel("because").fill("price fell to 1.95")
  await page.getByRole("button", {name: "Close North Bench to fern"}).click()
  await expect
    .poll(() => page.locator(".to-do li").first().innerText())
    .toMatch(/Closed to fern\s+on 25 May: price fell to 1\.95/)
  await page.getByRole("button", {name: "Undo: North Bench closed to fern"}).waitFor()
  expect(trouble).toEqual([])
})

it.each([390, 1440])("keeps a name of one long word off what stands beside it at %d px", async (width) => {
  const long = "Donaudampfschifffahrtsgesellschaftsfeld"
  const {page, trouble} = await openPlanner({width})
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const open = async (name: string) => {
    if (width < 900) await page.locator("summary", {hasText: "Contents"}).click()
    await sheet.open(name)
  }
  await open("Plantings")
  await sheet.type("Sand Piece", "Planting", long)
  await page.getByRole("button", {name: "Call it so everywhere"}).click()
  await open("This week")
  const edges = await page.locator(".week").evaluate((week, name) => {
    const words = [...week.querySelectorAll("th, .to-do li > b, section p")].filter((one) =>
      one.textContent!.includes(name),
    )
    return words.map((one) => {
      const told = document.createRange()
      told.selectNodeContents(one)
      return Math.round(told.getBoundingClientRect().right - one.getBoundingClientRect().right)
    })
  }, long)
  expect(edges.length).toBeGreaterThan(2)
  expect(Math.max(...edges)).toBeLessThanOrEqual(0)
  // A day of its pickings is in sight beside it.
  const table = page.getByRole("region", {name: /^Picked by day/})
  const row = table.locator("tr", {hasText: long})
  const [all, name, day] = await Promise.all(
    [table, row.locator("th"), row.locator("td").nth(1)].map(async (one) => (await one.boundingBox())!),
  )
  expect(day!.x).toBeGreaterThanOrEqual(name!.x + name!.width - 1)
  expect(day!.x + day!.width).toBeLessThanOrEqual(all!.x + all!.width + 1)
  expect(trouble).toEqual([])
})

it("shows the needs of the weeks, and the blocks of what is short", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Crew and cooler")
  expect(await page.locator(".finding").innerText()).toMatch(
    /^Week 22 is 3 cutters short on its worst day; week \d+ is [\d.]+ kW over/,
  )
  expect(await page.getByRole("img", {name: /Week 22: 19 needed, 16 booked, 3 short\./}).count()).toBe(1)
  expect(await faultsOn(page)).toEqual([])
  expect(trouble).toEqual([])
})

it("tries moving plantings apart, and leads to the date that a move changes", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Crew and cooler")
  await page.getByRole("button", {name: "Try moving plantings apart"}).click()
  const apart = page.locator(".moves-apart")
  await apart.locator("tbody tr").nth(1).waitFor({timeout: 60_000})
  expect(await apart.getByRole("status").innerText()).toMatch(/^On 26 May, .* are picked together\. If /)
  expect(await faultsOn(page)).toEqual([])
  await apart.getByRole("button", {name: /^Long Acre closes 25 May/}).click()
  await page.getByRole("heading", {level: 1, name: "Season plan"}).waitFor()
  expect(await page.getByLabel(/^Chosen cells/).inputValue()).toBe("F2") // the close of Long Acre
  expect(trouble).toEqual([])
})

it("says how long loads waited as soon as one more is logged", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.open("Cold chain")
  await sheet.type(2, "Waited", "5.5")
  expect(await sheet.text(2, "The wait")).toBe("too long")
  await sheet.open("Crew and cooler")
  await expect.poll(() => page.locator(".needs-plate").innerText()).toContain("2 of 6 loads logged waited")
  expect(trouble).toEqual([])
})

it("adds a planting to every sheet by keys alone", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  await sheet.choose("Long Acre", "Planting")
  await page.getByRole("button", {name: "Add a planting"}).focus()
  await page.keyboard.press("Enter")
  await page.locator(".column-panel").getByLabel("Name").fill("Brook End")
  await page.getByLabel("Area, ha").fill("3.5")
  await page.getByLabel("Planted").fill("2201-04-20") // a year too far: the browser keeps the form
  await page.keyboard.press("Enter")
  expect(await page.getByRole("heading", {level: 1}).innerText()).toBe("Season plan")
  await page.getByLabel("Planted").fill("2021-04-20")
  await page.keyboard.press("Enter")
  await page.getByRole("heading", {level: 1, name: "Plantings"}).waitFor()
  await expect.poll(() => sheet.text("Brook End", "Area")).toBe("3.5")
  expect(await sheet.text("Brook End", "Planted")).toBe("20 Apr 2021")
  await sheet.open("Season plan")
  expect(await sheet.text(3, "Planting")).toBe("Brook End")
  expect(trouble).toEqual([])
})

it("moves a close on the calendar by keys and by dragging, in one step each, and gives it back", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const crop = await sheet.text("Well Field", "Crop")
  const row = page.locator(".calendar .target").nth(3)
  await row.focus()
  // Keys that come faster than they can be answered all count.
  await row.evaluate((target) => {
    for (let i = 0; i < 3; i++)
      target.dispatchEvent(new KeyboardEvent("keydown", {key: "ArrowLeft", bubbles: true}))
  })
  await expect.poll(() => sheet.text("Well Field", "Close")).toBe("17 Jun")
  expect(await sheet.text("Well Field", "Held by")).toBe("you")
  expect(await sheet.text("Well Field", "Crop")).not.toBe(crop)
  await page.getByRole("button", {name: "Undo: close of Well Field"}).click()
  await expect.poll(() => sheet.text("Well Field", "Close")).toBe("20 Jun")
  expect(await sheet.text("Well Field", "Crop")).toBe(crop)

  // The end of the bar is taken hold of and drawn a week to the left.
  const box = (await row.boundingBox())!
  const end = await page.evaluate(() => {
    const bars = [...window.document.querySelectorAll(".calendar .season")][3]!.querySelectorAll(
      "rect.to-come",
    )
    return bars[0]!.getBoundingClientRect().right
  })
  await page.mouse.move(end - 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(end - 32, box.y + box.height / 2, {steps: 6})
  await page.mouse.up()
  await expect.poll(() => sheet.text("Well Field", "Held by")).toBe("you")
  await row.focus()
  await page.keyboard.press("Delete")
  await expect.poll(() => sheet.text("Well Field", "Close")).toBe("20 Jun")
  expect(await faultsOn(page)).toEqual([])
  expect(trouble).toEqual([])
})
