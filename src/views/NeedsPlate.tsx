import {memo} from "react"
import {dayText, numberText} from "../editor/display"
import type {WeekNeeds} from "../workbook/season"
import type {Store} from "../editor/store"
import type {ColdChain} from "../workbook/coldChain"
import type {CellAddress, Region} from "../workbook/document"
import {loadsWords, storeWords} from "./coldChainWords"
import {pickedOn} from "../workbook/pickingPlan"
import {MovesApart} from "./MovesApart"
import {NeedsByWeek} from "./pictures/NeedsByWeek"
import {weightText} from "./pictures/calendarWords"
import {inARow, notKnownNeeds, shortTitle} from "./pictures/weekWords"
import "./week.css"

/** "26 May: Well Field 1.7 t and Long Acre 1.0 t." */
function madeWords({workbook}: Store, day: number, region: Region): string {
  const picked = pickedOn(workbook, day).map(({planting, kg}) => `${planting} ${weightText(kg, region)}`)
  return picked.length ? `${dayText(day)}: ${inARow(picked)}.` : ""
}

/** The day of a week, from its Monday, on which most is picked. */
function heaviestDay({workbook}: Store, from: number): number {
  const days = Array.from({length: 7}, (_, i) => from + i)
  const loads = days.map((day) => pickedOn(workbook, day).reduce((sum, {kg}) => sum + kg, 0))
  return days[loads.indexOf(Math.max(...loads))]!
}

/** Hands and cold by week, each against what is at hand. The sheet below is their table. */
export const NeedsPlate = memo(function NeedsPlate({
  store,
  needs,
  uncounted,
  cold,
  asOf,
  region,
  onGo,
}: {
  store: Store
  needs: readonly WeekNeeds[]
  /** Plantings that are cut and have no part in the needs. */
  uncounted: readonly string[]
  cold: ColdChain | null
  asOf: number | null
  region: Region
  onGo: (at: CellAddress) => void
}) {
  const {decimal = "."} = region
  if (needs.length === 0) return null
  const isPast = ({from}: WeekNeeds) => asOf !== null && from + 7 <= asOf
  const coming = needs.filter((one) => !isPast(one))
  const forWhat = uncounted.length ? "what is counted" : "every week to come"
  const whole = (value: number) => numberText(value, 0, decimal)
  const tenths = (value: number) => numberText(value, 1, decimal)
  return (
    <div className="needs-plate">
      <NeedsByWeek
        title={shortTitle(
          coming,
          (short) => `${whole(short)} ${short === 1 ? "cutter" : "cutters"} short`,
          whole,
          `Cutters enough for ${forWhat}`,
        )}
        measures="cutters on the busiest day of each week"
        needs={needs.map((one) => ({
          week: one.week,
          needed: one.cutters,
          atHand: one.booked,
          at: one.cells["cutters needed"],
          made: () => (one.busiest === null ? "" : madeWords(store, one.busiest, region)),
          isPast: isPast(one),
        }))}
        decimals={0}
        decimal={decimal}
        atHandWords="booked"
        onGo={onGo}
      />
      <NeedsByWeek
        title={shortTitle(
          coming.map(({week, over}) => ({week, short: over})),
          (over) => `${tenths(over)} kW over what is fitted`,
          tenths,
          `Cold enough for ${forWhat}`,
        )}
        measures="kW on the heaviest day of each week"
        needs={needs.map((one) => ({
          week: one.week,
          needed: one.load,
          atHand: one.fitted,
          at: one.cells["load needed"],
          made: () => madeWords(store, heaviestDay(store, one.from), region),
          isPast: isPast(one),
        }))}
        decimals={1}
        decimal={decimal}
        atHandWords="kW fitted"
        onGo={onGo}
      />
      <p className="small q">
        Filled: past. Outlined: to come. Hatched: short. Days of cutting shows what makes each day; a light
        picking is set by walking, a heavy one by weight.
      </p>
      {cold && (
        <p>
          {storeWords(cold, region)} {loadsWords(cold, region)}
        </p>
      )}
      <MovesApart store={store} region={region} unknown={notKnownNeeds(coming, uncounted)} />
      <p className="guide">
        Long knives, night cutting, heat and long shifts hurt people: keep to the hours, breaks and heat rules
        of your local code. Keep wash water clean by your food safety rules.
      </p>
    </div>
  )
})
