import {readOnce} from "../memo"
import {notTwoColumns, readNamedNumbers, type Named} from "../namedNumbers"
import {isRange, type Held, type Parameter} from "../parameters"
import {isRefusal, notYet} from "../refusal"

interface JointValue extends Named {
  readonly label: string
  /** Absent where the planner has to give it. */
  readonly value?: number
}

/** What the joint choice of weeks and replacement needs to be told, by name. No constant of it has a published default. */
export const jointValues = {
  Yield_full: {
    label: "Yield of endless cutting at full reserve and a factor of 1",
    unit: "kg/ha",
    limits: {min: 0},
  },
  Cut_saturation: {
    label: "κ: share of what is left that a week of cutting takes",
    unit: "per week",
    limits: {above: 0},
  },
  Draw_per_week: {
    label: "λ: share of the reserve that a week of cutting draws",
    unit: "per week",
    limits: {min: 0},
  },
  Refill_share: {
    label: "ρ: share of the room that a whole year of fern refills",
    unit: "share",
    limits: {min: 0, max: 1},
  },
  Refill_weeks: {
    label: "w_f: weeks of cutting that leave no time for refilling",
    unit: "weeks",
    limits: {above: 0},
  },
  Price: {label: "Price", unit: "money/kg", limits: {min: 0}},
  Cost_per_unit: {label: "Harvest cost that goes with the yield", unit: "money/kg", limits: {min: 0}},
  Cost_per_week: {label: "Cost of a week of cutting", unit: "money/ha/week", limits: {min: 0}},
  Fixed_cost: {label: "Cost of a year", unit: "money/ha", limits: {min: 0}},
  Establish_cost: {label: "Cost of planting", unit: "money/ha", limits: {min: 0}},
  Clear_cost: {label: "Cost of clearing", unit: "money/ha", limits: {min: 0}, value: 0},
  Rest_years: {
    label: "Years of rest after clearing",
    unit: "years",
    limits: {min: 0, max: 30, whole: true},
    value: 0,
  },
  Rest_income: {label: "Net cash of a year of rest", unit: "money/ha", limits: {}, value: 0},
  Other_use: {
    label: "Worth of cleared ground in another use, which is the least it comes to",
    unit: "money/ha",
    limits: {},
    value: -Infinity,
  },
  Loss_chance: {
    label: "Chance of losing the planting, at the end of each year of the rows",
    unit: "share/year",
    limits: {min: 0, max: 1},
    value: 0,
  },
  Rate: {label: "Rate a year", unit: "share", limits: {above: 0, max: 1}},
  Start_reserve: {label: "Reserve at the start of the first row", unit: "share", limits: {min: 0, max: 1}},
  Nodes: {
    label: "Levels of reserve that are worked out",
    unit: "count",
    limits: {min: 2, max: 2001, whole: true},
    value: 201,
  },
} as const satisfies Record<string, JointValue>

export type JointValueName = keyof typeof jointValues
export type JointValues = Readonly<Record<JointValueName, number>>

const THING = "Joint value"
const entries = Object.entries(jointValues) as unknown as readonly [JointValueName, JointValue][]
const defaults = Object.fromEntries(
  entries.flatMap(([name, {value}]) => (value === undefined ? [] : [[name, value]])),
)

const read = readOnce((rows: readonly (readonly Held[])[]) => {
  const given = readNamedNumbers(THING, jointValues, rows)
  if (isRefusal(given)) return given
  const values = {...defaults, ...given}
  const missing = entries.find(([name]) => values[name] === undefined)
  return missing
    ? notYet(`${THING} ${missing[0]} (${missing[1].label.toLowerCase()}) is not given yet`)
    : (values as JointValues)
})

/** A range of two columns, name and number. Those without a default have to be there. */
export const jointValuesGiven: Parameter<JointValues> = {
  label: "Joint values",
  unit: "names and numbers",
  takes: `a range of two columns, name and number: ${entries.map(([name]) => name).join(", ")}`,
  isRange: true,
  read: (given) => (isRange(given) ? read(given) : notTwoColumns(THING)),
}
