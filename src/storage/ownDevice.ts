import {LONGEST_DEVICE} from "../workbook/document"
import {hexadecimal, newId, type FieldMark} from "../workbook/fieldActs"

const KEY = "fernledger device"

/** What this device is called: as its owner named it, or by a sign that was drawn for it. */
export function deviceName(): string {
  const named = kept()
  if (named) return named
  const drawn = `Device ${hexadecimal(2)}`
  nameDevice(drawn)
  return kept() ?? drawn
}

/** Names this device; a blank name gives it its sign again. */
export function nameDevice(name: string) {
  try {
    const text = name.trim().slice(0, LONGEST_DEVICE)
    if (text) localStorage.setItem(KEY, text)
    else localStorage.removeItem(KEY)
  } catch {
    // A browser that keeps nothing draws a sign each time.
  }
}

/** A mark for an act that is entered here now. */
export const markAt = (now: Date): FieldMark => ({
  id: newId(),
  device: deviceName(),
  entered: now.toISOString(),
})

function kept(): string | null {
  try {
    return localStorage.getItem(KEY)
  } catch {
    return null
  }
}
