import {execFileSync, execSync} from "node:child_process"
import {existsSync} from "node:fs"
import {beforeAll, describe, expect, it} from "vitest"
import {exports} from "../../package.json"

const top = `${import.meta.dirname}/../..`

/** What a program in plain JavaScript prints that has this package and the engine among its own. */
const run = (program: string) =>
  execFileSync(process.execPath, ["--input-type=module", "--eval", program], {cwd: top, encoding: "utf8"})

describe("the built formula functions", () => {
  beforeAll(() => execSync("npm run -s build:functions", {cwd: top, stdio: "pipe"}), 60_000)

  it("calculate in another program's engine after one call", () => {
    const printed = run(`
      import {HyperFormula} from "hyperformula"
      import {registerCatalogue} from "fernledger/functions"
      registerCatalogue()
      const engine = HyperFormula.buildFromArray([["=SPEAR.HEAT(19,7,5)"]], {licenseKey: "gpl-v3"})
      console.log(engine.getCellValue({sheet: 0, row: 0, col: 0}))
    `)
    // Mean of 19 and 7 is 13, less the base of 5.
    expect(printed.trim()).toBe("8")
  })
  it("add the standard's own after another call", () => {
    const printed = run(`
      import {HyperFormula} from "hyperformula"
      import {registerStandardFunctions, standardFunctions} from "fernledger/functions"
      registerStandardFunctions()
      const engine = HyperFormula.buildFromArray([["=INT(-1.5)"]], {licenseKey: "gpl-v3"})
      console.log(engine.getCellValue({sheet: 0, row: 0, col: 0}), standardFunctions.some(({name}) => name === "INT"))
    `)
    expect(printed.trim()).toBe("-2 true")
  })
  it("list themselves with their summaries", () => {
    const printed = run(`
      import {catalogue} from "fernledger/functions"
      console.log(catalogue.filter(({name, summary}) => name && summary).map(({name}) => name).join())
    `)
    expect(printed.trim().split(",")).toContain("SPEAR.HEAT")
  })
  it("come with their types", () => {
    expect(Object.values(exports["./functions"]).filter((file) => !existsSync(`${top}/${file}`))).toEqual([])
  })
})
