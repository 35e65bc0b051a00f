import {describe, expect, it} from "vitest"
import {worked} from "./sheet"

// OASIS (2011). OpenDocument 1.2 part 2, 6.13.28: the steps in their order.
describe("NUMBERVALUE", () => {
  it.each([
    ['"1.234,5",",","."', 1234.5],
    ['"1,234.5",".",","', 1234.5],
    ['"1 234 567,5",","', 1234567.5], // white space goes
    ['"1\'234.5",".","\'"', 1234.5],
    ['".5"', 0.5],
    ['"-12e2"', -1200],
    ['"+7"', 7],
    ['"50%"', 0.5],
    ['"50%%"', 0.005], // divided by 100 for each
    ['"3,5 %",","', 0.035],
    ["12.5", 12.5], // a number is read by its digits
  ])("NUMBERVALUE(%s) is %f", (given, wanted) =>
    expect(worked(`=NUMBERVALUE(${given})`)).toBeCloseTo(wanted, 12),
  )
  it.each([
    ['"1,5"', '"1,5" is no number'], // no group mark is passed over unasked
    ['"1,2,3",","', '"1,2,3" is no number'],
    ['"1.2,3.4",",","."', '"1.2,3.4" is no number'], // a group mark after the decimal mark stays
    ['""', '"" is no number'],
    ['"12 kg"', '"12 kg" is no number'],
    ['"INF"', '"INF" is no number'],
    ['"1",".."', 'The decimal mark must be one character, not ".."'],
    ['"1",".",",."', 'The decimal mark "." must not part groups too'],
  ])("refuses %s", (given, reason) =>
    expect(worked(`=NUMBERVALUE(${given})`)).toMatchObject({code: "#VALUE!", reason}),
  )
})
