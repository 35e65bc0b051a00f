import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {readFile} from "../../src/workbook/file"
import {replantingOf} from "../../src/workbook/replant"
import {Workbook} from "../../src/workbook/workbook"

function open(name: string): Workbook {
  const reading = readFile(readFileSync(new URL(`../../workbooks/${name}.json`, import.meta.url), "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

describe("the fields of the demonstration farm", () => {
  const workbook = open("hollow-brook-farm")
  const farm = replantingOf(workbook)!
  const field = (name: string) => farm.fields.find((one) => one.field === name)!

  it("have their seasons from the crop and the prices, or as they are typed", () => {
    expect(farm.fields).toHaveLength(9)
    const [first, second] = field("North Bench").seasons
    // Season crop 2 786.9 kg/ha in 8 weeks; mean price of weeks 1 to 8 24.75/8 = 3.094; a kg leaves .86·(3.09375 - .45) -
    // .98 = 1.2936; less 900.
    expect(first!.cash).toBeCloseTo(2786.9 * 1.293625 - 900, 0)
    expect(first!.crop!.sells).toBeCloseTo(2786.9 * 0.86 * 3.09375, 0)
    // Records over their age factors: (3 420/.8574 + 3 010/.7716 + 2 780/.6945)/3 = 3 964.2; age 15 keeps .5625 of it.
    expect(second!.cash).toBeCloseTo(3964.2 * 0.5625 * 1.293625 - 900, 0)
    expect(
      field("Setback field")
        .seasons.map(({cash}) => cash)
        .slice(0, 2),
    ).toEqual([-300, 2400])
    expect(field("Setback field").seasons[0]!.crop).toBeNull()
  })
  it("know their ground and their lease", () => {
    expect(field("Old ground field").onOldGround).toBe(true)
    expect(field("Long Acre").onOldGround).toBe(false)
    expect(field("Old ground field").rest).toBe(2)
    expect(field("Lease field").lease).toBe(6)
    expect(field("Lease field").leaseAct).toMatch(/^keep/)
    // The level is the rate on what the cleared ground is worth, clearing off.
    const {ground, level} = field("Long Acre")
    expect(level).toBeCloseTo(0.07 * (ground - 350), 9)
    expect(field("North Bench").ground).toBe(ground)
    expect(field("Old ground field").ground).toBeLessThan(ground)
  })
  it("say of the one whose lease ends what that asks for, and of no other", () => {
    const said = (name: string) => workbook.valueAt(field(name).cells["replant after"]!)
    expect(said("Lease field")).toBe(field("Lease field").leaseAct)
    // At 2 137 a year 2036 loses (2 137 - 1 900)/1.07^11 = 113 and is near; 2034 misses (2 500 - 2 137)/1.07^10 = 185 and is not.
    expect(said("Setback field")).toBe("after 2035 or 2036")
  })
  it("keep the one that has had a setback past its poor year", () => {
    expect(field("Setback field").waitGain).toBeLessThan(0)
    expect(field("Setback field").keepYears).toBeGreaterThan(5)
  })
})

it("does not know what the crop of a planting is whose margins are typed", () => {
  const workbook = open("hollow-brook-farm")
  const sheet = workbook.document.sheets.findIndex(({name}) => name === "Own margins")
  const cells = ["North Bench", 2600, 1900].map((content, col) => ({at: {sheet, row: 3, col}, content}))
  workbook.revise({type: "enter", cells})
  const {seasons} = replantingOf(workbook)!.fields.find((one) => one.field === "North Bench")!
  expect(seasons).toEqual([
    {year: 2026, cash: 2600, crop: null},
    {year: 2027, cash: 1900, crop: null},
  ])
})

it("says nothing of a workbook without a rate", () => {
  expect(replantingOf(open("blank"))).toBeNull()
})
