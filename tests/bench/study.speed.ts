import {expect, it} from "vitest"
import {openPlanner} from "../browser/page"
import {sheetOn} from "../browser/sheet"

it("measures the study of 10 000 draws, and how long it keeps the page from answering", async () => {
  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await sheetOn(page).open("Reserve")
  for (let run = 0; run < 4; run++) {
    await page.waitForTimeout(1500)
    await page.evaluate(() => {
      const stretches: number[] = []
      Object.assign(window, {stretches})
      let last = performance.now()
      const {port1, port2} = new MessageChannel()
      port1.addEventListener("message", () => {
        const now = performance.now()
        stretches.push(now - last)
        last = now
        if (stretches.length < 1e6) port2.postMessage(null)
      })
      port1.start()
      port2.postMessage(null)
    })
    const from = Date.now()
    await page.getByRole("button", {name: "Work out how sure"}).click()
    await page.getByRole("button", {name: "Stop"}).waitFor()
    await page.getByRole("button", {name: "Work out how sure"}).waitFor()
    const took = Date.now() - from
    const stretches = await page.evaluate(() =>
      (window as unknown as {stretches: number[]}).stretches.splice(0),
    )
    const longest = stretches.toSorted((a, b) => b - a).slice(0, 3)
    console.log(
      `10 000 draws: ${took} ms; longest stretches without an answer: ${longest.map((ms) => ms.toFixed(0)).join(", ")} ms`,
    )
    expect(took).toBeGreaterThan(0)
  }
})
