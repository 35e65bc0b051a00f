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

// Long Acre is the planting that the sheets of the crown's year show: its weeks and years are worked out anew as well.
it.each(["Well Field", "Long Acre"])(
  "measures the time from the key to the plan's change, for %s",
  async (planting) => {
    const {page} = await openPlanner()
    const sheet = sheetOn(page)
    await page.locator(".ag-cell").first().waitFor()
    const edits: number[] = []
    for (let i = 0; i < 30; i++) {
      await sheet.choose(planting, "Open")
      await page.keyboard.type(i % 2 ? "25 Apr" : "28 Apr")
      const close = await (await sheet.cell(planting, "Weeks")).elementHandle()
      await page.waitForTimeout(300) // a person's pause: what the typing itself set off is done
      edits.push(
        await page.evaluate((close) => {
          const was = close!.textContent
          return new Promise<number>((done) => {
            const from = performance.now()
            const look = () =>
              close!.textContent === was
                ? requestAnimationFrame(look)
                : requestAnimationFrame(() => done(performance.now() - from))
            document
              .querySelector("textarea")!
              .dispatchEvent(new KeyboardEvent("keydown", {key: "Enter", bubbles: true, cancelable: true}))
            requestAnimationFrame(look)
          })
        }, close),
      )
    }
    console.log(line(`${planting}: key to the plan's change on screen, first edits`, edits.slice(0, 5)))
    console.log(
      line(`${planting}: key to the plan's change on screen, once the browser is warm`, edits.slice(15)),
    )
    expect(edits).toHaveLength(30)
  },
)
