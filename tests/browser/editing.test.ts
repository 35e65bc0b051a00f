import {AxeBuilder} from "@axe-core/playwright"
import {describe, expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

async function openPlan(view: Parameters<typeof openPlanner>[0] = {}) {
  const {page, trouble} = await openPlanner(view)
  await page.locator(".ag-cell").first().waitFor()
  return {page, trouble, sheet: sheetOn(page)}
}

const focused = (page: Awaited<ReturnType<typeof openPlan>>["page"]) =>
  page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.tagName)

describe("typing", () => {
  it("completes names with their units and shows the argument under the caret", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.choose("Long Acre", "Open")
    await page.keyboard.type("=SPEAR.P")
    const list = page.getByRole("listbox")
    expect(await list.getByRole("option").allInnerTexts()).toEqual([
      expect.stringMatching(/SPEAR\.PICK_GAP\s+days/),
    ])
    await page.keyboard.press("Tab")
    await page.keyboard.type("C2,")
    expect(await page.getByRole("textbox", {name: /^Content of/}).inputValue()).toBe("=SPEAR.PICK_GAP(C2,")
    expect(await page.locator(".hint").innerText()).toContain("values: Crop values")
    expect(await (await sheet.cell("Long Acre", "Area")).getAttribute("data-ref")).toBe("1")
    await page.keyboard.press("Escape")
    expect(await sheet.text("Long Acre", "Open")).toBe("25 Apr")
    expect(trouble).toEqual([])
  })

  it("keeps a text that cannot stand in the cell in the line, with a sentence", async () => {
    const {page, sheet} = await openPlan()
    await sheet.choose("Long Acre", "Open")
    await page.keyboard.type("31/31")
    await page.keyboard.press("Enter")
    expect(await page.locator(".hint").innerText()).toContain("“31/31” is not a date")
    expect(await page.getByRole("textbox", {name: /^Content of/}).inputValue()).toBe("31/31")
    expect(await page.getByRole("textbox", {name: /^Content of/}).getAttribute("aria-invalid")).toBe("true")
    // A press on the sheet does not take the keyboard away from what is to be mended; Esc drops it.
    for (const [row, heading] of [
      ["Long Acre", "Open"],
      ["Sand Piece", "Area"],
    ] as const) {
      await sheet.choose(row, heading)
      expect(await focused(page)).toMatch(/^Content of E2, Open/)
    }
    await page.keyboard.press("Escape")
    expect(await sheet.text("Long Acre", "Open")).toBe("25 Apr")
    expect(await focused(page)).toMatch(/^25 Apr 2026\. Open of Long Acre/)
  })

  it("asks once which day a date is, and opens the list of words of a cell", async () => {
    const {page, trouble, sheet} = await openPlan()
    const {keyboard} = page
    await sheet.open("Losses")
    await sheet.choose(1, "Night")
    await keyboard.type("3/5")
    await keyboard.press("Enter")
    await page.getByRole("alertdialog", {name: /Is “3\/5” 3 May 2026 or 5 Mar 2026\?/}).waitFor()
    await page.getByRole("button", {name: "5 Mar 2026"}).click()
    await expect.poll(() => sheet.text(1, "Night")).toBe("5 Mar 2026")
    await keyboard.type("4/5") // the keyboard is on the cell below
    await keyboard.press("Enter")
    await expect.poll(() => sheet.text(2, "Night")).toBe("5 Apr 2026")

    await sheet.choose(2, "Planting")
    await keyboard.press("Alt+ArrowDown")
    const list = page.getByRole("listbox", {name: "Words for this cell"})
    const words = await list.getByRole("option").allInnerTexts()
    expect(words).toContain("Sand Piece")
    await keyboard.press("Tab") // no word is marked yet: the cell stays as it was
    expect(await sheet.text(2, "Planting")).toBe("North Bench")
    await keyboard.press("ArrowLeft")
    await keyboard.press("Alt+ArrowDown")
    for (let i = 0; i <= words.indexOf("Sand Piece"); i++) await keyboard.press("ArrowDown")
    const marked = list.getByRole("option", {selected: true})
    const line = page.getByRole("textbox", {name: /^Content of/})
    expect(await line.getAttribute("aria-activedescendant")).toBe(await marked.getAttribute("id"))
    const {violations} = await new AxeBuilder({page}).include(".foot").analyze()
    expect(violations.map(({id}) => id)).toEqual([])
    await keyboard.press("Enter")
    await expect.poll(() => sheet.text(2, "Planting")).toBe("Sand Piece")
    await keyboard.press("ArrowDown") // the keyboard is on the sheet again
    expect(await page.locator(".content .at").inputValue()).toBe("A3")
    expect(trouble).toEqual([])
  })

  it("asks before a worked-out cell is typed over, marks it, and puts the formula back", async () => {
    const {page, sheet} = await openPlan()
    await sheet.choose("Well Field", "Close")
    await page.keyboard.type("17 Jun")
    await page.keyboard.press("Enter")
    const dialog = page.getByRole("alertdialog")
    expect(await dialog.innerText()).toContain("Close of Well Field is worked out. Type over it?")
    await page.keyboard.press("Escape")
    expect(await sheet.text("Well Field", "Close")).toBe("20 Jun")
    await sheet.type("Well Field", "Close", "17 Jun")
    expect(await sheet.text("Well Field", "Held by")).toBe("you")
    expect(await (await sheet.cell("Well Field", "Close")).getAttribute("data-kind")).toBe("typed over")
    await sheet.choose("Well Field", "Close")
    await page.getByRole("button", {name: "Put formula back"}).click()
    expect(await sheet.text("Well Field", "Close")).toBe("20 Jun")
  })

  it("undoes and redoes every act by name", async () => {
    const {page, sheet} = await openPlan()
    await sheet.type("Long Acre", "Open", "28 Apr")
    await page.getByRole("button", {name: "Undo: open of Long Acre"}).click()
    expect(await sheet.text("Long Acre", "Open")).toBe("25 Apr")
    await page.getByRole("button", {name: "Redo: open of Long Acre"}).click()
    expect(await sheet.text("Long Acre", "Open")).toBe("28 Apr")
  })
})

describe("typing ahead of the drawing", () => {
  /** A page so slow that keys come before a sheet is drawn, as they do under quick hands. */
  async function openSlow() {
    const opened = await openPlan({browser: {permissions: ["clipboard-read", "clipboard-write"]}})
    const {page} = opened
    const devTools = await page.context().newCDPSession(page)
    await devTools.send("Emulation.setCPUThrottlingRate", {rate: 8})
    const box = page.locator(".content .at")
    const press = (keys: readonly string[]) => Promise.all(keys.map((key) => page.keyboard.press(key)))
    /** Goes to a place by its address, with more keys right behind. */
    const goTo = async (place: string, ...keys: string[]) => {
      await box.focus()
      await page.keyboard.type(place)
      await press(["Enter", ...keys])
    }
    return {...opened, box, press, goTo}
  }

  it("puts all that is typed while a sheet opens into its cells", async () => {
    const {page, trouble, sheet, box, goTo} = await openSlow()
    await goTo("Prices!B2", ..."3.86", "Enter", ..."3.27", "Enter", "ArrowRight")
    await expect.poll(() => box.inputValue(), {timeout: 30_000}).toBe("C4")
    expect(await sheet.text(2, "Price")).toBe("3.86")
    expect(await sheet.text(3, "Price")).toBe("3.27")
    await expect.poll(() => focused(page)).toMatch(/By sizes of 4\./)
    expect(trouble).toEqual([])
  })

  it("pastes on the sheet that opens", async () => {
    const {trouble, sheet, goTo} = await openSlow()
    await goTo("'Spear size'!C1", "ArrowDown", "Control+c")
    await expect.poll(sheet.said, {timeout: 30_000}).toBe("C2 copied.")
    await goTo("Losses!D2", "Control+v")
    await expect.poll(() => sheet.text(2, "What it was"), {timeout: 30_000}).toBe("12.4")
    expect(trouble).toEqual([])
  })

  it("hands the keys to the sheet when Enter has gone on to a new row", async () => {
    const {page, trouble, box, goTo, press} = await openSlow()
    await goTo("Prices!A99") // the farm has ten weeks: the next row is the eleventh
    await expect.poll(() => focused(page), {timeout: 30_000}).toMatch(/next row to fill$/)
    await press([..."11", "Enter", "ArrowUp", "Shift+F10"])
    await page.locator(".acts-list").waitFor({timeout: 30_000})
    expect(await box.inputValue()).toBe("A11")
    expect(trouble).toEqual([])
  })

  it("stays on the sheet after the last row of the plan", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.type("Top Corner", "Open", "28 Apr")
    await expect.poll(() => focused(page)).toMatch(/^28 Apr 2026\. Open of Top Corner/)
    expect(trouble).toEqual([])
  })
})

describe("the keyboard", () => {
  it("moves, edits and leaves the sheet without a mouse", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.choose("North Bench", "Planting")
    await page.keyboard.press("ArrowDown")
    await page.keyboard.press("End")
    expect(await focused(page)).toMatch(/thin spears of Long Acre/)
    await page.keyboard.press("Home")
    expect(await focused(page)).toMatch(/^Long Acre\. Planting/)
    await page.keyboard.press("Control+End")
    expect(await focused(page)).toMatch(/Top Corner/)
    await page.keyboard.press("Control+Home")
    expect(await focused(page)).toMatch(/^North Bench\. Planting/)
    for (let i = 0; i < 4; i++) await page.keyboard.press("Tab")
    expect(await focused(page)).toMatch(/Open of North Bench/)
    await page.keyboard.press("F2")
    expect(await focused(page)).toMatch(/^Content of E1, Open/)
    await page.keyboard.press("Escape")
    expect(await focused(page)).toMatch(/Open of North Bench/)
    await page.keyboard.press("Escape")
    await page.keyboard.press("Tab")
    expect(await focused(page)).toMatch(/^North Bench: .* held by/) // its bar in the calendar
    expect(trouble).toEqual([])
  })

  it.each(["Plantings", "Pickings"])("is given and taken back by %s as by one stop", async (name) => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.open(name)
    await sheet.choose(3, "Planting")
    await page.keyboard.press("ArrowRight")
    const chosen = await focused(page)
    await page.keyboard.press("Escape")
    await page.keyboard.press("Tab")
    expect(await focused(page)).toMatch(/^Chosen cells/)
    await page.keyboard.press("Shift+Tab")
    expect(await focused(page)).toBe(chosen)
    await page.keyboard.press("Escape")
    await page.keyboard.press("Shift+Tab")
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("More acts")
    await page.keyboard.press("Tab")
    expect(await focused(page)).toBe(chosen)
    await page.keyboard.press("Control+Home")
    await page.keyboard.press("Shift+Tab")
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("More acts")
    for (const key of ["Tab", "Control+End", "ArrowDown", "End", "Tab"]) await page.keyboard.press(key)
    expect(await focused(page)).toMatch(/^Chosen cells/)
    expect(trouble).toEqual([])
  })

  it("comes to a row far from those on screen when its address is typed", async () => {
    const {page, trouble, sheet} = await openPlan()
    await sheet.open("Weather by day")
    await page.getByLabel(/^Chosen cells/).fill("B300")
    await page.keyboard.press("Enter")
    await expect.poll(() => focused(page)).toMatch(/of row 300\./)
    await page.keyboard.press("ArrowDown")
    expect(await focused(page)).toMatch(/of row 301\./)
    expect(trouble).toEqual([])
  })

  it("types into the cell that was clicked, however soon the keys follow", async () => {
    const {page, sheet} = await openPlan()
    const cells = [await sheet.cell("Long Acre", "Open"), await sheet.cell("Well Field", "Open")] as const
    const boxes = await Promise.all(cells.map((cell) => cell.boundingBox()))
    for (let i = 0; i < 8; i++) {
      const {x, y, width, height} = boxes[i % 2]!
      const text = `${i + 2} May`
      await page.mouse.click(x + width / 2, y + height / 2)
      await page.keyboard.type(text)
      await page.keyboard.press("Enter")
      expect(await cells[i % 2]!.innerText()).toBe(text)
    }
    expect(await sheet.text("Sand Piece", "Open")).toBe("23 Apr")
    expect(await sheet.text("Home Strip", "Open")).toBe("28 Apr")
  })

  it("takes what a dead key or an input method writes on a cell, from its first letter on", async () => {
    const {page, trouble} = await openPlanner()
    await page.locator(".ag-cell").first().waitFor()
    const sheet = sheetOn(page)
    await sheet.open("Sources")
    const cell = await sheet.cell(1, "Work")
    await cell.click()
    const keys = await page.context().newCDPSession(page)
    const down = (key: string) =>
      keys.send("Input.dispatchKeyEvent", {type: "rawKeyDown", key, windowsVirtualKeyCode: 229})
    await down("Dead")
    await keys.send("Input.imeSetComposition", {text: "´", selectionStart: 1, selectionEnd: 1})
    await keys.send("Input.insertText", {text: "é"})
    await page.keyboard.type("tal")
    await page.keyboard.press("Enter")
    await expect.poll(() => cell.innerText()).toBe("étal")

    // Where nothing is written, the cell stays as it is.
    await cell.click()
    await down("Process")
    const line = page.getByRole("textbox", {name: /^Content of /})
    await expect.poll(() => line.evaluate((one) => one === window.document.activeElement)).toBe(true)
    await page.keyboard.press("Enter")
    await expect.poll(sheet.said).toBe("Unchanged.")
    expect(await cell.innerText()).toBe("étal")
    expect(trouble).toEqual([])
  })

  it("chooses a row in the calendar and the sheet follows", async () => {
    const {page, sheet} = await openPlan()
    const bar = page.locator(".cal [aria-label^='Sand Piece']")
    await bar.focus()
    await page.keyboard.press("Enter")
    expect(await (await sheet.cell("Sand Piece", "Close")).getAttribute("data-chosen")).toBe("row")
    await sheet.choose("Well Field", "Age")
    const chosen = page.locator(".cal [aria-label^='Well Field']")
    expect(
      await chosen.evaluate((one) => one.getAttribute("aria-pressed") ?? one.getAttribute("aria-current")),
    ).toBe("true")
  })
})

describe("keys beside the sheet", () => {
  it("undo and find from a button, and leave a field of words alone", async () => {
    const {page, sheet} = await openPlan()
    const was = await sheet.text("Long Acre", "Open")
    await sheet.type("Long Acre", "Open", "29 Apr")
    await sheet.type("Long Acre", "Open", "30 Apr")
    await page.getByRole("button", {name: /^Undo/}).click()
    expect(await sheet.text("Long Acre", "Open")).toBe("29 Apr")
    await page.keyboard.press("Control+z")
    await expect.poll(() => sheet.text("Long Acre", "Open")).toBe(was)
    await page.getByRole("button", {name: /^Redo/}).focus()
    await page.keyboard.press("Control+f")
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("INPUT")
    await page.keyboard.press("Control+y")
    expect(await sheet.text("Long Acre", "Open")).toBe(was)
  })
})

describe("nothing is lost", () => {
  it("says when the storage is full, goes on, and keeps it all once there is room", async () => {
    const {page, sheet} = await openPlan()
    const quota = await page.context().newCDPSession(page)
    const {origin} = new URL(page.url())
    await quota.send("Storage.overrideQuotaForOrigin", {origin, quotaSize: 1000})
    await sheet.type("Long Acre", "Open", "29 Apr")
    await page.getByText("Not saved: storage is full. Keep a file copy").waitFor()
    await quota.send("Storage.overrideQuotaForOrigin", {origin})
    await sheet.type("Sand Piece", "Open", "28 Apr")
    await page.getByText(/^Saved on this device/).waitFor()
    await page.reload()
    await page.locator(".ag-cell").first().waitFor()
    expect(await sheet.text("Long Acre", "Open")).toBe("29 Apr")
    expect(await sheet.text("Sand Piece", "Open")).toBe("28 Apr")
  })

  it("brings back the last act after the tab is killed", async () => {
    const {page, sheet} = await openPlan()
    // An act is kept before it is drawn: what waits for a drawing never comes from here on.
    await page.evaluate(() => Object.assign(window, {requestAnimationFrame: () => 0}))
    await sheet.type("Long Acre", "Open", "29 Apr")
    await page.getByText(/^Saved on this device/).waitFor()
    const address = page.url()
    const again = await page.context().newPage()
    await page.close({runBeforeUnload: false})
    await again.goto(address)
    await again.locator(".ag-cell").first().waitFor()
    expect(await sheetOn(again).text("Long Acre", "Open")).toBe("29 Apr")
    expect(await again.locator(".folio").innerText()).toContain("As saved on this device")
  })

  it("says to what time it is recovered where the page crashed, and not after it was put away", async () => {
    const {page, sheet} = await openPlan()
    await sheet.type("Long Acre", "Open", "29 Apr")
    await page.getByText(/^Saved on this device/).waitFor()
    const address = page.url()
    const context = page.context()
    const crash = await context.newCDPSession(page)
    void crash.send("Page.crash").catch(() => {}) // there is no answer
    await page.waitForEvent("crash")
    const again = await context.newPage()
    await again.goto(address)
    await again.locator(".ag-cell").first().waitFor()
    expect(await sheetOn(again).text("Long Acre", "Open")).toBe("29 Apr")
    expect(await again.locator(".folio").innerText()).toMatch(/Recovered to \d\d:\d\d:\d\d/)
    await again.reload()
    await again.locator(".ag-cell").first().waitFor()
    expect(await again.locator(".folio").innerText()).toContain("As saved on this device")
  })

  it("keeps a file copy that opens again, and refuses a damaged one without touching what is open", async () => {
    // Without the browser's own dialogs, which a test cannot answer, the planner takes a link and a file field.
    const {page, trouble, sheet} = await openPlan()
    await page.evaluate(() => {
      Object.assign(window, {showSaveFilePicker: undefined, showOpenFilePicker: undefined})
    })
    await sheet.type("Long Acre", "Open", "30 Apr")
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", {name: "Keep a file copy"}).click(),
    ])
    expect(download.suggestedFilename()).toMatch(/^hollow-brook-farm-\d{4}-\d{2}-\d{2}\.json$/)
    const copy = await (await download.createReadStream()).toArray()
    const text = Buffer.concat(copy as Buffer[]).toString()

    const open = async (content: string) => {
      const [chooser] = await Promise.all([
        page.waitForEvent("filechooser"),
        page.getByRole("button", {name: "Open a file copy"}).click(),
      ])
      await chooser.setFiles({name: "copy.json", mimeType: "application/json", buffer: Buffer.from(content)})
    }
    await open(text.slice(0, text.length / 2))
    await expect.poll(sheet.said).toMatch(/copy\.json was not opened\..*What was open is as it was\./)
    expect(await sheet.text("Long Acre", "Open")).toBe("30 Apr")
    await sheet.type("Long Acre", "Open", "26 Apr")
    await open(text)
    await expect.poll(() => sheet.text("Long Acre", "Open")).toBe("30 Apr")
    await page.getByRole("button", {name: /^Undo: opening Hollow Brook Farm/}).click()
    expect(await sheet.text("Long Acre", "Open")).toBe("26 Apr")
    expect(trouble).toEqual([])
  })

  it("opens a blank workbook to start from, one undo away from what was open", async () => {
    const {page, trouble, sheet} = await openPlan()
    await page.getByRole("button", {name: "A blank workbook"}).click()
    await expect.poll(sheet.said).toMatch(/is open\.$/)
    expect(await page.locator(".head .book").innerText()).not.toContain("Hollow Brook Farm")
    await page.getByRole("button", {name: /^Undo: opening/}).click()
    expect(await page.locator(".head .book").innerText()).toContain("Hollow Brook Farm")
    expect(trouble).toEqual([])
  })
})

describe("help", () => {
  it("explains a function with its arguments, sources and an example that is worked out", async () => {
    const {page, trouble} = await openPlan()
    await page.getByRole("button", {name: "Help", exact: true}).click()
    await page.locator(".help-panel").getByRole("searchbox").fill("ROOT.SUGAR_FROM_SAP")
    await page.getByRole("button", {name: "ROOT.SUGAR_FROM_SAP"}).click()
    const card = await page.locator(".help-panel .help").innerText()
    expect(card).toMatch(/=ROOT\.SUGAR_FROM_SAP\(15\) gives 417\.8/)
    expect(card).toContain("Rests on")
    expect(trouble).toEqual([])
  })
})

describe("accessibility", () => {
  it.each([
    [1440, 900, "light"],
    [1440, 900, "dark"],
    [390, 844, "light"],
  ] as const)("shows nothing that axe objects to at %i x %i, %s", async (width, height, colorScheme) => {
    const {page} = await openPlan({width, height, colorScheme})
    // Rows beyond the third are like the first three; the check is slow on many cells.
    const {violations} = await new AxeBuilder({page: page as never})
      .exclude('[row-index="3"],[row-index="4"],[row-index="5"]')
      .analyze()
    expect(
      violations.map(({id, nodes}) => `${id}: ${nodes.map(({html}) => html.slice(0, 160)).join(" | ")}`),
    ).toEqual([])
  })

  it("needs no sideways scrolling of the page at 320 px", async () => {
    const {page} = await openPlan({width: 320, height: 640})
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  })
})
