import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {pageOf} from "../src/build/oneFile"
import {handedIn, pageWith} from "../src/handed"
import {readFile} from "../src/workbook/file"

const page = pageOf(readFileSync(new URL("../src/index.html", import.meta.url), "utf8"), {
  code: "start()",
  styles: "",
  licences: "",
})
const inside = (workbook: string) => ({look: null, workbook})

it("gives back what was put into the page, whatever it holds", () => {
  expect(handedIn(page)).toBeNull()
  for (const text of ["{}", "</script><script>alert(1)</script>", "<!--", "$& $1 \\u003c", "Spargel 🌱"]) {
    const made = pageWith(page, inside(text))
    expect(handedIn(made)).toEqual(inside(text))
    expect(made.split("<script").length).toBe(page.split("<script").length + 1)
    expect(made.indexOf('id="handed"')).toBeLessThan(made.indexOf('id="program"'))
  }
})

it("puts another workbook in the place of the one that was there", () => {
  const again = pageWith(pageWith(page, inside("first")), inside("second"))
  expect(again).toBe(pageWith(page, inside("second")))
})

it("leaves what is damaged to be refused as a workbook", () => {
  const made = pageWith(page, inside("{}"))
  for (const held of ['{"look":null,"workb', "null", '{"workbook":7}', ""]) {
    const damaged = made.replace(JSON.stringify(inside("{}")), held)
    expect(handedIn(damaged)).toEqual(inside(held))
    expect(readFile(handedIn(damaged)!.workbook)).toMatchObject({refused: expect.any(String)})
  }
})
