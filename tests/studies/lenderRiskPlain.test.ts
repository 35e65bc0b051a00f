import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {isRefusal} from "../../functions/refusal"
import {modelYearOf} from "../../functions/calendar"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {drawRisk} from "../../src/studies/drawRisk"
import {lenderRisk} from "../../src/studies/lenderRisk"
import {risk} from "../../src/studies/risk"
import {seasonUnderWay} from "../../src/studies/seasonUnderWay"
import {crownsOf} from "../../src/workbook/crowns"
import {readFile} from "../../src/workbook/file"
import {rowsOf} from "../../src/workbook/season"
import {Workbook} from "../../src/workbook/workbook"
import {seeded} from "../workbook/documents"

const DRAWS = 3000

it("a lender's study of risk falls below cover 1 as often as in a plain simulation", () => {
  const file = readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8")
  const reading = readFile(file)
  if ("refused" in reading) throw new Error(reading.refused)
  const workbook = new Workbook(reading.document)
  const input = lenderRisk(workbook, 1)!
  const {years} = risk(input, [drawRisk(input, 0, DRAWS)]).plans[0]!

  // By hand from the sheets: every year of every draw day by day, no tables, no shared runs, other random numbers.
  const crowns = crownsOf(workbook)
  if (crowns === null || isRefusal(crowns)) throw new Error("no crowns")
  const {climate, values, plantings} = crowns
  const modelYear = modelYearOf(plantings[0]!.open, values.Year_start)
  const random = seeded(11)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const whole = new Float64Array(modelYear.days).fill(1)
  const course = emptyCourse(modelYear.days)
  const last = modelYear.days - 1
  const weather = (warmth: number, sun: number) =>
    driversOf(
      {
        air: climate.air.map((air) => air + warmth),
        soil: climate.soil.map((soil) => soil + 0.75 * warmth),
        sun: climate.sun.map((light) => light * (1 + 0.05 * sun)),
      },
      modelYear,
      values,
    )
  const twoYears = (planting: (typeof plantings)[0], skies: readonly ReturnType<typeof weather>[]) => {
    let from = {structure: planting.structure, reserve: planting.reserve}
    return skies.map((drivers) => {
      const cutting = {
        open: planting.open - modelYear.first,
        stop: planting.close - modelYear.first + 1,
        fernEnd: values.Fern_end - 1,
      }
      dailyBalance(from, drivers, cutting, whole, values, course)
      from = {structure: course.structure[last]!, reserve: course.reserve[last]!}
      return course.picked[last]!
    })
  }
  const usual = weather(0, 0)
  const stands = rowsOf(workbook, "stand name")
  const standing = plantings
    .filter(({open, close}) => close >= open)
    .map((planting) => ({planting, usual: twoYears(planting, [usual, usual])}))
  const money = rowsOf(workbook, "cash year").slice(0, 2)
  const season = seasonUnderWay(
    workbook,
    money[0]!.number("cash sales")! / (1000 * money[0]!.number("cash crop")!),
  )!
  const toCome = new Map(
    rowsOf(workbook, "pick planting").map((row) => [row.word("pick planting"), row.number("pick to come")!]),
  )
  const farm = money.map((row, i) => {
    const [sales, picking] = [row.number("cash sales")!, row.number("cash picking")!]
    const [capacity, crop] = [row.number("capacity")!, 1000 * row.number("cash crop")!]
    const own = stands.filter((stand) => stand.number("stand year") === row.number("cash year"))
    // Of the season under way what is to come; every stand of it has a picking on record, or no crop.
    const areas = own.map((stand) => ({
      name: stand.word("stand name"),
      kg:
        i === 0
          ? (toCome.get(stand.word("stand name")) ?? 0)
          : (stand.number("stand area") ?? 0) * (stand.number("stand yield") ?? 0),
    }))
    return {
      areas,
      sold: i === 0 ? season.sold : {kg: 0, sales: 0},
      price: i === 0 ? season.price : sales / crop,
      perKg: picking / crop,
      costs: sales - picking - capacity,
      due: row.number("due")!,
    }
  })
  const priceSpread = Math.sqrt(Math.log(1 + 0.15 ** 2))
  const covers: [number[], number[]] = [[], []]
  for (let draw = 0; draw < DRAWS; draw++) {
    const skies = [0, 1].map(() => weather(normal(), normal()))
    const moves = new Map(
      standing.map(({planting, usual}) => [
        planting.planting,
        twoYears(planting, skies).map((crop, year) => crop / usual[year]!),
      ]),
    )
    const doubts = new Map<string, number>()
    let priceBefore = 0
    for (const [year, {areas, sold, price, perKg, costs, due}] of farm.entries()) {
      const shared = normal()
      priceBefore = year === 0 ? normal() : 0.5 * priceBefore + Math.sqrt(0.75) * normal()
      let kg = 0
      for (const {name, kg: planned} of areas) {
        if (!doubts.has(name)) doubts.set(name, normal())
        const log =
          0.15 * shared -
          0.15 ** 2 / 2 +
          0.2 * normal() -
          0.2 ** 2 / 2 +
          0.1 * doubts.get(name)! -
          0.1 ** 2 / 2
        kg += planned * (moves.get(name)?.[year] ?? 1) * Math.exp(log)
      }
      const z = -0.3 * shared + Math.sqrt(1 - 0.3 ** 2) * priceBefore
      const paid = price * Math.exp(priceSpread * z - priceSpread ** 2 / 2)
      covers[year as 0 | 1].push((kg * (paid - perKg) + sold.sales - sold.kg * perKg - costs) / due)
    }
  }
  for (const [i, values] of covers.entries()) {
    const {below1} = years[i]!
    const below = values.filter((one) => one < 1).length / DRAWS
    // Each side has a standard error of its own, so the difference has √2 of one; three of them.
    expect(Math.abs(below1!.share - below)).toBeLessThan(3 * Math.SQRT2 * below1!.error)
  }
})
