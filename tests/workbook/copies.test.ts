import {expect, it} from "vitest"
import {markedCopy, sharedCopy} from "../../src/workbook/copies"
import {readFile, writeFile} from "../../src/workbook/file"
import {documentOf, sheet} from "./documents"

const workbook = documentOf(sheet("Plan", ["Planting"], [["Long Acre"]]))
const id = (letter: string) => letter.repeat(32)
const mark = (letter: string) => ({id: id(letter), kept: "2026-05-25T14:02:00.000Z"})

it("finds the latest file copy that two workbooks both go back to", () => {
  // One keeps a and b; the other opens b, keeps c, and goes on to d.
  const b = markedCopy(workbook, [id("a")], mark("b"))
  const d = markedCopy(b, [id("b"), id("c")], mark("d"))
  expect(sharedCopy(d, new Set([id("a"), id("b")]))).toBe(id("b"))
  expect(sharedCopy(d, new Set([id("a")]))).toBe(id("a"))
  expect(sharedCopy(d, new Set([id("d"), id("e")]))).toBeNull()
  expect(sharedCopy(workbook, new Set([id("a")]))).toBeNull()
})

it("keeps the mark in the file", () => {
  const copy = markedCopy(workbook, [id("a")], {...mark("b"), by: "RT"})
  expect(readFile(writeFile(copy))).toEqual({document: copy})
})

it("names the latest hundred of the copies before it, and no more", () => {
  const many = Array.from({length: 103}, (_, i) => String(i).padStart(32, "0"))
  const {after} = markedCopy(workbook, many, mark("b")).copy!
  expect(after).toEqual(many.slice(3))
})
