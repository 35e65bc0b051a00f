import {expect, it} from "vitest"
import {lookOf} from "../../../src/storage/book/xlsxLooks"

it.each([
  ["General", "plain"],
  ["0", 0],
  ["#,##0.00", 2],
  ['#,##0.0 "kg"', 1],
  ["0.00%", "share"],
  ["d mmm yyyy", "date"],
  ["[$-809]dd/mm", "day"],
  ['"day" 0', 0],
  ["@", "words"],
  ["0.00E+00", "plain"],
  ["#,##0.00;[Red]-#,##0.00", 2],
  ["h:mm", "plain"],
])("takes the format %s as %s", (code, look) => expect(lookOf(code)).toBe(look))
