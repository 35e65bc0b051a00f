import type {Page} from "playwright-core"
import {expect, it} from "vitest"
import {openPlanner} from "../browser/page"
import {sheetOn} from "../browser/sheet"

const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!
const line = (what: string, times: readonly number[]) =>
  `${what}: median ${median(times).toFixed(0)} ms of ${times.map((time) => time.toFixed(0)).join(" ")}`

/** When the frame after something is on screen begins, ms since the page was asked for. */
const shown = (page: Page, selector: string, atLeast = 1) =>
  page.evaluate(
    ([selector, atLeast]) =>
      new Promise<number>((done) => {
        const look = () =>
          document.querySelectorAll(selector).length >= atLeast
            ? requestAnimationFrame(() => done(performance.now()))
            : requestAnimationFrame(look)
        look()
      }),
    [selector, atLeast] as const,
  )

it("measures the cold start to a readable plan and to the sheet that can be edited", async () => {
  const readable: number[] = []
  const editable: number[] = []
  for (let i = 0; i < 5; i++) {
    const {page} = await openPlanner()
    readable.push(await shown(page, ".cal svg"))
    editable.push(await shown(page, ".ag-cell", 60))
    await page.close()
  }
  console.log(line("cold start to a readable plan", readable))
  console.log(line("cold start to a sheet that can be edited", editable))
  expect(readable).toHaveLength(5)
})

interface Drawn {
  readonly drawn: [number, number][]
}

// Long Acre is the planting that the sheets of the crown's year show: its weeks and years are worked out anew as well.
it.each(["Well Field", "Long Acre"])(
  "measures the time from the key to the drawing of the changed plan, for %s",
  async (planting) => {
    const {page} = await openPlanner()
    const sheet = sheetOn(page)
    const worked: number[] = []
    const drawn: number[] = []
    await page.locator(".ag-cell").first().waitFor()
    // By the Event Timing API (W3C): from the key to the frame that shows what it did, in steps of 8 ms. An empty page
    // with one input takes 16 to 24 ms by it, since a frame begins every 16.7 ms.
    await page.evaluate(() => {
      const drawn: [number, number][] = []
      Object.assign(window, {drawn})
      new PerformanceObserver((entries) => {
        for (const {
          name,
          startTime,
          processingEnd,
          duration,
        } of entries.getEntries() as PerformanceEventTiming[])
          if (name === "keydown") drawn.push([processingEnd - startTime, duration])
      }).observe({type: "event", durationThreshold: 16} as PerformanceObserverInit)
    })
    const weeks = await sheet.cell(planting, "Weeks")
    for (let i = 0; i < 30; i++) {
      await sheet.choose(planting, "Open")
      await page.keyboard.type(i % 2 ? "25 Apr" : "28 Apr")
      await page.waitForTimeout(300) // a person's pause: what the typing itself set off is done
      const was = await weeks.textContent()
      await page.evaluate(() => void (window as unknown as Drawn).drawn.splice(0))
      await page.keyboard.press("Enter")
      await page.waitForTimeout(300)
      expect(await weeks.textContent()).not.toBe(was)
      const [entry] = await page.evaluate(() => (window as unknown as Drawn).drawn)
      worked.push(entry![0])
      drawn.push(entry![1])
    }
    console.log(line(`${planting}: key to the frame with the changed plan, first edits`, drawn.slice(0, 5)))
    console.log(line(`${planting}: the same, once the browser is warm`, drawn.slice(15)))
    console.log(line(`${planting}: of it, our own work before the drawing`, worked.slice(15)))
    expect(drawn).toHaveLength(30)
  },
)
