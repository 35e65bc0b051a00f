import {describe, expect, it, vi} from "vitest"
import type {Document} from "../../src/workbook/document"
import {readFile, writeFile} from "../../src/workbook/file"
import {digestOf, readingCopy, readingState, withoutReading} from "../../src/workbook/reading"
import {Workbook} from "../../src/workbook/workbook"

const plan: Document = {
  name: "Plan",
  sheets: [
    {
      name: "Cost",
      group: "g",
      columns: [
        {heading: "Money", kind: "typed"},
        {heading: "Third", kind: "worked out", formula: "=A1/3"},
      ],
      rows: [[100, "="]],
    },
  ],
}

async function opened(change: (document: Document) => Document = (document) => document) {
  const copy = await readingCopy(new Workbook(plan), "R.T.", "2026-05-25")
  const reading = readFile(writeFile(change(copy!)))
  if ("refused" in reading) throw new Error(reading.refused)
  return {workbook: new Workbook(reading.document), mark: reading.document.reading!}
}

describe("a digest", () => {
  it("is SHA-256", async () => {
    // FIPS 180-4 (2015), Secure Hash Standard, National Institute of Standards and Technology: the example "abc".
    expect(await digestOf("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")
  })
})

describe("a reading copy", () => {
  it("comes back from its file unchanged, with who made it and when", async () => {
    const {workbook, mark} = await opened()
    expect(mark).toMatchObject({madeBy: "R.T.", on: "2026-05-25"})
    expect(await readingState(workbook, mark)).toBe("unchanged")
    expect(withoutReading(workbook.document)).toEqual(plan)
  })

  it("shows that something written in it was changed", async () => {
    const {workbook, mark} = await opened((copy) => {
      const [cost] = copy.sheets
      return {...copy, sheets: [{...cost!, rows: [[101, "="]]}]}
    })
    expect(await readingState(workbook, mark)).toBe("changed")
  })

  it("shows that other results come out of the same content", async () => {
    const {workbook, mark} = await opened((copy) => ({
      ...copy,
      reading: {...copy.reading!, results: "0".repeat(64)},
    }))
    expect(await readingState(workbook, mark)).toBe("other results")
  })

  it("can neither be made nor checked where the browser makes no digests", async () => {
    const {workbook, mark} = await opened()
    vi.stubGlobal("crypto", {})
    expect(await readingCopy(workbook, "R.T.", "2026-05-25")).toBeNull()
    expect(await readingState(workbook, mark)).toBe("not checked")
    vi.unstubAllGlobals()
  })

  it("becomes a workbook of one's own under a name of its own", async () => {
    const {workbook} = await opened()
    expect(workbook.revise({type: "makeOwn"})).toEqual({...plan, name: "Plan, own copy"})
  })
})
