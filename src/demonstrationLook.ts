import {readFileSync} from "node:fs"
import type {Look} from "./views/FirstLook"
import {readFile} from "./workbook/file"
import {planOf} from "./workbook/plan"
import {Workbook} from "./workbook/workbook"

/** The plan of the demonstration farm. Run when the planner is built, so that a first visit can read it at once. */
export function demonstrationLook(): Look | null {
  const reading = readFile(readFileSync(`${import.meta.dirname}/../workbooks/hollow-brook-farm.json`, "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  const {name, season} = reading.document
  const plan = planOf(new Workbook(reading.document))
  return plan && {name, season, plan}
}
