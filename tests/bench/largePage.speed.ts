import {expect, it} from "vitest"
import {large, ROWS} from "./largeSheet"
import {openedWith} from "./openedWith"

const EDITS = 40

it(`measures an edit on a sheet of ${ROWS} rows and 60 columns, from the key to the frame, and its scrolling`, async () => {
  const page = await openedWith(large())
  await page.getByRole("heading", {level: 1, name: "Records"}).waitFor({timeout: 60_000})
  await page.waitForTimeout(3000)
  // By the Event Timing API (W3C): the key that keeps what was typed, to the frame that shows it, in steps of 8 ms.
  await page.evaluate(() => {
    const kept: number[] = []
    const long: number[] = []
    Object.assign(window, {kept, long})
    let at = Infinity
    addEventListener("keydown", ({key, timeStamp}) => (at = key === "Enter" ? timeStamp : at), true)
    new PerformanceObserver((entries) => {
      for (const {name, duration, startTime} of entries.getEntries())
        if (name === "keydown" && Math.abs(startTime - at) < 1) kept.push(duration)
    }).observe({type: "event", durationThreshold: 16} as PerformanceObserverInit)
    new PerformanceObserver((entries) => {
      for (const {duration} of entries.getEntries()) long.push(duration)
    }).observe({type: "longtask"})
  })
  await page.locator('.ag-cell[col-id="0"]').nth(1).click()
  for (let i = 0; i < EDITS; i++) {
    await page.keyboard.type(String(100 + i))
    await page.waitForTimeout(300)
    await page.keyboard.press("Enter")
    await page.waitForTimeout(500)
  }
  interface Seen {
    readonly kept: number[]
    readonly long: number[]
  }
  const times = (await page.evaluate(() => (window as unknown as Seen).kept)).toSorted((a, b) => a - b)
  const [middle, late] = [times[Math.floor(times.length / 2)], times[Math.floor(times.length * 0.95)]]
  console.log(
    `${times.length} edits to the frame that shows them: median ${middle} ms, 95th of 100 ${late} ms`,
  )
  await page.evaluate(() => void (window as unknown as Seen).long.splice(0))
  await page.mouse.move(700, 500)
  for (let i = 0; i < 40; i++) {
    await page.mouse.wheel(i % 2 ? 400 : 0, 900)
    await page.waitForTimeout(50)
  }
  const long = await page.evaluate(() => (window as unknown as Seen).long)
  console.log(
    `40 turns of the wheel: ${long.length} tasks over 50 ms, the longest ${Math.max(0, ...long)} ms`,
  )
  expect(times.length).toBeGreaterThan(EDITS / 2)
})
