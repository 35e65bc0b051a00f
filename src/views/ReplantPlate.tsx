import {useState} from "react"
import {payback} from "../../functions/stand/payback"
import {isRefusal} from "../../functions/refusal"
import {numberText, percentText, shownIn} from "../editor/display"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import {
  followsCrop,
  lossAfter,
  ratesAbout,
  SHARES,
  weigh,
  whatKeeps,
  whatMoves,
  type Needed,
  type Supposed,
  type Weighed,
} from "../studies/replantWhatIf"
import type {CellAddress, Region} from "../workbook/document"
import type {ReplantField, Replanting} from "../workbook/replant"
import type {ReplantShown} from "./replantShown"
import {NewPlantingYears} from "./pictures/NewPlantingYears"
import {OldAgainstNew} from "./pictures/OldAgainstNew"
import {rangesOf, type OldAgainstNew as Picture} from "./pictures/replantLayout"
import {crossingWords, replantSentence} from "./pictures/replantWords"
import "./week.css"
import "./replant.css"

/** Chosen: the mean of a planting's whole life is surer than one season. */
const NEW_SPREAD = 0.1

/** The page above the sheet of fields: one of them against a new planting on its ground, and how sure that is. */
export function ReplantPlate({
  store,
  shown: {replanting, field},
  onGo,
}: {
  store: Store
  shown: ReplantShown
  /** Goes to a cell and gives it the keyboard. */
  onGo: (at: CellAddress) => void
}) {
  const now = weigh(replanting, field)
  if (!now) return null
  const picture = pictureOf(replanting, field, now)
  return (
    <div className="replant">
      <label className="choice">
        Field{" "}
        <select
          value={field.field}
          onChange={({target}) => {
            const {row} = replanting.fields.find((one) => one.field === target.value)!
            store.turn(choose({sheet: replanting.sheet, row, col: store.getState().cell.col}))
          }}
        >
          {replanting.fields.map((one) => (
            <option key={one.field}>{one.field}</option>
          ))}
        </select>
      </label>
      {field.warning !== "" && <p className="warn">To look at: {field.warning}.</p>}
      <div className="blocks">
        <figure className="wide">
          <figcaption>{crossingWords(picture, field.lease)}</figcaption>
          <p>{replantSentence(picture)}</p>
          <OldAgainstNew picture={picture} onGo={onGo} />
        </figure>
        <SpanOfYears replanting={replanting} field={field} now={now} />
        <WhatIf replanting={replanting} field={field} />
        <WhatMoves replanting={replanting} field={field} />
        <div className="stack">
          <WhatKeeps key={field.field} replanting={replanting} field={field} now={now} />
          <NewPlanting replanting={replanting} field={field} now={now} onGo={onGo} />
        </div>
      </div>
      <p className="small q">Cash comes at the end of its year and is valued on 1 January {field.first}.</p>
      <p className="guide">
        A general guide to judge by. Soil disease on old asparagus ground can cost more than shown: ask your
        extension office, and talk to your lender before you plant on borrowed money.
      </p>
    </div>
  )
}

function pictureOf(replanting: Replanting, field: ReplantField, {level, keepYears}: Weighed): Picture {
  const {unit, number} = shownIn("money/ha", replanting.region)
  const levelAt = (newYield: number) => number(weigh(replanting, field, {newYield})?.level ?? level)
  return {
    field: field.field,
    unit,
    seasons: rangesOf(field, replanting.money.spread, number),
    level: number(level),
    levelLow: levelAt(1 - NEW_SPREAD),
    levelHigh: levelAt(1 + NEW_SPREAD),
    kept: keepYears,
    either: [Math.max(0, field.keepLeast - 1), Math.min(field.keepMost, field.seasons.length - 1)],
  }
}

const whole = (value: number) => numberText(Math.round(value), 0)
const percent = (share: number, {decimal}: Region) =>
  percentText(Math.round(share * 1000) / 1000, "needed", decimal)
const yearOrLater = (weighed: Weighed | null, {first, seasons}: ReplantField) =>
  weighed === null ? "" : (weighed.replantIn ?? `after ${first + seasons.length - 1}`)

interface Props {
  replanting: Replanting
  field: ReplantField
}

/** What only holds without the end of a lease says so. */
const endless = ({lease}: ReplantField) => (lease === null ? "" : ", if the lease had no end")

/** What keeping the field a number of seasons is worth. */
function SpanOfYears({replanting, field, now}: Props & {now: Weighed}) {
  const best = Math.max(...now.worths)
  const {unit, text} = shownIn("money/ha", replanting.region)
  const ground = shownIn("ha", replanting.region)
  const rows = now.worths.slice(0, Math.min(now.worths.length, Math.max(8, now.keepYears + 3)))
  return (
    <section aria-labelledby="span-of-years">
      <h2 id="span-of-years">Span of years{endless(field)}</h2>
      <p>
        Years within {text(replanting.money.little, 0)} {unit} of the best are tinted; the sum is yours to
        set.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col" className="txt">
              Last harvest
            </th>
            <th scope="col">
              worth today <small>{unit}</small>
            </th>
            <th scope="col">
              short of best <small>{unit}</small>
            </th>
            {field.area !== null && (
              <th scope="col">
                whole field{" "}
                <small>
                  {ground.text(field.area, 1)} {ground.unit}
                </small>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((worth, kept) => (
            <tr key={kept} className={best - worth <= replanting.money.little ? "near" : ""}>
              <th scope="row" className="txt">
                {kept === 0 ? "clear now" : field.first + kept - 1}
              </th>
              <td>{text(worth, 0)}</td>
              <td>{worth === best ? "best" : text(worth - best, 0)}</td>
              {field.area !== null && <td>{worth === best ? "" : whole((worth - best) * field.area)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** The first season that is better replanted, by rate and price and by yield and price. */
function WhatIf({replanting, field}: Props) {
  const follows = followsCrop(replanting, field)
  const rates = ratesAbout(replanting.money.rate)
  const shares = follows ? SHARES : ([1] as const)
  return (
    <section aria-labelledby="what-if">
      <h2 id="what-if">How sure: rate, price and yield</h2>
      <p>The first season that is better replanted{endless(field)}.</p>
      <ShareTable
        caption="First season that is better replanted, by rate and price"
        corner="Rate"
        field={field}
        columns={shares.map((price) => [priceWords(price), {price}])}
        rows={rates.map((rate) => [percent(rate, replanting.region), {rate}])}
        isNow={({rate, price = 1}) => rate === replanting.money.rate && price === 1}
        replanting={replanting}
        mustBring
      />
      {follows ? (
        <ShareTable
          caption="First season that is better replanted, by yield of this field and price"
          corner="Yield of this field"
          field={field}
          columns={SHARES.map((price) => [priceWords(price), {price}])}
          rows={SHARES.map((oldYield) => [shareWords(oldYield), {oldYield}])}
          isNow={({oldYield, price}) => oldYield === 1 && price === 1}
          replanting={replanting}
        />
      ) : (
        <p className="small q">
          Net cash is typed for this field or for the new planting: what prices do to it is not known.
        </p>
      )}
    </section>
  )
}

const shareWords = (share: number) =>
  share === 1 ? "as planned" : `${share > 1 ? "+" : "\u2212"}${percentText(Math.abs(share - 1))}`
const priceWords = (price: number) => (price === 1 ? "as planned" : `price ${shareWords(price)}`)

function ShareTable({
  caption,
  corner,
  rows,
  columns,
  isNow,
  replanting,
  field,
  mustBring = false,
}: Props & {
  caption: string
  corner: string
  rows: readonly (readonly [string, Supposed])[]
  columns: readonly (readonly [string, Supposed])[]
  isNow: (supposed: Supposed) => boolean
  /** Whether a column says what a year must bring in each row. */
  mustBring?: boolean
}) {
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={`${caption}, can be scrolled sideways`}>
      <table>
        <caption className="hide">{caption}</caption>
        <thead>
          <tr>
            <th scope="col" className="txt">
              {corner}
            </th>
            {mustBring && <th scope="col">a year must bring</th>}
            {columns.map(([words]) => (
              <th key={words} scope="col">
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([words, row]) => (
            <tr key={words}>
              <th scope="row" className="txt">
                {words}
              </th>
              {mustBring && (
                <td>
                  {shownIn("money/ha", replanting.region).text(weigh(replanting, field, row)?.level ?? 0, 0)}
                </td>
              )}
              {columns.map(([heading, column]) => {
                const supposed = {...row, ...column}
                return (
                  <td key={heading} className={isNow(supposed) ? "now" : ""}>
                    {yearOrLater(weigh(replanting, field, supposed), field)}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Each input alone at both ends of its range, the one that moves most first. */
function WhatMoves({replanting, field}: Props) {
  const {unit, text} = shownIn("money/ha", replanting.region)
  return (
    <section aria-labelledby="what-moves" className="moves">
      <h2 id="what-moves">What moves the answer</h2>
      <p>Each input alone at the low and the high end of its range (chosen){endless(field)}.</p>
      <div
        className="scroll"
        tabIndex={0}
        role="region"
        aria-label="What moves the answer, can be scrolled sideways"
      >
        <table>
          <caption className="hide">
            Effect of each input on the season to replant and on the gain of waiting
          </caption>
          <thead>
            <tr>
              <th scope="col" className="txt">
                Input
              </th>
              <th scope="col">replant in</th>
              <th scope="col">
                gain of waiting <small>{unit}</small>
              </th>
            </tr>
          </thead>
          <tbody>
            {whatMoves(replanting, field).map(({input, range, low, high}) => (
              <tr key={input}>
                <th scope="row" className="txt">
                  {input} <small>{range}</small>
                </th>
                <td>
                  {low.replantIn === high.replantIn
                    ? yearOrLater(low, field)
                    : `${yearOrLater(low, field)} to ${yearOrLater(high, field)}`}
                </td>
                <td>
                  {text(low.waitGain, 0)} to {text(high.waitGain, 0)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

/** From what price, yield, cost or rate on, each by itself, keeping the field as long as asked is best. */
function WhatKeeps({replanting, field, now}: Props & {now: Weighed}) {
  const {seasons, first} = field
  const [asked, setAsked] = useState<number | null>(null)
  const kept = asked ?? Math.min(now.keepYears + 3, seasons.length)
  const choices = Array.from({length: seasons.length + 1}, (_, count) => count)
  const words = (count: number) => (count === 0 ? "clear it now" : `keep it through ${first + count - 1}`)
  const needed = whatKeeps(replanting, field, kept)
  return (
    <section aria-labelledby="what-keeps">
      <h2 id="what-keeps">What would make it right</h2>
      <label className="choice">
        To{" "}
        <select value={kept} onChange={({target}) => setAsked(Number(target.value))}>
          {choices.map((count) => (
            <option key={count} value={count}>
              {words(count)}
            </option>
          ))}
        </select>
      </label>
      {needed.length === 0 ? (
        <p>That is best as planned{endless(field)}.</p>
      ) : (
        <>
          <p>One of these alone, from there on{endless(field)}:</p>
          <table>
            <caption className="hide">What each input would have to be</caption>
            <tbody>
              {needed.map((one) => (
                <tr key={one.input}>
                  <th scope="row" className="txt">
                    {one.input}
                  </th>
                  <td>{neededWords(one, replanting, field)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  )
}

/** "+12 % (3.47 money/kg)", "9.1 %" */
function neededWords({input, from}: Needed, {region}: Replanting, {price}: ReplantField): string {
  if (from === null) return "not by this alone"
  if (input === "Rate a year") return percent(from, region)
  const change = `${from >= 1 ? "+" : "\u2212"}${percent(Math.abs(from - 1), region)}`
  if (input !== "Prices" || price === null) return change
  const {unit, text} = shownIn("money/kg", region)
  return `${change} (${text(from * price, 2)} ${unit})`
}

/** The cash of a new planting on fresh ground by year of its life, and when it is in the black. */
function NewPlanting({
  replanting,
  field,
  now,
  onGo,
}: Props & {now: Weighed; onGo: (at: CellAddress) => void}) {
  const {unit, text} = shownIn("money/ha", replanting.region)
  const years = replanting.newYears
  const black = payback(years.map(({yielding, other}) => yielding + other))
  return (
    <section aria-labelledby="new-planting">
      <h2 id="new-planting">
        {isRefusal(black)
          ? "A new planting is never in the black"
          : `A new planting is in the black in year ${black}`}
      </h2>
      <NewPlantingYears
        years={years.slice(0, 12)}
        black={isRefusal(black) ? null : black}
        region={replanting.region}
        onGo={onGo}
      />
      <p className="small q">
        By year of its life, {unit}, without interest; in the black once all years together bring more than
        they cost.{" "}
        {field.onOldGround
          ? `On the ground of ${field.field} it yields less: the losses stand on Rest and ground, an assumption.`
          : lossAfter(replanting.money.losses, field.rest) > 0
            ? `No loss is counted for asparagus after asparagus: where it follows on the ground of ${field.field}, type yes under Old ground.`
            : ""}{" "}
        Its ground is worth {text(now.ground, 0)} {unit} once cleared.
      </p>
    </section>
  )
}
