import {spawnSync} from "node:child_process"
import {join} from "node:path"
import {describe, expect, it} from "vitest"
import {main} from "../../src/command-line/formula"
import type {Document} from "../../src/workbook/document"
import {run, withFile} from "./shell"

const typed = (heading: string) => ({heading, kind: "typed"}) as const

const farm: Document = {
  name: "Hollow Brook",
  sheets: [
    {
      name: "Root samples",
      group: "Records",
      columns: [typed("Field"), typed("Day"), typed("Sugar")],
      rows: [
        ["North Bench", "2026-02-10", 410],
        ["Long Acre", "2026-02-12", null],
      ],
    },
    {
      name: "Named values",
      group: "Settings",
      names: true,
      columns: [typed("Name"), typed("Value")],
      rows: [["Floor", 300]],
    },
  ],
}

const formula = (...args: readonly string[]) => run(main, args)

describe("formula", () => {
  it("prints each value on a line", async () => {
    // 13 °C is the mean of 19 and 7, which is 8 above the base of 5.
    expect(
      await formula("=SPEAR.HEAT(19,7,5)", "SPEAR.HEAT(19,7,5)*2", '="a"&"b"', "=1=1", "=1=2", "-2.5"),
    ).toEqual({
      out: ["8", "16", "ab", "TRUE", "FALSE", "-2.5"],
      err: [],
      status: 0,
    })
  })

  it("prints numbers in full and without grouping", async () => {
    const {out} = await formula("=1234567.125", "=1/3", "=2^40")
    expect(out[0]).toBe("1234567.125")
    expect(Math.abs(Number(out[1]) - 1 / 3)).toBeLessThan(1e-13)
    expect(out[2]).toBe(String(1024 ** 4))
  })

  it("takes and gives ISO dates", async () => {
    // A week after 2 June is 9 June; 2026 is no leap year.
    const formulas = ['="2026-06-02"+7', "=DATE(2026,2,29)", '="2026-06-09"-"2026-06-02"'] as const
    expect((await formula(...formulas)).out).toEqual(["2026-06-09", "2026-03-01", "7"])
    const {out} = await formula("--json", ...formulas)
    expect(out.map((line) => JSON.parse(line).value)).toEqual(["2026-06-09", "2026-03-01", 7])
  })

  it("takes and gives the dates of our own functions", async () => {
    // The season closes on the earliest of its limit dates.
    const {out} = await formula('=SEASON.CLOSE({"reserve","spear size"},{"2026-06-12","2026-06-09"})')
    expect(out).toEqual(["2026-06-09"])
  })

  it("prints a date beyond the calendar as its number", async () => {
    expect((await formula("=DATE(9999,12,31)", "=DATE(9999,12,31)+1")).out).toEqual(["9999-12-31", "2958466"])
  })

  it("prints an array as rows, its dates too", async () => {
    expect((await formula("={1,2;3,4}", "=TRANSPOSE({1,2})")).out).toEqual(["1\t2", "3\t4", "1", "2"])
    const dates = "=SORT('Root samples'!B1:B2,1,-1)"
    await withFile(farm, async (path) => {
      expect((await formula("--workbook", path, dates)).out).toEqual(["2026-02-12", "2026-02-10"])
      const {out} = await formula("--json", `--workbook=${path}`, "='Root samples'!B1:C2")
      expect(out.map((line) => JSON.parse(line))).toEqual([
        {
          formula: "='Root samples'!B1:C2",
          value: [
            ["2026-02-10", 410],
            ["2026-02-12", null],
          ],
        },
      ])
    })
  })

  it("lets formulas use the sheets and named values of a workbook", async () => {
    await withFile(farm, async (path) => {
      const args = [
        "--workbook",
        path,
        "='Root samples'!C1-Floor",
        "='Root samples'!B1",
        "='Root samples'!C2",
      ]
      expect(await formula(...args)).toEqual({out: ["110", "2026-02-10", ""], err: [], status: 0})
      const {out} = await formula(...args, "--json")
      expect(out.map((line) => JSON.parse(line).value)).toEqual([110, "2026-02-10", null])
    })
  })

  it("asks for the sheet of a reference, or for a workbook", async () => {
    expect(await formula("=A1+1")).toEqual({
      out: [],
      err: ["#REF! A1 points into a sheet, but no workbook is given."],
      status: 1,
    })
    await withFile(farm, async (path) => {
      const {err} = await formula("--workbook", path, "=SUM(C1:C2)")
      expect(err).toEqual(["#REF! C1:C2 does not say on which sheet: write 'Root samples'!C1:C2."])
    })
  })

  it("prints errors as code and sentence, and goes on", async () => {
    expect(await formula("=1/0", "=2", "=FOO(1)", "=SUM(1", "=SPEAR.HEAT(80,7,5)")).toEqual({
      out: ["2"],
      err: [
        "#DIV/0! Divides by zero.",
        "#NAME? There is no function FOO.",
        "#ERROR! This formula cannot be read.",
        "#NUM! Highest air temperature of the day must be from -60 to 60 °C, not 80 °C.",
      ],
      status: 1,
    })
  })

  it("prints errors among the values in JSON, without a full stop", async () => {
    const {out, err, status} = await formula("--json", "1/0", "={1,2}/{1,0}")
    expect(out.map((line) => JSON.parse(line))).toEqual([
      {formula: "1/0", error: "#DIV/0!", reason: "Divides by zero"},
      {formula: "={1,2}/{1,0}", value: [[1, {error: "#DIV/0!", reason: "Divides by zero"}]]},
    ])
    expect([err, status]).toEqual([[], 1])
    expect(await formula("={1,2}/{1,0}")).toEqual({
      out: ["1\t#DIV/0!"],
      err: ["#DIV/0! Divides by zero."],
      status: 1,
    })
  })

  it("reads one formula a line when none is given as argument", async () => {
    const lines = "=1+1\r\n\n  SPEAR.HEAT(19,7,5)\n="
    expect(await run(main, [], lines)).toEqual({
      out: ["2", "8"],
      err: ["#ERROR! This formula cannot be read."],
      status: 1,
    })
    expect((await run(main, ["=7"], lines)).out, "and not otherwise").toEqual(["7"])
  })

  it.each([
    [["--colour"], "There is no option --colour. See --help."],
    [["--json=yes", "=1"], "There is no option --json=yes. See --help."],
    [["=1", "--workbook"], "--workbook needs a value after it. See --help."],
    [[], "There is no formula to work out. See --help."],
    [["  "], "There is no formula to work out. See --help."],
    [["--workbook", "/no/such.json", "=1"], "/no/such.json cannot be read: there is no such file."],
  ])("refuses %j", async (args, sentence) => {
    expect(await formula(...args)).toEqual({out: [], err: [sentence], status: 2})
  })

  it("refuses a damaged workbook with the place of the damage", async () => {
    const content = JSON.stringify({
      fernledger: 1,
      name: "Farm",
      sheets: [{...farm.sheets[0], rows: [[1, {}]]}],
    })
    await withFile(content, async (path) => {
      const {err, status} = await formula("--workbook", path, "=1")
      expect(err).toEqual([expect.stringMatching(/farm\.json: .* sheet 1 “Root samples”, cell B1: .*\.$/)])
      expect(status).toBe(2)
    })
  })

  it("prints help", async () => {
    const {out, status} = await formula("--help", "=1/0")
    for (const option of ["--workbook", "--json", "--help"]) expect(out.join()).toContain(option)
    expect(status).toBe(0)
  })

  it("runs from the shell, with its exit status", {timeout: 60_000}, () => {
    const shell = (args: readonly string[], input = "") => {
      const {stdout, stderr, status} = spawnSync("npm", ["run", "-s", "formula", "--", ...args], {
        cwd: join(import.meta.dirname, "../.."),
        input,
        encoding: "utf8",
        shell: process.platform === "win32",
      })
      return {stdout, stderr, status}
    }
    expect(shell(["=SPEAR.HEAT(19,7,5)", "=1/0"])).toEqual({
      stdout: "8\n",
      stderr: "#DIV/0! Divides by zero.\n",
      status: 1,
    })
    expect(shell([], '="2026-06-02"+7\n\n=1+1\n')).toEqual({stdout: "2026-06-09\n2\n", stderr: "", status: 0})
    expect(shell(["--colour"])).toMatchObject({stdout: "", status: 2})
  })
})
