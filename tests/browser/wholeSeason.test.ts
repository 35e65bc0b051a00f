import type {Page} from "playwright-core"
import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {dateText, numberText} from "../../src/editor/display"
import {cell} from "../functions/cell"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** As it is shown, with plain spaces. */
const spaced = (text: string) => text.replaceAll("\u202f", " ")

/** Hands on the keyboard: nothing but keys reaches the page. What is on screen is read, as eyes would. */
function handsOn(page: Page) {
  const sheet = sheetOn(page)
  const keyOf = (letter: string) => (letter === " " ? "Space" : letter)
  /** Keys as quick hands press them: the next one does not wait until the one before is dealt with. */
  const press = (...keys: readonly string[]) =>
    Promise.all(keys.map((key) => page.keyboard.press(key.length === 1 ? keyOf(key) : key)))
  const focused = () =>
    page.evaluate(() => {
      const one = window.document.activeElement as HTMLInputElement
      return (one.getAttribute("aria-label") ?? one.labels?.[0]?.textContent ?? one.textContent ?? "").trim()
    })
  /** Goes on by Tab, or back by Shift and Tab, until the focus is on what is called so. */
  const tabTo = async (name: RegExp, back = false) => {
    for (let i = 0; i < 120; i++) {
      if (name.test(await focused())) return
      await press(back ? "Shift+Tab" : "Tab")
    }
    throw new Error(`Tab does not come to ${name}, but to ${await focused()}`)
  }
  const pressButton = async (name: RegExp, back = false) => {
    await tabTo(name, back)
    await press("Enter")
  }
  /** The keys of rows that are typed one below the other, each from the column where the first begins. */
  const keysOf = (rows: readonly (readonly string[])[]) =>
    rows.flatMap((row) => [
      ...row.flatMap((text, i) => [...text, i < row.length - 1 ? "Tab" : "Enter"]),
      ...row.slice(1).map(() => "ArrowLeft"),
    ])
  const leave = async () => {
    await page.locator(".ag-cell:focus").waitFor()
    await press("Escape")
  }
  return {
    sheet,
    press,
    leave,
    /** Goes on by Tab to the sheet's chosen cell. */
    async toSheet() {
      for (let i = 0; i < 60 && (await page.locator(".ag-cell:focus").count()) === 0; i++) await press("Tab")
    },
    focused,
    tabTo,
    pressButton,
    /** Goes from the sheet to a cell, a named value or another sheet by its name, and types rows there at once. */
    async put(place: string, ...rows: readonly (readonly string[])[]) {
      await leave()
      await tabTo(/^Chosen cells/)
      await press(...place, "Enter", ...keysOf(rows))
    },
    /** Opens a sheet from the contents, and types rows on it at once. */
    async open(name: string, ...rows: readonly (readonly string[])[]) {
      await leave()
      await tabTo(/^Sheets with/)
      await press(...name, "Enter", ...keysOf(rows))
      await page.getByRole("heading", {level: 1, name, exact: true}).waitFor()
    },
    /** What a cell shows, once it shows that. */
    shows: (row: string | number, heading: string, text: string) =>
      expect
        .poll(async () => spaced(await sheet.text(row, heading)), {
          timeout: 20_000,
          message: `${heading} of ${row}`,
        })
        .toBe(text),
    number: async (row: string | number, heading: string) =>
      Number((await sheet.text(row, heading)).replace("\u2212", "-").replaceAll("\u202f", "")),
  }
}

// A farm of this test's own. Marsh Field stands in its 11th year, Far Six in its 3rd.
const FARM = [
  "2028-03-20", // the day the plan stands on
  "2028", // the season
  "2028-06-22", // last date for cutting
  "2028-06-10", // last day with cutters
  "1.04", // picking, hauling and packing a kg
  "0.04",
  "0.52",
  "0.8", // packed share
  "45", // what a day more costs next year
  "10", // mean diameter at which cutting ends
]
const AIR = [2.1, 2.6, 5.2, 8.6, 12.9, 15.8, 17.9, 17.6, 14.2, 10.1, 5.9, 3]
const SOIL = [4.1, 3.9, 5, 7.6, 11, 14.1, 16.2, 16.6, 14.9, 12, 8.4, 5.6]
const SUN = [2.6, 5, 9.2, 14.1, 18, 18.9, 18, 15.6, 11, 6.4, 3.2, 2.1]
const CLIMATE = `{${AIR.map((air, i) => `${air},${SOIL[i]},${SUN[i]}`).join(";")}}`
const PRICES = [4.6, 4.4, 4.2, 4, 3.8, 3.6, 3.5, 3.4]
const column = (numbers: readonly number[]) => numbers.map((number) => [String(number)])
const rowsFor = (planting: string, sugars: readonly number[]) =>
  sugars.map((sugar, i) => [planting, String(i + 1), "6 Mar", "", String(sugar)])

const PICKED = [
  ["Marsh Field", "24 Apr", "420"],
  ["Marsh Field", "1 May", "610"],
  ["Far Six", "1 May", "350"],
  ["Marsh Field", "8 May", "655"],
  ["Far Six", "9 May", "800"],
  ["Marsh Field", "11 May", "640"],
  ["Far Six", "13 May", "760"],
  ["Marsh Field", "14 May", "602"],
]
const LATER = [
  ["Far Six", "17 May", "700"],
  ["Marsh Field", "18 May", "590"],
]

/** Structure and store of a planting, kg/ha, at the start of its year, from samples of 6 March. */
function crownsOf(sugar: number, root: number, alive: number, opens: string): string {
  const start = (what: string) =>
    cell(
      `=ROOT.START("${what}","2028-03-06",${sugar},ROOT.STRUCTURE(${sugar},${root},${alive}),${CLIMATE},,"${opens}")`,
    )
  return `${String(start("structure"))},${String(start("reserve"))},${CLIMATE}`
}
/** What the balance gives, kg/ha, cut from one day to another. */
const picked = (crowns: string, opens: string, closes: string) =>
  Number(cell(`=ROOT.SEASON("picked",${crowns},"${opens}","${closes}")`))
/** The share of a season's crop that stands on a night: that of a day, for the days between two pickings. */
const shareStanding = (crowns: string, night: string, opens: string, closes: string) =>
  Number(
    cell(
      `=SEASON.CROP_ON("${night}","${opens}","${closes}",1,${crowns})*ROUNDUP(SPEAR.PICK_GAP(CLIMATE.ON_DAY("air","${night}",${CLIMATE})),0)`,
    ),
  )
const plain = (number: number) => spaced(numberText(number, 0))

it("takes a grower's whole season, typed by keys alone", async () => {
  const {page, trouble} = await openPlanner()
  await page.locator(".ag-cell").first().waitFor()
  const {sheet, press, leave, toSheet, focused, tabTo, pressButton, put, open, shows, number} = handsOn(page)

  // Before the season: the plantings, what is known of the farm, its weather, its prices, its crowns.
  await pressButton(/^A blank workbook/)
  await expect.poll(focused).toBe("Season plan") // no cell to choose yet
  await pressButton(/^Add a planting/)
  for (const [name, area] of [
    ["Marsh Field", "3.2"],
    ["Far Six", "6.5"],
  ] as const) {
    await tabTo(/^Name$/, name !== "Marsh Field")
    await press(...name)
    await tabTo(/^Area/)
    await press(...area, "Enter")
    await page.getByText(`${name} stands on every sheet`).waitFor()
  }
  await press("Escape")
  await put("Plantings!B1", ["14 Apr 2018"], ["22 Apr 2025"])
  await put("D1", ["21000", "17500", "560", "1200"], ["21000", "20100", "420", "1100"])
  await put("As_of", ...FARM.map((value) => [value])) // down the list of named values, from the first on
  await put("Fern_end_date", ["2028-10-20"])
  await put("Latitude", ["52"])
  await put("Pick_rate", ["21"])
  await put("Shift", ["8"])
  await put("Weather!C1", ...column(AIR))
  await put("D1", ...column(SOIL))
  await put("E1", ...column(SUN))
  await put("Prices", ...PRICES.map((price, i) => [String(i + 1), String(price)]))
  await open(
    "Root samples",
    ...rowsFor("Marsh Field", [505, 540, 515, 510, 530]),
    ...rowsFor("Far Six", [470, 490, 475, 485, 480]),
  )
  await shows(10, "Sugar", "480")
  await expect.poll(focused).toMatch(/next row to fill$/)

  // The opening.
  await put("Season plan")
  await put("E1", ["19 Apr"], ["24 Apr"])
  await shows("Marsh Field", "Sugar", "520") // (505 + 540 + 515 + 510 + 530) / 5
  await shows("Far Six", "Sugar", "480")
  await shows("Marsh Field", "Age", "10")
  // Eight weeks for its age end on 13 June, the crew on the 10th; four weeks at age 3.
  await shows("Marsh Field", "Close", "10 Jun")
  await shows("Marsh Field", "Held by", "crew")
  await shows("Marsh Field", "Slack", "3")
  await shows("Far Six", "Close", "21 May")
  await shows("Far Six", "Held by", "weeks for its age")
  const marsh = crownsOf(520, 560, 17500, "2028-04-19")
  const six = crownsOf(480, 420, 20100, "2028-04-24")
  const ageing = 0.9025 // at age 10, on Yield by age
  await shows("Marsh Field", "Yield", plain(picked(marsh, "2028-04-19", "2028-06-10") * ageing))
  await shows("Far Six", "Yield", plain(picked(six, "2028-04-24", "2028-05-21")))
  await leave()
  await pressButton(/^Agree this plan/, true)
  await expect.poll(sheet.said).toContain("The plan is agreed as it stands.")
  await toSheet()

  // Three weeks of pickings, and a night of frost.
  await put("Pickings", ...PICKED)
  await put("Losses!A1", ["Marsh Field", "30 Apr", "0.6", "frost"])
  await put("As_of", ["2028-05-15"])
  await open("This week")
  await expect.poll(focused).toBe("This week") // a page to read before its sheet
  expect(await page.locator(".week").innerText()).toMatch(/3\.5.t came in from 8 May to 14 May/) // 1 897 + 1 560 kg
  await shows("Marsh Field", "Picked", "1 897") // 655 + 640 + 602
  await shows("Far Six", "Picked", "1 560") // 800 + 760
  await shows("Marsh Field", "So far", "2 927")
  const planned = await number("Marsh Field", "Planned")
  expect(
    Math.abs(parseFloat(await sheet.text("Marsh Field", "Of plan")) - (1897 / planned) * 100),
  ).toBeLessThan(1)
  await pressButton(/^Use this week’s plan/)
  await expect.poll(sheet.said).toContain("This week’s plan is used.")
  await toSheet()

  // The week's measurements: spears that get thinner, prices that fell, cutters who left.
  await put("Spear size!A1", ["Marsh Field", "1 May", "12.6", "30"], ["Marsh Field", "8 May", "12.1", "30"])
  await put("A3", ["Marsh Field", "15 May", "11.4", "30"])
  await put("Season plan")
  // The line through 12.6, 12.1, 11.4 mm falls by 1.2 / 14 mm a day from 12.033 mm on 8 May: 10 mm 23.7 days after that.
  await shows("Marsh Field", "spear size", "31 May 2028")
  await shows("Marsh Field", "Held by", "spear size")
  await shows("Marsh Field", "Slack", "10") // to the crew's 10 June
  const lost = 0.6 * shareStanding(marsh, "2028-04-30", "2028-04-19", "2028-05-31")
  await shows(
    "Marsh Field",
    "Crop",
    (((picked(marsh, "2028-04-19", "2028-05-31") * ageing * 3.2) / 1000) * (1 - lost)).toFixed(1),
  )
  expect(await number("Marsh Field", "Stop price")).toBeGreaterThan(2.5)
  await put("Prices!B6", ["2.5"], ["2.5"], ["2.45"])
  await put("Cutters!A1", ["19 Apr", "9"], ["20 May", "1", "eight left"])
  await put("Days of cutting!I34") // the days begin on Monday 17 April
  const short: number[] = []
  for (const row of [34, 35, 36, 37]) {
    await shows(row, "Booked", "1")
    short.push(await number(row, "Short"))
    expect(short.at(-1)).toBe(Math.max(0, Math.ceil(await number(row, "Cutters needed")) - 1))
  }
  expect(Math.max(...short)).toBeGreaterThan(0)
  await put("Season plan")
  await shows("Marsh Field", "Close", "23 May") // five weeks that pay, from 19 April
  await shows("Marsh Field", "Held by", "price")
  await shows("Marsh Field", "Slack", "8") // to the spears' 31 May

  // A week later: what moved, and the close with its reason.
  await put(`Pickings!A${PICKED.length + 1}`, ...LATER)
  await put("As_of", ["2028-05-22"])
  await open("This week")
  await shows("Marsh Field", "Close agreed", "10 Jun 2028")
  await shows("Marsh Field", "Moved", "\u221218") // 10 June to 23 May
  await shows("Marsh Field", "What to do", "Close to fern on 23 May")
  await pressButton(/^Close to fern…/)
  await tabTo(/^because/)
  await press("Control+a")
  await press(..."crew short", "Enter")
  await expect.poll(focused).toMatch(/^Marsh Field\s*Closed to fern on 2\d May: crew short/)
  await toSheet()
  await put("Plantings")
  await shows("Marsh Field", "Why closed", "crew short")
  const closed = await sheet.text("Marsh Field", "Closed")
  await put("Season plan")
  await shows("Marsh Field", "Close", closed.replace(" 2028", ""))
  await shows("Marsh Field", "Held by", "you")

  // The fern: 58 kg/ha a day after 25 days, and 30 days in hand, fill what the floor leaves of the reserve.
  const room = Number(cell(`=ROOT.RESERVE(520,ROOT.STRUCTURE(520,560,17500))`)) - 1200
  const needed = Math.ceil(room / 58 + 25) + 30
  await put("Fern")
  await shows("Marsh Field", "Days needed", plain(needed))
  await shows("Marsh Field", "Last close", dateText(dayOf("2028-10-20")! - needed))

  // The autumn, and the draft of the next year: from what really happened.
  await put(
    "Root samples!A11",
    ["Marsh Field", "1", "6 Nov", "", "530"],
    ["Marsh Field", "2", "6 Nov", "", "540"],
  )
  await put("This week")
  await leave()
  await pressButton(/^Begin next season/, true)
  await expect.poll(sheet.said).toContain("Far Six is not closed to fern")
  await press("Enter")
  await expect.poll(sheet.said).toContain("The draft of the next season is open.")
  await expect.poll(focused).toMatch(/^Marsh Field\. Planting/)
  await shows("Marsh Field", "Open", "19 Apr")
  await shows("Marsh Field", "Age", "11")
  await shows("Marsh Field", "Sugar", "535") // of the two that were dug in November
  await put("Records")
  await shows(1, "Saleable crop", "1 099") // (2 927 + 590) / 3.2
  await shows(1, "Note", "closed: crew short")
  await shows(1, "Closed", closed)
  await shows(2, "Saleable crop", "402") // (1 910 + 700) / 6.5
  await put("Pickings")
  await expect.poll(() => page.locator("[role=grid]").getAttribute("aria-label")).toContain("0 rows")
  expect(trouble).toEqual([])
})
