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
  const [heading, setHeading] = useState(column.heading)
  const region = regionOf(store.getState().document)
  const shownUnit = measureOf(column.unit, region).unit
  const [unit, setUnit] = useState(shownUnit)
  const [format, setFormat] = useState(FORMATS.findIndex((one) => one.format === column.format))
  const [width, setWidth] = useState(String(Math.round((columnWidth(column, col) / REM) * 10) / 10))
  const shownLimit = (limit: number | undefined) =>
    limit === undefined ? "" : limitText(limit, column.unit, region)
  const [least, setLeast] = useState(shownLimit(column.rule?.least))
  const [most, setMost] = useState(shownLimit(column.rule?.most))
  const [usualFrom, setUsualFrom] = useState(shownLimit(column.rule?.usual?.[0]))
  const [usualTo, setUsualTo] = useState(shownLimit(column.rule?.usual?.[1]))
  const [nearOthers, setNearOthers] = useState(column.rule?.nearOthers ?? false)
  const [asks, setAsks] = useState(!column.rule?.onlyMarks)
  const [words, setWords] = useState((column.rule?.words ?? []).join("\n"))
  const [fault, setFault] = useState("")

  const keep = (event: FormEvent) => {
    event.preventDefault()
    const newUnit = unit === shownUnit ? column.unit : storedUnit(unit.trim(), region) || undefined
    // A limit that stays as it is shown stays as it is stored.
    const limit = (text: string, was: number | undefined) =>
      was !== undefined && newUnit === column.unit && text === shownLimit(was)
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
          Heading <input value={heading} onChange={({currentTarget}) => setHeading(currentTarget.value)} />
        </label>
        <label>
          Unit <input value={unit} size={10} onChange={({currentTarget}) => setUnit(currentTarget.value)} />
        </label>
        <label>
          Shown as{" "}
          <select value={format} onChange={({currentTarget}) => setFormat(Number(currentTarget.value))}>
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
            onChange={({currentTarget}) => setWidth(currentTarget.value)}
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
              onChange={({currentTarget}) => setLeast(currentTarget.value)}
            />
          </label>{" "}
          <label>
            to{" "}
            <input
              value={most}
              size={7}
              inputMode="decimal"
              onChange={({currentTarget}) => setMost(currentTarget.value)}
            />
          </label>
          <p className="small q">Blank means any number. What stands there already stays.</p>
          <label>
            or one of these words, one on each line{" "}
            <textarea value={words} rows={3} onChange={({currentTarget}) => setWords(currentTarget.value)} />
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
              onChange={({currentTarget}) => setUsualFrom(currentTarget.value)}
            />
          </label>{" "}
          <label>
            or above{" "}
            <input
              value={usualTo}
              size={7}
              inputMode="decimal"
              onChange={({currentTarget}) => setUsualTo(currentTarget.value)}
            />
          </label>
          <label className="check">
            <input
              type="checkbox"
              checked={nearOthers}
              onChange={({currentTarget}) => setNearOthers(currentTarget.checked)}
            />
            far from the other rows of the same name
          </label>
          <label className="check">
            <input
              type="checkbox"
              checked={asks}
              onChange={({currentTarget}) => setAsks(currentTarget.checked)}
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

const limitText = (limit: number, unit: string | undefined, region: Region) =>
  withDecimal(String(shownNumber(limit, measureOf(unit, region))), decimalOf({region}))

/** A limit as it is stored; NaN when the text is no number. */
const limitOf = (text: string, unit: string | undefined, region: Region) =>
  storedNumber(Number(region.decimal === "," ? text.replace(",", ".") : text), measureOf(unit, region))
