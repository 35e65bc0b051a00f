import {describe, expect, it} from "vitest"
import {readCsv} from "../../src/editor/csvIn"
import {fieldCsv, fieldFileIn} from "../../src/editor/fieldFile"
import {isFieldEntry} from "../../src/workbook/document"
import {seeded} from "../workbook/documents"
import {farm, mark, phone} from "./morning"

const table = (text: string) => {
  const read = readCsv(new TextEncoder().encode(text))
  if ("refused" in read) throw new Error(read.refused)
  return read
}

describe("a file of field rows", () => {
  it("holds every act with its mark, and is read as it was written", () => {
    const {document} = phone().getState()
    expect(fieldFileIn(table(fieldCsv(document)))).toEqual({entries: document.field, left: []})
  })

  it("is a table that shows what was entered, and no formula to another program", () =>
    expect(fieldCsv(phone().getState().document).split("\r\n").slice(0, 4)).toEqual([
      "\ufeffFernledger field row,Device,Entered,Takes back,Planting,Day,Weight (kg),Diameter (mm),Spears,Plant,Reading (°Brix),Sugar (mg/g),By size",
      `${mark(1).id},Phone,2026-05-25T06:12:00.000Z,,Sand Piece,2026-05-25,1160.5,,,,,,`,
      `${mark(2).id},Phone,2026-05-25T06:12:00.000Z,,Long Acre,2026-05-25,,10.68,28,,,,8×3 9×6 11×7 12×12`,
      `${mark(3).id},"'=Phone, the red one",2026-05-25T06:12:00.000Z,,Top Corner,2026-05-20,,,,1,18.5,,`,
    ]))

  it.each([
    ["no mark", "x,Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,,,,,,", "it has no mark of its own"],
    ["no device", `${mark(1).id},,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,,,,,,`, /on which device/],
    [
      "no time",
      `${mark(1).id},Phone,25/5,,Long Acre,2026-05-25,400,,,,,,`,
      /“25\/5”, which is no day and time/,
    ],
    ["no day", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-02-30,400,,,,,,`, /“2026-02-30”/],
    [
      "no number",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,4e2,,,,,,`,
      /“4e2”, which is no number/,
    ],
    [
      "nothing",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,,,,,,`,
      /it holds no number/,
    ],
    ["two kinds", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,9,,,,,`, /two kinds/],
    ["no planting", `${mark(1).id},Phone,2026-05-25T06:12:00Z,,,2026-05-25,400,,,,,,`, /no planting/],
    [
      "a day to come",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,9999-12-31,400,,,,,,`,
      /its day is 9999/,
    ],
    [
      "half a plant",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,,,1.5,18,,`,
      /no whole number/,
    ],
    [
      "a plant alone",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,,,1,,,`,
      /holds no reading/,
    ],
    [
      "spears uncounted",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,9.5,,,,,`,
      /no count of spears/,
    ],
    [
      "sizes that are none",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,,9.5,2,,,,thin`,
      /its spears by size are “thin”/,
    ],
    [
      "sizes of a picking",
      `${mark(1).id},Phone,2026-05-25T06:12:00Z,,Long Acre,2026-05-25,400,,,,,,9×2`,
      /only spears have sizes/,
    ],
    ["a wrong mark taken back", `${mark(1).id},Phone,2026-05-25T06:12:00Z,abc,,,,,,,,,`, /has no mark/],
  ])("says why a line with %s is none", (_, line, why) => {
    const [head] = fieldCsv(farm).split("\r\n")
    const {entries, left} = fieldFileIn(table(`${head}\r\n${line}\r\n`))!
    expect(entries).toEqual([])
    expect(left).toEqual([
      expect.stringMatching(typeof why === "string" ? new RegExp(`^line 2: ${why}$`) : why) as string,
    ])
  })

  it("is read where it was written before spears were kept by size", () => {
    const {document} = phone().getState()
    const former = fieldCsv(document)
      .split("\r\n")
      .map((line) => line.slice(0, line.lastIndexOf(",")))
    const {entries, left} = fieldFileIn(table(former.join("\r\n")))!
    expect(left).toEqual([])
    expect(entries[0]).toEqual(document.field![0])
    const {"spears by size": _, ...mean} = document.field![1]!.row!
    expect(entries[1]!.row).toEqual(mean)
  })

  it("is another table where its first heading is another", () =>
    expect(fieldFileIn(table("Planting,Day\r\nLong Acre,2026-05-25\r\n"))).toBeNull())

  it("says which columns are missing", () =>
    expect(fieldFileIn(table("Fernledger field row,Device\r\na,b\r\n"))!.left[0]).toMatch(
      /^the first line lacks “Entered”, “Takes back”/,
    ))

  it("gives only acts that a workbook can hold, however it is damaged", () => {
    const whole = fieldCsv(phone().getState().document)
    const random = seeded(7)
    let read = 0
    for (let i = 0; i < 400; i++) {
      const at = Math.floor(random() * whole.length)
      const damaged = [
        () => whole.slice(0, at),
        () => whole.slice(0, at) + String.fromCharCode(32 + Math.floor(random() * 400)) + whole.slice(at + 1),
        () => whole.slice(0, at) + whole.slice(at + Math.floor(random() * 60)),
        () => whole.slice(0, at) + whole.slice(Math.floor(random() * whole.length)),
      ][i % 4]!()
      const found = readCsv(new TextEncoder().encode(damaged))
      const file = "refused" in found ? null : fieldFileIn(found)
      if (!file) continue
      read++
      expect(file.entries.every(isFieldEntry)).toBe(true)
    }
    expect(read).toBeGreaterThan(200)
  })
})
