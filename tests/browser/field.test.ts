import {AxeBuilder} from "@axe-core/playwright"
import type {Page} from "playwright-core"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** Without the windows of the system, which no test can press in. */
const withoutPickers = (page: Page) =>
  page.evaluate(() => {
    Object.assign(globalThis, {showSaveFilePicker: undefined, showOpenFilePicker: undefined})
  })

async function onPhone() {
  const opened = await openPlanner({width: 390, height: 844, browser: {hasTouch: true}})
  const {page} = opened
  await page.locator(".ag-cell").first().waitFor()
  await withoutPickers(page)
  await page.getByRole("button", {name: "Field page"}).tap()
  return opened
}

async function pick(page: Page, planting: string, kg: string) {
  await page.getByLabel("Planting").selectOption(planting)
  for (const key of kg) await page.getByRole("button", {name: key, exact: true}).tap()
  await page.locator(".field-do").tap()
  // Run after the close of the plan, the day of the test is asked about.
  const sure = page.getByRole("button", {name: "Add it all the same"})
  if (await sure.isVisible()) await sure.tap()
}

async function sent(page: Page) {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", {name: /^Send /}).tap(),
  ])
  const pieces = await (await download.createReadStream()).toArray()
  return {name: download.suggestedFilename(), buffer: Buffer.concat(pieces as Buffer[])}
}

it("takes what a phone entered without a network to the desk, once however often, and tells who entered it", async () => {
  const phone = await onPhone()
  await phone.page.context().setOffline(true)
  await phone.page.locator("summary", {hasText: "To another device"}).tap()
  expect(await phone.page.getByRole("button", {name: "Nothing to send yet"}).isDisabled()).toBe(true)
  await phone.page.getByLabel("This device is called").fill("Red phone")
  await pick(phone.page, "Long Acre", "405")
  await pick(phone.page, "Sand Piece", "1160")
  await phone.page.getByRole("button", {name: "Take back", exact: true}).tap()
  await pick(phone.page, "Sand Piece", "1150")
  expect((await new AxeBuilder({page: phone.page}).analyze()).violations.map(({id}) => id)).toEqual([])
  const file = await sent(phone.page)
  await expect.poll(() => phone.page.locator(".field-travel").innerText()).toContain(`Sent as ${file.name}.`)
  expect(file.name).toMatch(/^hollow-brook-farm-field-rows-\d{4}-\d\d-\d\d\.csv$/)

  const desk = await openPlanner()
  const sheet = sheetOn(desk.page)
  await withoutPickers(desk.page)
  await desk.page.locator(".ag-cell").first().waitFor()
  const panel = desk.page.locator(".files-panel")
  const read = async () => {
    await desk.page.getByRole("button", {name: "Bring in…"}).click()
    const [chooser] = await Promise.all([
      desk.page.waitForEvent("filechooser"),
      desk.page.getByRole("button", {name: "Choose a file…"}).click(),
    ])
    await chooser.setFiles({...file, mimeType: "text/csv"})
  }
  await read()
  await expect.poll(() => panel.innerText()).toContain("2 rows would be added.")
  expect(await panel.innerText()).toMatch(/Sand Piece, .*: 1.?150 kg; Red phone/)
  expect((await new AxeBuilder({page: desk.page}).analyze()).violations.map(({id}) => id)).toEqual([])
  await desk.page.getByRole("button", {name: "Bring in what the field has"}).click()
  await expect.poll(sheet.said).toMatch(/^2 field rows of hollow-brook-farm-field-rows-.*\.csv brought in\./)
  await read()
  await expect
    .poll(() => panel.innerText())
    .toContain("0 rows would be added, 4 acts of the field are known already.")
  expect(await desk.page.getByRole("button", {name: "Bring in what the field has"}).isDisabled()).toBe(true)
  await panel.getByRole("button", {name: "Put away"}).click()

  await sheet.open("Pickings")
  // 67 of the farm and two of the phone, the one taken back not among them.
  await desk.page
    .getByRole("navigation", {name: "Contents"})
    .getByRole("button", {name: /^Pickings\s*69/})
    .waitFor()
  await desk.page.locator(".ag-cell").first().click()
  await desk.page.keyboard.press("Control+End")
  await desk.page.keyboard.press("Home")
  await expect
    .poll(() => sheet.whereFrom().innerText())
    .toMatch(/Entered in the field on Red phone, .* at \d+:\d\d\./)
  expect([...phone.trouble, ...desk.trouble]).toEqual([])
})

it("has the button that keeps a count of spears in view on a phone, without scrolling", async () => {
  const {page, trouble} = await onPhone()
  await page.getByRole("button", {name: "Count spears"}).tap()
  const keep = (await page.getByRole("button", {name: "Keep this count"}).boundingBox())!
  expect(await page.evaluate(() => scrollY)).toBe(0)
  expect(keep.y + keep.height).toBeLessThanOrEqual(844)
  await page.getByRole("button", {name: /^7 mm/}).tap()
  await page.getByRole("button", {name: "Keep this count"}).tap()
  await expect.poll(() => page.getByText(/Added .* 1 spears/).count()).toBe(1)
  expect(trouble).toEqual([])
})

it("shows the day of the next morning on a page that was left open in the evening, and keeps a day that was chosen", async () => {
  const {page} = await openPlanner({width: 390, height: 844})
  await page.clock.install({time: new Date("2026-05-25T20:30:00")})
  await page.reload()
  await page.getByRole("button", {name: "Field page"}).click()
  const day = page.getByLabel("Day")
  await expect.poll(() => day.inputValue()).toBe("2026-05-25")
  await page.clock.fastForward("07:00:00")
  await expect.poll(() => day.inputValue()).toBe("2026-05-26")
  await day.selectOption("2026-05-24")
  await page.clock.fastForward("24:00:00")
  await expect.poll(() => day.locator("option").first().innerText()).toMatch(/^today, 27/)
  expect(await day.inputValue()).toBe("2026-05-24")
})

it("comes back to the field page, with what was entered, when the browser loads it anew", async () => {
  const {page, trouble} = await onPhone()
  await pick(page, "Long Acre", "318")
  await expect.poll(() => page.locator(".field-saved").innerText()).toMatch(/^Saved on this device/)
  await page.reload()
  await page.getByRole("heading", {level: 1, name: "Add picking"}).waitFor()
  await page.getByLabel("Planting").selectOption("Long Acre")
  expect(await page.locator(".field-amount").innerText()).toMatch(/last 318.kg/)
  // It can be taken back still.
  await expect
    .poll(() => page.locator(".field-added").innerText())
    .toMatch(/^Added \d\d:\d\d Long Acre 318 kg/)
  await page.getByRole("button", {name: "Take back", exact: true}).tap()
  await expect.poll(() => page.locator(".field-added").innerText()).toMatch(/^Taken back\./)
  expect(await page.locator(".field-amount").innerText()).not.toMatch(/last 318.kg/)
  // A count in hand too, with the way back from a wrong tap.
  await page.getByRole("button", {name: "Count spears"}).tap()
  for (const size of [9, 11, 14]) await page.getByRole("button", {name: new RegExp(`^${size} mm`)}).tap()
  await page.reload()
  await page.getByRole("button", {name: "Count spears"}).tap()
  await page.getByRole("button", {name: "Take back one"}).tap()
  await expect
    .poll(() => page.locator(".field-sums").innerText())
    .toMatch(/2\s*spears.*10\.0\s*mm mean.*1\s*under 9\.5 mm/s)
  await page.getByRole("button", {name: "Back", exact: true}).tap()
  await page.locator(".ag-cell").first().waitFor()
  await page.reload()
  await page.getByRole("heading", {level: 1, name: "Season plan"}).waitFor()
  await page.locator(".ag-cell").first().waitFor()
  expect(trouble).toEqual([])
})
