import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

const farm = `${import.meta.dirname}/../../workbooks/hollow-brook-farm.json`
const markup = "<img src=x onerror=ran=1>"

it("shows the markup that a file holds as the text it is", async () => {
  // Without the policy, so that it is seen whether the planner needs it.
  const {page, trouble} = await openPlanner({browser: {bypassCSP: true}})
  await page.locator(".ag-cell").first().waitFor()
  await page.evaluate(() => Object.assign(window, {showOpenFilePicker: undefined}))
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", {name: "Open a file copy"}).click(),
  ])
  const text = readFileSync(farm, "utf8").replaceAll("Long Acre", markup).replaceAll("Hollow Brook", markup)
  await chooser.setFiles({name: "farm.json", mimeType: "application/json", buffer: Buffer.from(text)})
  await expect.poll(() => page.locator(".book").innerText()).toContain(markup)
  const sheet = sheetOn(page)
  for (const name of ["Season plan", "Reserve", "Plantings", "Root samples", "Named values", "Sources"]) {
    await sheet.open(name)
    for (const panel of ["Find", "Checks", "Help"])
      await page.getByRole("button", {name: panel}).first().click()
  }
  expect(await page.locator("body").innerText()).toContain(markup)
  expect(await page.evaluate(() => [document.images.length, "ran" in window])).toEqual([0, false])
  expect(trouble).toEqual([])
})
