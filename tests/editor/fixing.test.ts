import {describe, expect, it} from "vitest"
import {startTyping, typeText} from "../../src/editor/editing"
import {fixReference, withNextFixed} from "../../src/editor/fixing"
import {pointStep} from "../../src/editor/pointing"
import {choose} from "../../src/editor/selection"
import {farmStore, inPlan} from "./farm"

/** The texts that come one after another, the caret where "|" stands at first. */
function turns(marked: string, count: number) {
  let [text, caret] = [marked.replace("|", ""), marked.indexOf("|")]
  return Array.from({length: count}, () => {
    const next = withNextFixed(text, caret)!
    text = next.text
    caret = next.place.end
    return text
  })
}

describe("fixing a reference", () => {
  it("goes from free to fixed, to its row, to its column, and round", () => {
    expect(turns("=A1|", 5)).toEqual(["=$A$1", "=A$1", "=$A1", "=A1", "=$A$1"])
  })

  it("takes both corners of a range the way of the first", () => {
    expect(turns("=SUM(B2:|C$9)", 4)).toEqual([
      "=SUM($B$2:$C$9)",
      "=SUM(B$2:C$9)",
      "=SUM($B2:$C9)",
      "=SUM(B2:C9)",
    ])
  })

  it("has two ways for whole columns and rows", () => {
    expect(turns("=SUM(A:B|)", 2)).toEqual(["=SUM($A:$B)", "=SUM(A:B)"])
    expect(turns("=SUM(2:3|)", 2)).toEqual(["=SUM($2:$3)", "=SUM(2:3)"])
  })

  it("keeps the sheet, and takes the reference that the caret touches", () => {
    expect(turns("='Crop values'!|B2+A1", 1)).toEqual(["='Crop values'!$B$2+A1"])
    expect(turns("=|A1+B1", 1)).toEqual(["=$A$1+B1"])
    expect(turns("=A1+|B1", 1)).toEqual(["=A1+$B$1"])
  })

  it.each(["=SUM|(A1)", "=A1 +|", '="A1|"', "A1|", "=12|"])("does nothing at %s", (marked) =>
    expect(withNextFixed(marked.replace("|", ""), marked.indexOf("|"))).toBeNull(),
  )

  it("says how it now reads, and lets it be pointed elsewhere in the same way", () => {
    const store = farmStore()
    store.turn(choose(inPlan("F1")))
    store.turn(startTyping("=2*"))
    store.turn(pointStep(0, -3))
    store.turn(fixReference)
    expect(store.getState()).toMatchObject({editing: {text: "=2*$C$1", caret: 7}, said: "$C$1."})
    store.turn(pointStep(1, 0))
    expect(store.getState().editing!.text).toBe("=2*$C$2")
    store.turn(typeText("=2", 2))
    const before = store.getState().editing
    store.turn(fixReference)
    expect(store.getState().editing).toEqual(before)
  })
})
