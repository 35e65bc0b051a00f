import {useState, type FormEvent} from "react"
import {deleteColumns} from "../editor/deletion"
import type {Store} from "../editor/store"
import type {Column} from "../workbook/document"
import type {ColumnChange} from "../workbook/edit"
import {columnLetters} from "../workbook/formula"
import {PanelFrame} from "./PanelFrame"
import {columnWidth} from "./sheetSize"
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
  const column = document.sheets[cell.sheet]!.columns[cell.col]!
  return (
    <Fields
      key={`${cell.sheet}:${cell.col}`}
      store={store}
      column={column}
      col={cell.col}
      onClose={onClose}
    />
  )
}

function Fields({
  store,
  column,
  col,
  onClose,
}: {
  store: Store
  column: Column
  col: number
  onClose: () => void
}) {
  const [heading, setHeading] = useState(column.heading)
  const [unit, setUnit] = useState(column.unit ?? "")
  const [format, setFormat] = useState(FORMATS.findIndex((one) => one.format === column.format))
  const [width, setWidth] = useState(String(Math.round((columnWidth(column, col) / 16) * 10) / 10))
  const [least, setLeast] = useState(column.rule?.least === undefined ? "" : String(column.rule.least))
  const [most, setMost] = useState(column.rule?.most === undefined ? "" : String(column.rule.most))
  const [fault, setFault] = useState("")

  const keep = (event: FormEvent) => {
    event.preventDefault()
    const numbers = {width: Number(width), least: Number(least), most: Number(most)}
    if (heading.trim() === "") return setFault("A column needs a heading.")
    if (!(numbers.width >= 2 && numbers.width <= 60))
      return setFault(`“${width}” is no width: type a number from 2 to 60.`)
    if (least !== "" && !Number.isFinite(numbers.least)) return setFault(`“${least}” is no number.`)
    if (most !== "" && !Number.isFinite(numbers.most)) return setFault(`“${most}” is no number.`)
    if (least !== "" && most !== "" && numbers.least > numbers.most)
      return setFault(`The least, ${least}, is above the most, ${most}.`)
    const rule = {
      ...(least === "" ? {} : {least: numbers.least}),
      ...(most === "" ? {} : {most: numbers.most}),
      ...(column.rule?.usual ? {usual: column.rule.usual} : {}),
    }
    const change: ColumnChange = {
      heading: heading.trim(),
      unit: unit.trim() || undefined,
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
        </fieldset>
        <button>Keep it so</button>
      </form>
      <div className="acts">
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
