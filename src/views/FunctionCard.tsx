import type {CropValue} from "../../functions/cropValue"
import {cropValues, type CropValueName} from "../../functions/cropValues"
import {dayOf} from "../../functions/calendar"
import type {Result} from "../../functions/define"
import {described, worksOf} from "../../functions/described"
import {dateText, numberText} from "../editor/display"
import type {Store} from "../editor/store"
import {sentenceOf} from "../workbook/faults"
import {decimalOf, type Decimal} from "../workbook/region"
import {onScreen} from "../workbook/screenFormula"
import {isFault, type Value} from "../workbook/value"

/** What a formula function is for, what it takes and refuses, an example that is worked out now, and its sources. */
export function FunctionCard({store, name, short = false}: {store: Store; name: string; short?: boolean}) {
  const definition = described.find((one) => one.name === name)
  if (!definition) return null
  const {summary, about, parameters, returns, refuses, example} = definition
  const value = store.workbook.evaluate(example.formula, 0)
  const decimal = decimalOf(store.getState().document)
  const result =
    returns.unit === "date"
      ? shownDate(value as Value, example.gives)
      : shownValue(value as Value, example.gives, decimal)
  const uses = Object.values(parameters).flatMap(({names = []}) => names)
  return (
    <div className="help">
      <h3>{name}</h3>
      <p>{summary}.</p>
      <table>
        <thead>
          <tr>
            <th scope="col">argument</th>
            <th scope="col">what it is</th>
            <th scope="col">takes</th>
          </tr>
        </thead>
        <tbody>
          {Object.entries(parameters).map(([key, {label, takes, absent, repeats}]) => (
            <tr key={key}>
              <th scope="row">{absent ? `[${key}]` : key}</th>
              <td>{label}</td>
              <td>
                {takes}
                {absent && `; left out: ${absent.words || "none"}`}
                {repeats && "; may be given again"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Gives {returns.label.replace(/^./, (letter) => letter.toLowerCase())}
        {returns.unit !== "text" && returns.unit !== "number" && `, ${returns.unit}`}. Example:{" "}
        <code>{onScreen(example.formula, decimal)}</code> gives <b>{result}</b>.
      </p>
      {!short && (
        <>
          {about && <p>{about}</p>}
          {refuses && refuses.length > 0 && <p>Refuses {refuses.join("; ")}.</p>}
          {uses.length > 0 && (
            <>
              <h4>Crop values it uses</h4>
              <ul>
                {uses.map((key) => (
                  <CropValueLine key={key} name={key} decimal={decimal} />
                ))}
              </ul>
            </>
          )}
          <h4>Rests on</h4>
          <ul>
            {worksOf(definition).map(({work, tag}) => (
              <li key={work}>
                {work}. <span className="q">{tag}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      {short && uses.length > 0 && (
        <p className="q">{assumptionOf(uses, decimal)} Change them on the sheet Crop values.</p>
      )}
    </div>
  )
}

function CropValueLine({name, decimal}: {name: string; decimal: Decimal}) {
  const {value, unit, label, tag, from} = cropValues[name as CropValueName] as CropValue
  return (
    <li>
      <b>{name}</b> {numberText(value, undefined, decimal)} {unit === "share" ? "" : unit}: {label}.{" "}
      <span className="q">{`${tag}. ${from}.`}</span>
    </li>
  )
}

function assumptionOf(names: readonly string[], decimal: Decimal): string {
  const told = names.slice(0, 3).map((name) => {
    const {value, tag}: CropValue = cropValues[name as CropValueName]
    return `${name} ${numberText(value, undefined, decimal)} (${tag})`
  })
  return `Uses ${told.join(", ")}${names.length > 3 ? " and more" : ""}.`
}

const shownDate = (value: Value, printed: Result) =>
  typeof value === "number" ? dateText(value) : shownValue(value, printed, ".")

/** The value to as many digits as the example prints. */
const shownValue = (value: Value, printed: Result, decimal: Decimal): string => {
  if (isFault(value)) return `${value.code} ${sentenceOf(value)}`
  if (typeof value === "number")
    return numberText(value, /\.(\d+)$/.exec(String(printed))?.[1]?.length ?? 0, decimal)
  return dayOf(String(value)) === null ? `“${value}”` : dateText(dayOf(String(value))!)
}
