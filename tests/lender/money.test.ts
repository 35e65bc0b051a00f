import {describe, expect, it} from "vitest"
import type {CellAddress, Content} from "../../src/workbook/document"
import {isFault} from "../../src/workbook/value"
import {line, openFarm} from "./farm"

describe("the money of Hollow Brook Farm", () => {
  it("does not take prices that nobody typed for prices of 0", () => {
    const farm = openFarm()
    const {at, enter, of, sheets, sheetOf} = farm
    enter(
      ...sheets[sheetOf("Prices")]!.rows.map((_, row): [CellAddress, Content] => [
        at("Prices", row, "Price"),
        null,
      ]),
    )
    for (const row of [0, 1, 9]) expect(isFault(of("Cash and debt", row, "Capacity"))).toBe(true)
    expect(line(farm, "Tight year")).toBe("Not known: some year of Cash and debt cannot be worked out.")
    expect(line(farm, "To know")).toBe("No price is known yet, so nothing of the money.")
  })

  it("covers its debt about one and a half times, and barely in the year of the second loan", () => {
    const {values} = openFarm()
    const covers = values("Cash and debt", "Cover")
    expect(covers[0]).toBeGreaterThan(1.4)
    expect(covers[0]).toBeLessThan(1.6)
    expect(covers.indexOf(Math.min(...covers.filter((one) => typeof one === "number")))).toBe(1)
    expect(covers[1]).toBeGreaterThan(0.95)
    expect(covers[1]).toBeLessThan(1.2)
  })

  it("adds up: weeks to the season, months to the year, loans to the debt", () => {
    const {workbook, sheetOf, values, rowOf, of} = openFarm()
    const sum = (sheet: string, heading: string) =>
      values(sheet, heading).reduce((total, one) => total + (typeof one === "number" ? one : 0), 0)
    expect(sum("Sales by week", "Crop")).toBeCloseTo(sum("Season plan", "Crop") * 1000, 3)
    expect(sum("Sales by week", "Sales")).toBeCloseTo(of("Cash and debt", 0, "Sales") as number, 3)
    expect(of("Cash by month", 11, "Cash")).toBeCloseTo(of("Cash and debt", 0, "Cash") as number, 3)
    // Level payments on 180 000 at 6 % over 10 years and 60 000 at 6.5 % over 8: P·i/(1 - (1 + i)^-n).
    const level = (money: number, rate: number, years: number) => (money * rate) / (1 - (1 + rate) ** -years)
    expect(of("Cash and debt", 0, "Due")).toBeCloseTo(level(180_000, 0.06, 10), 6)
    expect(of("Cash and debt", 1, "Due")).toBeCloseTo(level(180_000, 0.06, 10) + level(60_000, 0.065, 8), 6)
    // Replanting 4.1 ha: 350 and 9 800 a hectare, 1 500 the year after; 1 500 for Top Corner's 3 ha this season.
    expect(values("Cash and debt", "Establishing").slice(0, 4)).toEqual([
      4500,
      4.1 * 350 + 4.1 * 9800,
      6150,
      0,
    ])
    const ratios = [
      "Operating expense ratio",
      "Depreciation ratio",
      "Interest ratio",
      "Net farm income ratio",
    ]
    const total = ratios.reduce(
      (sum, name) => sum + (of("Measures", rowOf("Measures", name), "Value") as number),
      0,
    )
    expect(total).toBeCloseTo(1, 9)
    expect(workbook.evaluate("=SUM('Cash and debt'!B1)", sheetOf("Loans"))).toBeGreaterThan(0)
  })

  it("pays operating loans left unpaid from before once, in the first year", () => {
    const {values, of, named} = openFarm()
    const before = ["Margin", "Cash", "Replacement margin"].map((heading) => values("Cash and debt", heading))
    named("Unpaid_debt", 10_000)
    const [margin, cash, replacement] = ["Margin", "Cash", "Replacement margin"].map((heading) =>
      values("Cash and debt", heading),
    )
    const fall = (row: number, now: number[], then: number[]) => then[row]! - now[row]!
    for (let row = 0; row < 10; row++) {
      expect(fall(row, margin!, before[0]!)).toBeCloseTo(row === 0 ? 10_000 : 0, 6)
      expect(fall(row, replacement!, before[2]!)).toBeCloseTo(row === 0 ? 10_000 : 0, 6)
      expect(fall(row, cash!, before[1]!)).toBeCloseTo(10_000, 6)
    }
    expect(of("Cash by month", 11, "Cash")).toBeCloseTo(cash![0]!, 3)
  })

  it("leaves in December where no month of the loans is typed", () => {
    const {values, named, of} = openFarm()
    named("Loan_month", null)
    expect(values("Cash by month", "Debt").map((due) => due > 0)).toEqual([...Array(11).fill(false), true])
    expect(of("Cash by month", 11, "Cash")).toBeCloseTo(of("Cash and debt", 0, "Cash") as number, 3)
  })

  it("gives each loan its rows of Debt by year, and says what stands past them where they were removed", () => {
    const farm = openFarm()
    const {workbook, sheets, sheetOf, at, rowOf, of} = farm
    const row = rowOf("Checks", "Rows past the end of the yearly sheets")
    expect([of("Checks", row, "Found"), line(farm, "Tight year")]).toEqual([
      0,
      expect.not.stringContaining("not counted"),
    ])
    const loans = sheetOf("Loans")
    const [first] = sheets[loans]!.rows
    workbook.revise({
      type: "enter",
      cells: [2, 3, 4, 5, 6].flatMap((row) =>
        first!.map((content, col) => ({
          at: {sheet: loans, row, col},
          content: col === 0 ? `Loan ${row + 1}` : content,
        })),
      ),
    })
    expect(of("Checks", row, "Found")).toBe(0)
    expect(line(farm, "Tight year")).not.toContain("not counted")
    expect(workbook.valueAt({...at("Debt by year", 0, "Loan"), row: 60})).toBe("Loan 7")
    workbook.revise({type: "removeRows", sheet: sheetOf("Debt by year"), first: 60, count: 10})
    expect(of("Checks", row, "Found")).toBe(1)
    expect(line(farm, "Tight year")).toContain("1 of 7 loans not counted: Debt by year has no rows for them.")
  })

  it("says on the page how many plantings the years ahead leave out", () => {
    const farm = openFarm()
    const row = farm.rowOf("Stands ahead", "Top Corner")
    farm.workbook.revise({type: "removeRows", sheet: farm.sheetOf("Stands ahead"), first: row, count: 1})
    expect(line(farm, "Tight year")).toContain(
      "1 of 6 plantings not counted: Stands ahead has no row for them.",
    )
  })

  it("names the cut plantings that Sales by week has no rows for, until rows are added there", () => {
    const {workbook, sheets, sheetOf, at, rowOf, of} = openFarm()
    const row = rowOf("Checks", "Cut plantings past the end of Sales by week")
    expect([of("Checks", row, "Found"), of("Checks", row, "To look at")]).toEqual([0, "none"])
    // Five plantings are cut; with rows for four, the fifth is missing. Top Corner is not cut and is not missed.
    const sales = sheetOf("Sales by week")
    const length = sheets[sales]!.rows.length
    workbook.revise({type: "removeRows", sheet: sales, first: 48, count: length - 48})
    expect([of("Checks", row, "Found"), of("Checks", row, "To look at")]).toEqual([1, "Home Strip"])
    workbook.revise({type: "insertRows", sheet: sales, before: 48, count: 12})
    expect([of("Checks", row, "Found"), of("Checks", row, "To look at")]).toEqual([0, "none"])
    expect(workbook.valueAt(at("Sales by week", 48, "Planting"))).toBe("Home Strip")
  })

  it("counts the years short among those that have something due", () => {
    const farm = openFarm()
    // Nothing is due in 2035; with a crop less by a fifth at a price less by a tenth even that year loses money.
    expect(farm.values("Stress by year", "Capacity").at(-1)).toBeLessThan(0)
    expect(farm.values("Stress by year", "Short").at(-1)).toBe(0)
    expect(farm.of("Stress", farm.rowOf("Stress", "yours"), "Years short")).toBe(9)
    expect(line(farm, "Tight year")).toMatch(/Years short: 0 of 9 with debt; with [^:]*: 9\.$/)
  })

  it("tells a loss where nothing is due, and counts no debt that is not there", () => {
    const {workbook, at, of, enter, rowOf, values} = openFarm()
    const last = values("Cash and debt", "Due").length - 1
    expect([of("Cash and debt", last, "Due"), of("Cash and debt", last, "Cause")]).toEqual([0, ""])
    enter([at("Cash and debt", last, "Capacity"), -5230.6], [at("Cash and debt", 2, "Capacity"), -100])
    expect(of("Cash and debt", last, "Short")).toBe(0)
    expect(of("Cash and debt", last, "Cause")).toBe("a cash loss of 5\u202f231, nothing due")
    // A year with a debt and no money at all lacks the debt and the loss.
    expect(of("Cash and debt", 2, "Short")).toBeCloseTo((of("Cash and debt", 2, "Due") as number) + 100, 9)
    expect(of("Cash and debt", 2, "Cause")).toBe("")
    const check = rowOf("Checks", "Years that do not pay their debt")
    expect([of("Checks", check, "Found"), of("Checks", check, "To look at")]).toEqual([1, "2028"])
    // Where the crop of a year is not known its cause stays words.
    const records = workbook.document.sheets.findIndex(({name}) => name === "Records")
    const count = workbook.document.sheets[records]!.rows.length
    workbook.revise({type: "removeRows", sheet: records, first: 0, count})
    expect(of("Cash and debt", 1, "Cause")).toMatch(/^replanting North Bench/)
  })

  it("follows cash within the months: a week is paid for on its first day, before what comes in on that day", () => {
    const farm = openFarm()
    const {of, rowOf, values, named} = farm
    const months = values("Cash by month", "Month")
    const columns = ["From", "Sales", "Picking and packing"].map((heading) =>
      values("Sales by week", heading),
    ) as [number[], number[], number[]]
    const weeks = columns[0].flatMap((from, row) =>
      typeof from === "number" ? [{from, sales: columns[1][row]!, costs: columns[2][row]!}] : [],
    )
    expect(weeks.length).toBeGreaterThan(20)
    // Day by day: what is paid, then what has come in, and at the end of the month all the rest.
    const byDays = (payDays: number) => {
      let cash = of("Named values", rowOf("Named values", "Cash_start"), "Value") as number
      return months.map((month, row) => {
        let least = cash
        const next = months[row + 1] ?? month + 31
        for (let day = month; day < next; day++) {
          for (const {from, costs} of weeks) if (from === day) cash -= costs
          least = Math.min(least, cash)
          for (const {from, sales} of weeks) if (from + payDays === day) cash += sales
        }
        const at = (heading: string) => of("Cash by month", row, heading) as number
        cash += at("Lent") - at("Field and fixed") - at("Household") - at("Debt")
        expect(at("Cash")).toBeCloseTo(cash, 6)
        return Math.min(least, cash)
      })
    }
    for (const payDays of [14, 0, 45]) {
      named("Pay_days", payDays)
      const lowest = values("Cash by month", "Lowest")
      for (const [row, expected] of byDays(payDays).entries()) expect(lowest[row]).toBeCloseTo(expected, 6)
    }
  })

  it("names the lowest cash and its month on the page, in the checks and among the measures", () => {
    const farm = openFarm()
    const {of, rowOf, values} = farm
    const lowest = values("Cash by month", "Lowest")
    const least = Math.min(...lowest)
    expect(lowest.indexOf(least)).toBe(4)
    expect(values("Cash by month", "In the year").filter(Boolean)).toHaveLength(1)
    expect(of("Cash by month", 4, "In the year")).toBe("lowest")
    const digits = Math.round(-least).toString()
    const grouped = digits.replace(/(?=\d{3}$)/, "\u202f")
    expect(line(farm, "To know")).toContain(
      `Lowest cash of this year: −${grouped} in May; a week's picking is paid on its first day, and its money comes in 14 days later.`,
    )
    const check = rowOf("Checks", "Months that run out of cash")
    expect(of("Checks", check, "Found")).toBe(lowest.filter((cash) => cash < 0).length)
    expect(of("Checks", check, "To look at")).toBe(`lowest −${digits} in May`)
    const measure = rowOf("Measures", "Lowest cash of the year")
    expect(of("Measures", measure, "Value")).toBe(least)
    expect(of("Measures", measure, "How")).toBe("money: the lowest point of Cash by month, in May")
  })

  it("finds the measures of a small case by hand", () => {
    const {at, of, enter, named, rowOf} = openFarm()
    // Current assets 180, current debt 120, sales 500, all assets 2 000, all debt 800, income 60, interest 40, own work 50,
    // in thousands: 1.5; .12; .40; D/E .6667; margin .10; ROA .025; ROE .008333.
    const balance: [number, Content][] = [
      [0, 180_000],
      [1, 0],
      [2, 1_820_000],
      [3, 0],
      [4, 0],
      [5, 0],
      [6, 100_000],
    ]
    enter(
      ...balance.map(([row, value]): [CellAddress, Content] => [at("Balance sheet", row, "Value"), value]),
      ...Object.entries({
        Sales: 500_000,
        "Net farm income": 60_000,
        Interest: 40_000,
        Principal: 20_000,
        "Owed before": 700_000,
      }).map(([heading, content]): [CellAddress, Content] => [at("Cash and debt", 0, heading), content]),
    )
    named("Own_work", 50_000)
    const measure = (name: string) => of("Measures", rowOf("Measures", name), "Value")
    expect(measure("Current ratio")).toBe(1.5)
    expect(measure("Working capital over gross revenue")).toBeCloseTo(0.12, 12)
    expect(measure("Debt over assets")).toBeCloseTo(0.4, 12)
    expect(measure("Debt over equity")).toBeCloseTo(2 / 3, 12)
    expect(measure("Operating profit margin")).toBeCloseTo(0.1, 12)
    expect(measure("Return on assets")).toBeCloseTo(0.025, 12)
    expect(measure("Return on equity")).toBeCloseTo(0.1 / 12, 12)
    expect(measure("Asset turnover")).toBeCloseTo(0.25, 12)
  })
})
