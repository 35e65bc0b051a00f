import {expect, it} from "vitest"
import {writeFile} from "../../src/workbook/file"
import {openPlanner} from "../browser/page"
import {large, ROWS} from "./largeSheet"

const EDITS = 40

it(`measures an edit on a sheet of ${ROWS} rows and 60 columns, from the key to the frame, and its scrolling`, async () => {
  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await page.evaluate(() => Object.assign(globalThis, {showOpenFilePicker: undefined}))
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", {name: "Open a file copy"}).click(),
  ])
  const buffer = Buffer.from(writeFile(large()))
  await chooser.setFiles({name: "large.json", mimeType: "application/json", buffer})
  await page.getByRole("heading", {level: 1, name: "Records"}).waitFor({timeout: 60_000})
  await page.waitForTimeout(3000)
  await page.evaluate(() => {
    const drawn: number[] = []
    const long: number[] = []
    Object.assign(window, {drawn, long})
    new PerformanceObserver((entries) => {
      for (const {name, duration} of entries.getEntries()) if (name === "keydown") drawn.push(duration)
    }).observe({type: "event", durationThreshold: 16} as PerformanceObserverInit)
    new PerformanceObserver((entries) => {
      for (const {duration} of entries.getEntries()) long.push(duration)
    }).observe({type: "longtask"})
  })
  const seen = () => window as unknown as {drawn: number[]; long: number[]}
  await page.locator('.ag-cell[col-id="0"]').nth(1).click()
  const times: number[] = []
  for (let i = 0; i < EDITS; i++) {
    await page.keyboard.type(String(100 + i))
    await page.waitForTimeout(200)
    await page.evaluate(`(${seen.toString()})().drawn.splice(0)`)
    await page.keyboard.press("Enter")
    await page.waitForTimeout(400)
    times.push(((await page.evaluate(`(${seen.toString()})().drawn[0]`)) as number | undefined) ?? 16)
  }
  const sorted = times.toSorted((a, b) => a - b)
  console.log(
    `edit to frame: median ${sorted[EDITS / 2]} ms, 95th of 100 ${sorted[Math.floor(EDITS * 0.95)]} ms (steps of 8 ms)`,
  )
  await page.evaluate(`(${seen.toString()})().long.splice(0)`)
  await page.mouse.move(700, 500)
  for (let i = 0; i < 40; i++) {
    await page.mouse.wheel(i % 2 ? 400 : 0, 900)
    await page.waitForTimeout(50)
  }
  const long = (await page.evaluate(`(${seen.toString()})().long`)) as number[]
  console.log(
    `scrolling by 40 turns of the wheel: ${long.length} tasks over 50 ms, the longest ${Math.max(0, ...long)} ms`,
  )
  expect(times).toHaveLength(EDITS)
})
