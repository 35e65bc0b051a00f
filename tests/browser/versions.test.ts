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
  await expect
    .poll(() => panel.locator(".versions").innerText())
    .toMatch(/For the bank \d+ \w{3} \d{4}, \d\d:\d\d, RT: first talk/)

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
  // The picture of it: the keys reach the bar and go on to the cell that was changed.
  const bars = changes.getByRole("group", {name: /^What moved Crop of Well Field, 1 mark/})
  await bars.focus()
  await page.keyboard.press("ArrowRight")
  expect(await bars.locator("[aria-live]").innerText()).toMatch(
    /^Open of Well Field, 2026-04-27 to 2026-05-05: −\d\.\d\st\. Enter goes/,
  )
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

it("offers to keep the state before a named value was changed, for comparing with it", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const offer = page.getByRole("button", {name: "Keep the state before as a version"})
  await sheet.choose("Well Field", "Open")
  await page.keyboard.type("28 Apr")
  await page.keyboard.press("Enter")
  await page.getByRole("button", {name: /^Undo: open/}).waitFor()
  expect(await offer.isVisible()).toBe(false) // a date of one planting is no such value
  await sheet.open("Named values")
  await sheet.type("Spear_limit", "Value", "9")
  await offer.click()
  const panel = page.locator(".versions-panel")
  await panel.locator("li", {hasText: "before: value of Spear_limit"}).waitFor()
  expect(await sheet.said()).toBe("The state before is kept as the version “before: value of Spear_limit”.")
  expect(await offer.isVisible()).toBe(false)
  await panel.getByRole("button", {name: "Compare with now"}).click()
  await expect
    .poll(() => panel.getByRole("region", {name: /^What changed since/}).innerText())
    .toMatch(/Value of Spear_limit, Named values: 9\.5\s.*\s9\smm, source: stopSign/s)
  expect(trouble).toEqual([])
})

it("lists what another copy holds, tells samples of one planting apart, and puts its notes beside one's own", async () => {
  const {page, trouble} = await openPlanner()
  await page.evaluate(() =>
    Object.assign(window, {showOpenFilePicker: undefined, showSaveFilePicker: undefined}),
  )
  await page.locator(".ag-cell").first().waitFor()
  const sheet = sheetOn(page)
  const write = async (text: string, by: string) => {
    await page.keyboard.press("Shift+F2")
    const note = page.locator(".note-panel")
    await note.locator("textarea").fill(text)
    await note.getByLabel("Signed").fill(by)
    await note.getByRole("button", {name: "Keep the note"}).click()
    await note.getByRole("button", {name: "Put away"}).click()
  }
  // Theirs: two samples, a note on one and on a close.
  await sheet.choose("Sand Piece", "Close")
  await write("look at the size on 1 June", "Grower")
  await sheet.open("Root samples")
  await sheet.choose(16, "Sugar")
  await write("dug twice", "Grower")
  await sheet.type(15, "Sugar", "372")
  await sheet.type(16, "Sugar", "450")
  const [copy] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", {name: "Keep a file copy"}).click(),
  ])
  const theirs = Buffer.concat((await (await copy.createReadStream()).toArray()) as Buffer[])
  // Mine: none of that, but a note on the same close.
  for (let acts = 0; acts < 4; acts++) await page.getByRole("button", {name: /^Undo:/}).click()
  await sheet.open("Season plan")
  await sheet.choose("Sand Piece", "Close")
  await write("shorter after rust", "Agronomist")
  await page.getByRole("button", {name: "Versions"}).click()
  const panel = page.locator(".versions-panel")
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    panel.getByRole("button", {name: "Compare with a file copy"}).click(),
  ])
  await chooser.setFiles({name: "theirs.json", mimeType: "application/json", buffer: theirs})
  const region = panel.getByRole("region", {name: "What changed since theirs.json"})
  await region.getByRole("checkbox", {name: "Take Sugar of Long Acre in row 15 as it was"}).waitFor()
  await region.getByRole("checkbox", {name: "Take Sugar of Long Acre in row 16 as it was"}).waitFor()
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  await region.getByRole("button", {name: "Bring in 2 notes"}).click()
  await region.getByText("Notes there that are not here").waitFor({state: "detached"})
  await expect.poll(() => panel.locator(".versions").innerText()).toContain("before taking from theirs.json")
  await page.keyboard.press("Escape")
  await sheet.choose("Sand Piece", "Close")
  await page.keyboard.press("Shift+F2")
  expect(await page.locator(".note-panel textarea").inputValue()).toBe(
    "shorter after rust\nGrower: look at the size on 1 June",
  )
  await page.locator(".notes", {hasText: "dug twice"}).waitFor()
  await page.getByRole("button", {name: "Undo: 2 notes from theirs.json"}).waitFor()
  expect(trouble).toEqual([])
})

/** The planner without the browser's own dialogs, which a test cannot answer: file copies come as downloads. */
async function openWithCopies() {
  const {page, trouble} = await openPlanner()
  await page.evaluate(() =>
    Object.assign(window, {showOpenFilePicker: undefined, showSaveFilePicker: undefined}),
  )
  await page.locator(".ag-cell").first().waitFor()
  const keepCopy = async () => {
    const [copy] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", {name: "Keep a file copy"}).click(),
    ])
    return Buffer.concat((await (await copy.createReadStream()).toArray()) as Buffer[])
  }
  return {page, trouble, sheet: sheetOn(page), keepCopy}
}

it("tells what another copy changed from what was changed here, and takes that alone", async () => {
  const {page, trouble, sheet, keepCopy} = await openWithCopies()
  await keepCopy()
  await page.waitForFunction(() => document.body.innerText.includes("A copy is kept as"))
  // Theirs: samples 15 and 16. Mine: samples 16 and 17.
  await sheet.open("Root samples")
  await sheet.type(15, "Sugar", "372")
  await sheet.type(16, "Sugar", "450")
  const theirs = await keepCopy()
  for (let acts = 0; acts < 2; acts++) await page.getByRole("button", {name: /^Undo:/}).click()
  await sheet.type(16, "Sugar", "440")
  await sheet.type(17, "Sugar", "405")
  await page.getByRole("button", {name: "Versions"}).click()
  const panel = page.locator(".versions-panel")
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    panel.getByRole("button", {name: "Compare with a file copy"}).click(),
  ])
  await chooser.setFiles({name: "theirs.json", mimeType: "application/json", buffer: theirs})
  const region = panel.getByRole("region", {name: "What changed since theirs.json"})
  await region.getByText("; changed there alone.").waitFor()
  expect(await region.locator("li", {hasText: "changed here alone"}).getByRole("checkbox").count()).toBe(0)
  const text = (await region.innerText()).replaceAll(/\s+/g, " ")
  expect(text).toMatch(/Kept .* by whom is not known\. Both began from file copy hollow-brook-farm-/)
  expect(text).toMatch(
    /450 mg\/g .* 440 mg\/g; changed on both sides: there until .*, by whom is not known; here until now, by whom is not known; both began from 441 mg\/g/,
  )
  await region.getByRole("button", {name: "Take all 1 changed there alone"}).click()
  await expect.poll(() => sheet.text(15, "Sugar")).toBe("372")
  expect(await sheet.text(16, "Sugar")).toBe("440")
  expect(await sheet.text(17, "Sugar")).toBe("405")
  expect(trouble).toEqual([])
})

it("lists how a file copy that is opened differs from what was open, which stays as a version", async () => {
  const {page, trouble, sheet, keepCopy} = await openWithCopies()
  const openCopy = async (buffer: Buffer) => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", {name: "Open a file copy"}).click(),
    ])
    await chooser.setFiles({name: "theirs.json", mimeType: "application/json", buffer})
  }
  await keepCopy()
  await page.waitForFunction(() => document.body.innerText.includes("A copy is kept as"))
  // Theirs: samples 15 and 16. Mine: samples 16 and 17, and a note.
  await sheet.open("Root samples")
  await sheet.type(15, "Sugar", "372")
  await sheet.type(16, "Sugar", "450")
  const theirs = await keepCopy()
  const panel = page.locator(".versions-panel")
  await openCopy(theirs)
  await expect.poll(sheet.said).toMatch(/is open\.$/)
  expect(await panel.count()).toBe(0) // the same as here
  for (let acts = 0; acts < 3; acts++) await page.getByRole("button", {name: /^Undo:/}).click()
  await sheet.open("Root samples")
  await sheet.type(16, "Sugar", "440")
  await sheet.type(17, "Sugar", "405")
  await sheet.choose(17, "Sugar")
  await page.keyboard.press("Shift+F2")
  await page.getByLabel("What to know").fill("dug twice")
  await page.getByRole("button", {name: "Keep the note"}).click()

  await openCopy(theirs)
  await expect.poll(sheet.said).toContain("What was open here differs from it, and is kept as a version.")
  await sheet.open("Root samples")
  expect(await sheet.text(16, "Sugar")).toBe("450")
  expect(await panel.locator(".versions li").first().innerText()).toMatch(/before opening theirs\.json/)
  const region = panel.getByRole("region", {name: "What changed since what was open here"})
  await region.getByText("; changed in what was open alone.").waitFor()
  expect((await new AxeBuilder({page}).analyze()).violations.map(({id}) => id)).toEqual([])
  const text = (await region.innerText()).replaceAll(/\s+/g, " ")
  expect(text).toMatch(
    /What was open here was changed \d+ \w{3} \d{4}, \d\d:\d\d\. theirs\.json: Kept \d+ \w{3} \d{4}, \d\d:\d\d, by/,
  )
  expect(text).toMatch(/440 mg\/g .* 450 mg\/g; changed on both sides: in what was open until/)
  expect(text).toContain("Notes in what was open that are not in theirs.json")
  await region.getByRole("button", {name: "Take all 1 changed in what was open alone"}).click()
  await expect.poll(() => sheet.text(17, "Sugar")).toBe("405")
  expect(await sheet.text(15, "Sugar")).toBe("372")
  await region.getByRole("button", {name: "Bring in the note"}).click()
  await panel.getByRole("button", {name: "Go back to what was open here"}).click()
  await expect.poll(sheet.said).toMatch(/is open\.$/)
  await sheet.open("Root samples")
  await expect.poll(() => sheet.text(16, "Sugar")).toBe("440")
  expect(await sheet.text(15, "Sugar")).not.toBe("372")
  expect(await region.count()).toBe(0)
  expect(trouble).toEqual([])
})
