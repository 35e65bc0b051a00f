import {useState, type FormEvent} from "react"
import {changeRegion, type RegionChange} from "../editor/commands/region"
import {quantityText} from "../editor/display"
import {keepEditing} from "../editor/editing"
import type {Store} from "../editor/store"
import type {Region} from "../workbook/document"
import {currencyRefused, decimalOf, regionOf} from "../workbook/region"
import {onScreen} from "../workbook/screenFormula"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

/** How numbers, dates, formulas and measures of this workbook are typed and shown. */
export function RegionPanel({store, onClose}: {store: Store; onClose: () => void}) {
  const {document} = useEditor(store)
  const region = regionOf(document)
  /** What is being typed is read as it stands before it could mean something else. */
  const change = (said: RegionChange) => {
    if (keepEditing(store, 0, 0)) store.run(changeRegion(said))
  }
  return (
    <PanelFrame title="Region and units" holds="region-panel" onClose={onClose}>
      <Choices<Region["measures"]>
        legend="Measures"
        name="measures"
        choices={[
          {words: "Metric", value: undefined},
          {words: "US", value: "US"},
        ]}
        chosen={region.measures}
        onChoose={(measures) => change({measures, dates: datesWith(measures, region.dates)})}
      />
      <Choices<Region["decimal"]>
        legend="Decimals"
        name="decimal"
        choices={[
          {words: "point, 1.5", value: undefined},
          {words: "comma, 1,5", value: ","},
        ]}
        chosen={region.decimal}
        onChoose={(decimal) => change({decimal})}
      />
      <Choices<Region["dates"]>
        legend="A date such as 3/4/2026"
        name="dates"
        choices={[
          {words: "is asked about", value: undefined},
          {words: "is 3 April", value: "day first"},
          {words: "is 4 March", value: "month first"},
        ]}
        chosen={region.dates}
        onChoose={(dates) => change({dates})}
      />
      <Currency
        key={region.currency}
        currency={region.currency}
        onChoose={(currency) => change({currency})}
      />
      <p aria-live="polite">{exampleOf(region)}</p>
      <p className="small q">
        Only what is typed and shown changes: what is stored stays metric, so switching back shows every
        number as it was. Formulas work on the stored numbers: <b>a number typed in a formula is metric</b>,
        and so are the units that the help names. Units of the laboratory, such as mg/g, °Brix and MJ/m², stay
        as they are. A unit typed behind a number, such as 12 lb or 5 kg, is turned into that of the cell. A
        ton is one of 2000 lb. Inches may be typed in sixteenths: 7/16. Money is not turned into other money.
      </p>
    </PanelFrame>
  )
}

/** US measures bring dates month first where nothing else was said; with metric ones they are asked about again. */
const datesWith = (measures: Region["measures"], dates: Region["dates"]): Region["dates"] =>
  measures ? (dates ?? "month first") : dates === "month first" ? undefined : dates

interface ChoicesProps<T> {
  legend: string
  name: string
  choices: readonly {readonly words: string; readonly value: T}[]
  chosen: T
  onChoose: (value: T) => void
}

function Choices<T>({legend, name, choices, chosen, onChoose}: ChoicesProps<T>) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      {choices.map(({words, value}) => (
        <label key={words}>
          <input type="radio" name={name} checked={value === chosen} onChange={() => onChoose(value)} />{" "}
          {words}
        </label>
      ))}
    </fieldset>
  )
}

function Currency({
  currency = "",
  onChoose,
}: {
  currency: string | undefined
  onChoose: (currency: string | undefined) => void
}) {
  const [text, setText] = useState(currency)
  const [fault, setFault] = useState("")
  const keep = (event: FormEvent) => {
    event.preventDefault()
    const typed = text.trim() || undefined
    const refused = currencyRefused(typed)
    setFault(refused === null ? "" : `${refused}.`)
    if (refused === null) onChoose(typed)
  }
  return (
    <form onSubmit={keep}>
      <label>
        Money is shown as{" "}
        <input
          value={text}
          size={6}
          maxLength={12}
          placeholder="money"
          onChange={({currentTarget}) => setText(currentTarget.value)}
        />
      </label>{" "}
      <button>Keep it so</button>
      <p className="why" aria-live="polite">
        {fault}
      </p>
    </form>
  )
}

/** What the choice does to a yield, a price and a formula; the numbers are made up. */
function exampleOf(region: Region): string {
  const formula = onScreen("=ROUND(B2*1.5,1)", decimalOf({region}))
  return `So: a yield of ${quantityText(4500, 0, "kg/ha", region)}, a price of ${quantityText(2.1, 2, "money/kg", region)}, a formula ${formula}.`
}
