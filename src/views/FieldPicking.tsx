import {useState} from "react"
import {dayText, quantityText} from "../editor/display"
import {addPicking, pickingLate, pickingOdd, pickingRefused} from "../editor/field"
import {measureOf, storedNumber} from "../editor/measures"
import {regionOf} from "../workbook/region"
import type {FieldJob} from "./fieldJob"
import {FieldAmount, FieldPad} from "./FieldPad"

/** The weight of a picking. */
export function FieldPicking({store, planting, day, onAdd}: FieldJob) {
  const [digits, setDigits] = useState("")
  const [asked, setAsked] = useState("")
  const refused = pickingRefused(store.workbook, planting.name, day)
  const region = regionOf(store.getState().document)
  const measure = measureOf("kg", region)
  const kg = storedNumber(Number(digits), measure)
  const perHectare = planting.area && kg > 0 ? quantityText(kg / planting.area, 0, "kg/ha", region) : ""
  const last = planting.last
    ? `last ${quantityText(planting.last.kg, 0, "kg", region)} on ${dayText(planting.last.day)}`
    : ""
  const add = () => {
    const late = pickingLate(store.workbook, planting.name, day)
    const odd = [late, pickingOdd(planting, kg, region)].filter(Boolean).join(" ")
    if (odd && asked !== odd) return setAsked(odd)
    onAdd((mark) => addPicking(planting.name, day, kg, mark))
    setDigits("")
    setAsked("")
  }
  return (
    <>
      {refused && (
        <p className="field-wait" role="alert">
          {refused}.
        </p>
      )}
      <FieldAmount digits={digits} unit={measure.unit} decimal={region.decimal} beside={[perHectare, last]} />
      <FieldPad
        digits={digits}
        decimal={region.decimal}
        onChange={(next) => {
          setDigits(next)
          setAsked("") // another weight is another question
        }}
      />
      {asked && (
        <p className="field-wait" role="alert">
          {asked}
        </p>
      )}
      <button className="chief field-do" disabled={refused !== null || !(kg > 0)} onClick={add}>
        {asked ? "Add it all the same" : "Add picking"}
      </button>
    </>
  )
}
