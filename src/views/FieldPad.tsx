import {numberText, withDecimal} from "../editor/display"
import type {Decimal} from "../workbook/region"

interface AmountProps {
  /** What is typed, with a point. */
  digits: string
  unit: string
  decimal: Decimal | undefined
  beside: readonly string[]
}

/** The number that is typed, large, each key as it was pressed; with what is known beside it. */
export function FieldAmount({digits, unit, decimal = ".", beside}: AmountProps) {
  const [whole, decimals] = digits.split(".")
  return (
    <div className="field-amount">
      <span className="q">
        {beside.filter(Boolean).map((words) => (
          <span key={words}>{words}</span>
        ))}
      </span>
      <output aria-label="Typed so far">
        {numberText(Number(whole))}
        {decimals !== undefined && decimal + decimals} <small>{unit}</small>
      </output>
    </div>
  )
}

/** The keys of a number; the keyboard's own digits work too. */
export function FieldPad({
  digits,
  decimal = ".",
  onChange,
}: {
  digits: string
  decimal: Decimal | undefined
  onChange: (digits: string) => void
}) {
  const press = (key: string) => {
    if (key === "Clear") return onChange("")
    if (key === "." && digits.includes(".")) return
    const next = digits === "0" && key !== "." ? key : digits === "" && key === "." ? "0." : digits + key
    if (next.replace(".", "").length <= 6) onChange(next)
  }
  return (
    <div
      className="field-pad"
      role="group"
      aria-label="Digits"
      onKeyDown={({key}) => {
        if (/^[0-9]$/.test(key)) press(key)
        if (key === "." || key === ",") press(".") // whichever the keyboard has
        if (key === "Backspace") onChange(digits.slice(0, -1))
      }}
    >
      {["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "Clear"].map((key) => (
        <button key={key} onClick={() => press(key)}>
          {withDecimal(key, decimal)}
        </button>
      ))}
    </div>
  )
}
