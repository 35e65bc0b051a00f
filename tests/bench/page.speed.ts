import {expect, it} from "vitest"
import {openPlanner} from "../browser/page"
import {sheetOn} from "../browser/sheet"

const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!

it("measures the cold start to a readable plan and the time from a key to the plan's change", async () => {
  const starts: number[] = []
  for (let i = 0; i < 5; i++) {
    const {page} = await openPlanner()
    await page.locator(".finding").waitFor()
    starts.push(
      await page.evaluate(
        () =>
          new Promise<number>((done) => {
            const look = () =>
              document.querySelectorAll(".ag-cell").length > 60 && document.querySelector(".cal svg")
                ? done(performance.now())
                : requestAnimationFrame(look)
            look()
          }),
      ),
    )
    await page.close()
  }

  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const edits: number[] = []
  for (let i = 0; i < 11; i++) {
    await sheet.choose("Long Acre", "Open")
    await page.keyboard.type(i % 2 ? "25 Apr" : "28 Apr")
    // From the key that keeps the entry to the frame after the plan's close has changed on screen.
    edits.push(
      await page.evaluate(() => {
        const close = document.querySelector('[row-index="1"] .ag-cell[col-id="5"]')!
        const was = close.textContent
        const field = document.querySelector("textarea")!
        return new Promise<number>((done) => {
          const from = performance.now()
          const look = () =>
            close.textContent === was
              ? requestAnimationFrame(look)
              : requestAnimationFrame(() => done(performance.now() - from))
          field.dispatchEvent(new KeyboardEvent("keydown", {key: "Enter", bubbles: true}))
          look()
        })
      }),
    )
  }
  console.log(
    `cold start to a readable plan: median ${median(starts).toFixed(0)} ms of ${starts.map((t) => t.toFixed(0)).join(" ")}\n` +
      `key to painted plan: median ${median(edits).toFixed(1)} ms of ${edits.map((t) => t.toFixed(0)).join(" ")}`,
  )
  expect(starts).toHaveLength(5)
})
