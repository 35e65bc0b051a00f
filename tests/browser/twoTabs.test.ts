import type {Page} from "playwright-core"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** How many states of workbooks the device keeps. */
const statesKept = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<number>((found) => {
        const opened = indexedDB.open("fernledger")
        opened.addEventListener("success", () => {
          const {result} = opened
          const count = result.transaction("states").objectStore("states").count()
          count.addEventListener("success", () => {
            result.close()
            found(count.result)
          })
        })
      }),
  )

it("lets one tab save a workbook and tells the other so, which takes over what nobody changed", async () => {
  const {page: first, trouble} = await openPlanner()
  await first.locator(".ag-cell").first().waitFor()
  const second = await first.context().newPage()
  await second.goto(first.url())
  await second.getByText(/^Not saved: another tab shows this workbook and saves it/).waitFor()
  await second.locator(".ag-cell").first().waitFor()
  await sheetOn(second).type("Well Field", "Open", "10 May")
  await second.getByText(/^Not saved: another tab/).waitFor()
  await first.close()
  await second.getByText(/^Saved on this device/).waitFor()

  const third = await second.context().newPage()
  await third.goto(second.url())
  await third.getByText(/^Not saved: another tab shows/).waitFor()
  await third.locator(".ag-cell").first().waitFor()
  await sheetOn(second).type("Well Field", "Open", "12 May")
  await expect.poll(() => statesKept(third)).toBe(2)
  await second.close()
  await third.getByText(/^Not saved: another tab has changed this workbook/).waitFor()
  await sheetOn(third).type("Well Field", "Open", "14 May")
  await third.reload()
  await third.locator(".ag-cell").first().waitFor()
  expect(await sheetOn(third).text("Well Field", "Open")).toBe("12 May")
  expect(trouble).toEqual([])
})
