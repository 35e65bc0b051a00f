import {useState, type FormEvent} from "react"
import {formatCells, keepColumns} from "../editor/commands/columns"
import {deleteColumns} from "../editor/deletion"
import {withDecimal} from "../editor/display"
import {measureOf, shownNumber, storedNumber, storedUnit} from "../editor/measures"
import type {Store} from "../editor/store"
import {keptInView, type Column, type Region} from "../workbook/document"
import type {ColumnChange} from "../workbook/edit"
import {extraAt} from "../workbook/extras"
import {columnLetters} from "../workbook/formula"
import {decimalOf, regionOf} from "../workbook/region"
import {PanelFrame} from "./PanelFrame"
import {columnWidth, REM} from "./sheetSize"
import {useEditor} from "./useEditor"

const FORMATS: readonly {readonly words: string; readonly format: Column["format"]}[] = [
  {words: "as it is", format: undefined},
  {words: "words", format: "text"},
  {words: "whole numbers", format: 0},
  ...[1, 2, 3, 4].map((decimals) => ({
    words: `${decimals} decimal${decimals > 1 ? "s" : ""}`,
    format: decimals,
  })),
  {words: "per cent", format: "share"},
  {words: "day and month", format: "day"},
  {words: "day, month and year", format: "date"},
]

/** What the column of the chosen cell is called, how it is shown, how wide it is, and what may be typed in it. */
export function ColumnPanel({store, onClose}: {store: Store; onClose: () => void}) {
  const {document, cell} = useEditor(store)
  const sheet = document.sheets[cell.sheet]!
  const column = sheet.columns[cell.col]!
  const format = extraAt(document, cell)?.format
  return (
    <Fields
      key={`${cell.sheet}:${cell.col}`}
      store={store}
      kept={keptInView(sheet)}
      own={Math.max(
        0,
        FORMATS.findIndex((one) => one.format === format),
      )}
      column={column}
      col={cell.col}
      onClose={onClose}
    />
  )
}

function Fields({
  store,
  kept,
  own,
  column,
  col,
  onClose,
}: {
  store: Store
  /** How many columns stay in view. */
  kept: number
  /** The place among the formats of the chosen cell's own one; 0 where it has none. */
  own: number
  column: Column
  col: number
  onClose: () => void
}) {
  const region = regionOf(store.getState().document)
  const shown = shownOf(column, col, region)
  // What is typed holds for the column as it is: once that changes, or goes back, the fields show it.
  const [typed, setTyped] = useState<{of: Column; fields: Partial<Shown>}>({of: column, fields: {}})
  const [told, setTold] = useState({of: column, words: ""})
  const fields = {...shown, ...(typed.of === column ? typed.fields : {})}
  const {heading, unit, format, width, least, most, usualFrom, usualTo, nearOthers, asks, words} = fields
  const type = (more: Partial<Shown>) =>
    setTyped({of: column, fields: {...(typed.of === column ? typed.fields : {}), ...more}})
  const setFault = (words: string) => setTold({of: column, words})
  const fault = told.of === column ? told.words : ""

  const keep = (event: FormEvent) => {
    event.preventDefault()
    const newUnit = unit === shown.unit ? column.unit : storedUnit(unit.trim(), region) || undefined
    // A limit that stays as it is shown stays as it is stored.
    const limit = (text: string, was: number | undefined) =>
      was !== undefined && newUnit === column.unit && text === limitText(was, column.unit, region)
        ? was
        : limitOf(text, newUnit, region)
    const numbers = {
      width: Number(width.replace(",", ".")),
      least: limit(least, column.rule?.least),
      most: limit(most, column.rule?.most),
    }
    if (heading.trim() === "") return setFault("A column needs a heading.")
    if (!(numbers.width >= 2 && numbers.width <= 60))
      return setFault(`“${width}” is no width: type a number from 2 to 60.`)
    if (least !== "" && !Number.isFinite(numbers.least)) return setFault(`“${least}” is no number.`)
    if (most !== "" && !Number.isFinite(numbers.most)) return setFault(`“${most}” is no number.`)
    if (least !== "" && most !== "" && numbers.least > numbers.most)
      return setFault(`The least, ${least}, is above the most, ${most}.`)
    const usual: [number, number] = [
      limit(usualFrom, column.rule?.usual?.[0]),
      limit(usualTo, column.rule?.usual?.[1]),
    ]
    const hasUsual = usualFrom !== "" || usualTo !== ""
    if (
      hasUsual &&
      !(usualFrom !== "" && usualTo !== "" && usual.every(Number.isFinite) && usual[0] <= usual[1])
    )
      return setFault("What is usual needs two numbers, the lower first.")
    const listed = [...new Set(words.split("\n").map((word) => word.trim()))].filter(Boolean)
    const rule = {
      ...(listed.length ? {words: listed} : {}),
      ...(least === "" ? {} : {least: numbers.least}),
      ...(most === "" ? {} : {most: numbers.most}),
      ...(hasUsual ? {usual} : {}),
      ...(nearOthers ? {nearOthers: true as const} : {}),
      ...(asks ? {} : {onlyMarks: true as const}),
    }
    const change: ColumnChange = {
      heading: heading.trim(),
      unit: newUnit,
      format: format < 0 ? column.format : FORMATS[format]!.format,
      width: numbers.width,
      rule: Object.keys(rule).length ? rule : undefined,
    }
    setFault("")
    const {sheet} = store.getState().cell
    setTyped({of: column, fields: {}})
    store.run(() => ({type: "changeColumn", sheet, col, change}))
  }

  return (
    <PanelFrame
      title={`Column ${columnLetters(col)}: ${column.heading}`}
      holds="column-panel"
      onClose={onClose}
    >
      {column.about && <p>{column.about}</p>}
      <form onSubmit={keep}>
        <label>
          Heading{" "}
          <input value={heading} onChange={({currentTarget}) => type({heading: currentTarget.value})} />
        </label>
        <label>
          Unit{" "}
          <input value={unit} size={10} onChange={({currentTarget}) => type({unit: currentTarget.value})} />
        </label>
        <label>
          Shown as{" "}
          <select value={format} onChange={({currentTarget}) => type({format: Number(currentTarget.value)})}>
            {format < 0 && <option value={-1}>{String(column.format)} decimals</option>}
            {FORMATS.map(({words}, i) => (
              <option key={words} value={i}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label>
          Width{" "}
          <input
            value={width}
            size={5}
            inputMode="decimal"
            onChange={({currentTarget}) => type({width: currentTarget.value})}
          />
        </label>
        <fieldset>
          <legend>What may be typed</legend>
          <label>
            from{" "}
            <input
              value={least}
              size={7}
              inputMode="decimal"
              onChange={({currentTarget}) => type({least: currentTarget.value})}
            />
          </label>{" "}
          <label>
            to{" "}
            <input
              value={most}
              size={7}
              inputMode="decimal"
              onChange={({currentTarget}) => type({most: currentTarget.value})}
            />
          </label>
          <p className="small q">Blank means any number. What stands there already stays.</p>
          <label>
            or one of these words, one on each line{" "}
            <textarea
              value={words}
              rows={3}
              onChange={({currentTarget}) => type({words: currentTarget.value})}
            />
          </label>
        </fieldset>
        <fieldset>
          <legend>What is questioned</legend>
          <label>
            below{" "}
            <input
              value={usualFrom}
              size={7}
              inputMode="decimal"
              onChange={({currentTarget}) => type({usualFrom: currentTarget.value})}
            />
          </label>{" "}
          <label>
            or above{" "}
            <input
              value={usualTo}
              size={7}
              inputMode="decimal"
              onChange={({currentTarget}) => type({usualTo: currentTarget.value})}
            />
          </label>
          <label className="check">
            <input
              type="checkbox"
              checked={nearOthers}
              onChange={({currentTarget}) => type({nearOthers: currentTarget.checked})}
            />
            far from the other rows of the same name
          </label>
          <label className="check">
            <input
              type="checkbox"
              checked={asks}
              onChange={({currentTarget}) => type({asks: currentTarget.checked})}
            />
            ask for a reason when one is typed, not only mark it
          </label>
        </fieldset>
        <button>Keep it so</button>
      </form>
      <label>
        Format of the chosen cells alone{" "}
        <select
          value={own}
          onChange={({currentTarget}) =>
            store.run(formatCells(FORMATS[Number(currentTarget.value)]?.format ?? null))
          }
        >
          {FORMATS.map(({words, format}, i) => (
            <option key={words} value={i}>
              {format === undefined ? "as their columns" : words}
            </option>
          ))}
        </select>
      </label>
      <div className="acts">
        <button onClick={() => store.run(keepColumns(kept === col + 1 ? 0 : col + 1))}>
          {kept === col + 1 ? "Keep no columns in view" : "Keep the columns up to this one in view"}
        </button>
        <button
          onClick={() => {
            const {sheet} = store.getState().cell
            store.run(() => ({type: "insertColumns", sheet, before: col, count: 1}))
          }}
        >
          Put a column in before it
        </button>
        <button onClick={() => deleteColumns(store)}>Delete the column</button>
      </div>
      <p className="why" aria-live="polite">
        {fault}
      </p>
    </PanelFrame>
  )
}

/** What the fields of the form show. */
interface Shown {
  readonly heading: string
  readonly unit: string
  /** The place among the formats; -1 for one that is not listed. */
  readonly format: number
  readonly width: string
  readonly least: string
  readonly most: string
  readonly usualFrom: string
  readonly usualTo: string
  readonly nearOthers: boolean
  readonly asks: boolean
  readonly words: string
}

function shownOf(column: Column, col: number, region: Region): Shown {
  const {heading, unit, format, rule = {}} = column
  const limit = (one: number | undefined) => (one === undefined ? "" : limitText(one, unit, region))
  return {
    heading,
    unit: measureOf(unit, region).unit,
    format: FORMATS.findIndex((one) => one.format === format),
    width: String(Math.round((columnWidth(column, col) / REM) * 10) / 10),
    least: limit(rule.least),
    most: limit(rule.most),
    usualFrom: limit(rule.usual?.[0]),
    usualTo: limit(rule.usual?.[1]),
    nearOthers: rule.nearOthers ?? false,
    asks: !rule.onlyMarks,
    words: (rule.words ?? []).join("\n"),
  }
}

const limitText = (limit: number, unit: string | undefined, region: Region) =>
  withDecimal(String(shownNumber(limit, measureOf(unit, region))), decimalOf({region}))

/** A limit as it is stored; NaN when the text is no number. */
const limitOf = (text: string, unit: string | undefined, region: Region) =>
  storedNumber(Number(region.decimal === "," ? text.replace(",", ".") : text), measureOf(unit, region))
