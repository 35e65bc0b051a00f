import {useState} from "react"
import {numberText} from "../editor/display"
import {addSample, nextPlant, sampleOdd} from "../editor/field"
import {regionOf} from "../workbook/region"
import type {FieldJob} from "./fieldJob"
import {FieldAmount, FieldPad} from "./FieldPad"

/** A root sample, plant by plant: the refractometer's reading or the laboratory's sugar. */
export function FieldSample({store, planting, day, onAdd}: FieldJob) {
  const [digits, setDigits] = useState("")
  const [measured, setMeasured] = useState<"sample reading" | "sample sugar">("sample reading")
  const [asked, setAsked] = useState("")
  const {document} = store.getState()
  const {decimal} = regionOf(document)
  const plant = nextPlant(store.workbook, planting.name, day)
  const isReading = measured === "sample reading"
  const value = Number(digits)
  const [most, unit] = isReading ? [50, "°Brix"] : [999, "mg/g"]
  const tooMuch =
    value > most ? `${numberText(value, undefined, decimal)} ${unit} is above ${most} ${unit}.` : ""
  const measure = (part: typeof measured) => {
    setMeasured(part)
    setAsked("")
  }
  const add = () => {
    const odd = sampleOdd(document, measured, value)
    if (odd && asked !== odd) return setAsked(odd)
    onAdd((mark) => addSample(planting.name, day, plant, measured, value, mark))
    setDigits("")
    setAsked("")
  }
  return (
    <>
      <div className="field-jobs" role="group" aria-label="What is measured">
        <button aria-pressed={isReading} onClick={() => measure("sample reading")}>
          Reading, °Brix
        </button>
        <button aria-pressed={!isReading} onClick={() => measure("sample sugar")}>
          Laboratory, mg/g
        </button>
      </div>
      <FieldAmount digits={digits} unit={unit} decimal={decimal} beside={[`plant ${plant}`, tooMuch]} />
      <FieldPad
        digits={digits}
        decimal={decimal}
        onChange={(next) => {
          setDigits(next)
          setAsked("")
        }}
      />
      {asked && (
        <p className="field-wait" role="alert">
          {asked}
        </p>
      )}
      <button className="chief field-do" disabled={!(value > 0) || tooMuch !== ""} onClick={add}>
        {asked ? "Add it all the same" : `Add plant ${plant}`}
      </button>
    </>
  )
}
