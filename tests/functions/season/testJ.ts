import type {JointYears} from "../../../functions/season/jointPlan"
import type {JointValues} from "../../../functions/season/jointValues"

/** An invented problem for tests: rows from age 2 on, forced out after 24; a full crop from 5 to 10 and 8 % less each year after. */
const ages = Array.from({length: 23}, (_, row) => row + 2)

export const years: JointYears = {
  ages,
  caps: ages.map((age) => [1, 3, 6][age - 2] ?? 10),
  factors: ages.map((age) => [0.2, 0.5, 0.8][age - 2] ?? 0.92 ** Math.max(0, age - 10)),
}

export const values: JointValues = {
  Yield_full: 12000,
  Cut_saturation: 0.12,
  Draw_per_week: 0.06,
  Refill_share: 0.75,
  Refill_weeks: 16,
  Price: 1,
  Cost_per_unit: 0.62,
  Cost_per_week: 20,
  Fixed_cost: 650,
  Establish_cost: 5000,
  Clear_cost: 250,
  Rest_years: 0,
  Rest_income: 0,
  Other_use: -Infinity,
  Loss_chance: 0,
  Rate: 0.06,
  Start_reserve: 0.6,
  Nodes: 201,
}
