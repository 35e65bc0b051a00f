import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

// Yield, field, weeks cut; invented.
const rows = [
  [4100, "Long Acre", 8],
  [3600, "Long Acre", 6],
  [5200, "Brook Field", 8],
  [null, "Long Acre", 8],
  ["frost", "Long Acre", 9],
  [2400, "long acre", 5],
]

describe("AVERAGEIFS", () => {
  it.each([
    // By hand from the rows above; letters count the same in either case, and text and blanks are not averaged.
    ['T!B1:B6,"Long Acre"', (4100 + 3600 + 2400) / 3],
    ['T!B1:B6,"Long*",T!C1:C6,">5"', (4100 + 3600) / 2],
    ['T!B1:B6,"<>Long Acre"', 5200],
    ["T!C1:C6,8", (4100 + 5200) / 2],
    ['T!D1:D6,"="', (4100 + 3600 + 5200 + 2400) / 4], // where there is a blank
    ['T!C1:C6,">=6",T!C1:C6,"<8"', 3600],
    ["T!C1:C6,T!C2", 3600],
    ['T!A1:A6,">2400",T!B1:B6,"L*"', (4100 + 3600) / 2],
  ])("is the mean of the numbers where all conditions hold: %s", (conditions, mean) =>
    expect(worked(`=AVERAGEIFS(T!A1:A6,${conditions})`, rows)).toBeCloseTo(mean, 9),
  )

  it("is SUMIFS over the count of the numbers that meet the conditions", () => {
    for (const conditions of ['T!B1:B6,"Long Acre"', 'T!C1:C6,">5",T!B1:B6,"*a*"', 'T!B1:B6,"?rook*"'])
      expect(
        worked(
          `=AVERAGEIFS(T!A1:A6,${conditions})-SUMIFS(T!A1:A6,${conditions})/COUNTIFS(T!A1:A6,">0",${conditions})`,
          rows,
        ),
      ).toBeCloseTo(0, 9)
  })
  it("is AVERAGEIF when there is one condition", () =>
    expect(worked('=AVERAGEIFS(T!A1:A6,T!C1:C6,">5")-AVERAGEIF(T!C1:C6,">5",T!A1:A6)', rows)).toBe(0))

  it("follows an edit of a number, of a cell that a condition is for, and of the condition", () => {
    const {valueOf, enter} = opened(
      ['=AVERAGEIFS(T!A1:A3,T!B1:B3,T!C1,T!A1:A3,">0")'],
      [
        [10, "a", "a"],
        [20, "a", null],
        [60, "b", null],
      ],
    )
    expect(valueOf()).toBe(15)
    enter("A1", 40)
    expect(valueOf()).toBe(30)
    enter("B3", "a")
    expect(valueOf()).toBe(40)
    enter("C1", "b")
    expect(valueOf()).toMatchObject({code: "#DIV/0!", reason: "No number meets all the conditions"})
    enter("B1", "b")
    expect(valueOf()).toBe(40)
  })
  it("follows the formulas that its ranges hold", () => {
    const {valueOf, enter} = opened(
      ['=AVERAGEIFS(T!B1:B2,T!A1:A2,">0")'],
      [
        [1, "=A1*10", null],
        [1, "=A2*20", null],
      ],
    )
    expect(valueOf()).toBe(15)
    enter("A1", 3)
    expect(valueOf()).toBe(25)
  })
  it("passes on an error among what is averaged, and none from elsewhere", () => {
    const faulty = [
      ["=1/0", 1, 5],
      [10, 2, "=NA()"],
    ]
    expect(worked("=AVERAGEIFS(T!A1:A2,T!B1:B2,1)", faulty)).toMatchObject({code: "#DIV/0!", reason: ""})
    expect(worked("=AVERAGEIFS(T!A1:A2,T!B1:B2,2)", faulty)).toBe(10)
    expect(worked("=AVERAGEIFS(T!A1:A2,T!C1:C2,5,T!B1:B2,2)", faulty)).toMatchObject({
      reason: "No number meets all the conditions",
    })
  })
  it("refuses ranges of another size, a condition without its range, and one that cannot be read", () => {
    expect(worked("=AVERAGEIFS(T!A1:A6,T!B1:B5,1)", rows)).toMatchObject({
      code: "#VALUE!",
      reason: "What is averaged has 6 × 1 cells and a range 5 × 1: sizes differ",
    })
    expect(worked("=AVERAGEIFS(T!A1:A6,T!B1:B6,1,T!C1:C6)", rows)).toMatchObject({
      reason: "Wrong number of arguments.",
    })
    expect(worked('=AVERAGEIFS(T!A1:A6,T!B1:B6,">x")', rows)).toMatchObject({
      code: "#VALUE!",
      reason: 'Condition cannot be read: the text ">x"',
    })
  })
})
