import {describe, expect, it} from "vitest"
import {edge} from "../../../functions/root/edge"
import {cell} from "../cell"

// Ten made-up dormant samples, mg/g. By hand: mean 408.9; squares of the deviations add up to 7174.9, so
// s = √(7174.9/9) = 28.235; t for 9 degrees of freedom and 0.8 is 1.383 (NIST/SEMATECH e-Handbook 1.3.6.7.2);
// 1.383·28.235/√10 = 12.348.
const samples = [412, 388, 455, 430, 367, 441, 402, 398, 420, 376]

describe("edge", () => {
  it("is 408.9 less and plus 12.348 at 0.8", () => {
    // t is printed to 0.0005, which is 0.0045 here.
    expect(Math.abs((edge(samples, -1, 0.8) as number) - (408.9 - 12.348))).toBeLessThanOrEqual(0.005)
    expect(Math.abs((edge(samples, 1, 0.8) as number) - (408.9 + 12.348))).toBeLessThanOrEqual(0.005)
  })
  it("gives the worked interval of NIST", () => {
    // NIST/SEMATECH, e-Handbook of Statistical Methods, 1.3.5.2: 195 observations, mean 9.261460, standard deviation
    // 0.022789; 95 % limits 9.258242 and 9.264679, where s is good to 5 digits. One reading at the mean and 97 at s on
    // either side have just that mean and standard deviation: squares 194·s² over 194.
    const [mean, s] = [9.26146, 0.022789]
    const readings = [mean, ...Array(97).fill(mean - s), ...Array(97).fill(mean + s)]
    expect(Math.abs((edge(readings, -1, 0.95) as number) - 9.258242)).toBeLessThanOrEqual(1.5e-6)
    expect(Math.abs((edge(readings, 1, 0.95) as number) - 9.264679)).toBeLessThanOrEqual(1.5e-6)
  })
  it("of two readings at 0.5 is the readings themselves", () => {
    // t for 1 degree of freedom and 0.5 is 1, and s/√2 is half the distance.
    expect(edge([380, 420], -1, 0.5)).toBeCloseTo(380, 10)
    expect(edge([380, 420], 1, 0.5)).toBeCloseTo(420, 10)
  })
  it("of equal readings is that reading", () => expect(edge([400, 400, 400], 1, 0.99)).toBe(400))

  it("follows the unit of the readings", () => {
    const tenfold = samples.map((sample) => sample * 10)
    expect(edge(tenfold, -1, 0.9)).toBeCloseTo((edge(samples, -1, 0.9) as number) * 10, 8)
  })
  it("refuses a single reading", () => {
    expect(edge([400], -1, 0.8)).toEqual({
      refused: "Only 1 of 2 readings: an interval needs two",
      code: "#N/A",
    })
  })
})

describe("ROOT.EDGE in a cell", () => {
  const column = samples.map((sample) => [sample])
  it("leaves out blanks and takes 0.8 when no confidence is given", () => {
    const whole = cell("=ROOT.EDGE(T!A1:A10,-1,0.8)", column)
    expect(cell("=ROOT.EDGE(T!A:A,-1)", [[null], ...column])).toBe(whole)
    expect(cell("=ROOT.EDGE(T!A1:A10,1)", column)).toBeGreaterThan(whole as number)
  })
  it("refuses a column with one reading, and one with none", () => {
    expect(cell("=ROOT.EDGE(T!A1:A3,1)", [[400], [null], [null]])).toEqual({
      code: "#N/A",
      reason: "Only 1 of 2 readings: an interval needs two",
    })
    expect(cell("=ROOT.EDGE(T!A1:A3,1)")).toEqual({code: "#N/A", reason: "Readings: not measured yet"})
  })
  it.each([
    ["0", "0.8", "Which end must be -1 (lower) or 1 (upper), not 0"],
    ["1", "0", "Confidence must be above 0 and up to 0.9999, not 0"],
    ["1", "80", "Confidence must be above 0 and up to 0.9999, not 80"],
  ])("refuses end %s at confidence %s", (end, confidence, reason) => {
    expect(cell(`=ROOT.EDGE({380,420},${end},${confidence})`)).toEqual({code: "#NUM!", reason})
  })
})
