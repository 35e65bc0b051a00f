import type {Page} from "playwright-core"
import {writeFile} from "../../src/workbook/file"
import type {Document} from "../../src/workbook/document"
import {openPlanner} from "../browser/page"

/** The planner with a workbook opened from a file copy. */
export async function openedWith(document: Document): Promise<Page> {
  const {page} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  await page.evaluate(() => Object.assign(globalThis, {showOpenFilePicker: undefined}))
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", {name: "Open a file copy"}).click(),
  ])
  const buffer = Buffer.from(writeFile(document))
  await chooser.setFiles({name: "workbook.json", mimeType: "application/json", buffer})
  await page.getByRole("status").getByText("is open.").waitFor({timeout: 60_000})
  return page
}
