import {useState, type FormEvent} from "react"
import {addPlanting, plantingRefused} from "../editor/commands/plantings"
import {readEntry} from "../editor/entry"
import {measureOf} from "../editor/measures"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import {sheetWith} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

/** How the area of a planting is read. */
const AREA = {heading: "Area", unit: "ha", kind: "typed", format: 2, rule: {least: 0}} as const

interface Props {
  store: Store
  onClose: () => void
}

/** Adds a planting to every sheet that has a row for each, after the one whose row is chosen. */
export function PlantingPanel({store, onClose}: Props) {
  const {document, cell} = useEditor(store)
  const [name, setName] = useState("")
  const [planted, setPlanted] = useState("")
  const [area, setArea] = useState("")
  const [opens, setOpens] = useState("")
  const [said, setSaid] = useState("")
  const region = regionOf(document)
  const sheet = document.sheets[cell.sheet]!
  const key = sheet.rowEach === "planting" ? sheet.rows[cell.row]?.[0] : null
  const after = typeof key === "string" ? key : null
  const add = (event: FormEvent) => {
    event.preventDefault()
    const ground = readEntry(area, AREA, 0, () => null, {region})
    const refused = plantingRefused(document, name) ?? ("refused" in ground ? ground.refused : null)
    setSaid(refused === null ? "" : `${refused}.`)
    if (refused !== null || !("content" in ground)) return
    const size = typeof ground.content === "number" ? ground.content : null
    const planting = {name: name.trim(), planted: planted || null, area: size, opens: opens || null}
    if (!store.run(addPlanting(planting, after))) return
    setSaid(
      `${planting.name} stands on every sheet of plantings now. Type what else is known of it; Season plan shows when it closes.`,
    )
    for (const blank of [setName, setPlanted, setArea, setOpens]) blank("") // none of it is the next one's
    const plantings = sheetWith(store.getState().document, "name of planting")
    const row = store.getState().document.sheets[plantings]!.rows.findIndex(([one]) => one === planting.name)
    store.turn(choose({sheet: plantings, row, col: 0}))
  }
  return (
    <PanelFrame title="Add a planting" holds="column-panel" onClose={onClose}>
      <p>
        It gets a row on every sheet that has one for each planting
        {after === null ? ", at the end" : `, after ${after}`}.
      </p>
      <form onSubmit={add}>
        <label>
          Name <input value={name} onChange={({currentTarget}) => setName(currentTarget.value)} />
        </label>
        <DayField label="Planted" day={planted} onChange={setPlanted} />
        <label>
          Area, {measureOf(AREA.unit, region).unit}{" "}
          <input
            value={area}
            size={6}
            inputMode="decimal"
            onChange={({currentTarget}) => setArea(currentTarget.value)}
          />
        </label>
        <DayField label="First day of cutting" day={opens} onChange={setOpens} />
        <button className="chief">Add it</button>
      </form>
      <p className="why" aria-live="polite">
        {said}
      </p>
    </PanelFrame>
  )
}

interface DayFieldProps {
  label: string
  /** In ISO form; "" while none is typed. */
  day: string
  onChange: (day: string) => void
}

const DayField = ({label, day, onChange}: DayFieldProps) => (
  <label>
    {label}{" "}
    <input
      type="date"
      min="1900-01-01"
      max="2200-12-31"
      value={day}
      onChange={({currentTarget}) => onChange(currentTarget.value)}
    />
  </label>
)
