import {AxeBuilder} from "@axe-core/playwright"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

it("keeps a version with its reason, tells what changed since and what moved it, and goes back", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const panel = page.locator(".versions-panel")
  await page.getByRole("button", {name: "Versions"}).click()
  await panel.getByLabel("Name").fill("For the bank")
  await panel.getByLabel("Signed").fill("RT")
  await panel.getByLabel("Reason").fill("first talk")
  await page.keyboard.press("Enter")
  await expect.poll(() => panel.locator(".versions").innerText()).toMatch(/For the bank .*RT: first talk/s)

  await sheet.choose("Well Field", "Open")
  await page.keyboard.type("5 May")
  await page.keyboard.press("Enter")
  await panel.getByRole("button", {name: "Compare with now"}).click()
  const changes = panel.getByRole("region", {name: "What changed since For the bank"})
  await expect
    .poll(() => changes.innerText(), {timeout: 30_000})
    .toMatch(
      /Crop of Well Field: 41\.1.t → .*Open of Well Field.*27 Apr|Crop of Well Field.*Open of Well Field/s,
    )
  await expect
    .poll(() => changes.innerText(), {timeout: 30_000})
    .toMatch(/2026-05-05.*moves .*crop of Well Field −/s)
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])

  await changes.getByRole("checkbox", {name: "Take Open of Well Field as it was"}).check()
  await changes.getByRole("button", {name: "Take 1 as in For the bank"}).click()
  await expect.poll(() => sheet.text("Well Field", "Open")).toBe("27 Apr")
  // What stood before is kept as a version by itself.
  await page.getByRole("button", {name: "Undo: 1 taken from For the bank"}).click()
  await expect.poll(() => sheet.text("Well Field", "Open")).toBe("5 May")
  await expect.poll(() => panel.locator(".versions").innerText()).toContain("before taking from For the bank")
  await panel.locator("li", {hasText: "first talk"}).getByRole("button", {name: "Go back to it"}).click()
  await expect.poll(() => sheet.text("Well Field", "Open")).toBe("27 Apr")
  expect(trouble).toEqual([])
})
