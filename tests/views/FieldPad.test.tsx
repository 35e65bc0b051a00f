import {renderToStaticMarkup} from "react-dom/server"
import {expect, it} from "vitest"
import {FieldAmount} from "../../src/views/FieldPad"

const shown = (digits: string, decimal: "." | ",") =>
  renderToStaticMarkup(<FieldAmount digits={digits} unit="kg" decimal={decimal} beside={[]} />)
    .replace(/<[^>]*>/g, "")
    .replaceAll("\u202f", " ")

it("shows every key of a number as it is pressed, a 0 behind the decimal sign too", () => {
  expect(["", "1", "12.", "12.0", "12.05"].map((digits) => shown(digits, ","))).toEqual([
    "0 kg",
    "1 kg",
    "12, kg",
    "12,0 kg",
    "12,05 kg",
  ])
  expect(["1160", "1160.", "1160.5"].map((digits) => shown(digits, "."))).toEqual([
    "1 160 kg",
    "1 160. kg",
    "1 160.5 kg",
  ])
})
