/** What marks an act that is entered here. */
export interface Mark {
  readonly id: string
  readonly device: string
  readonly entered: string
}

const KEY = "fernledger device"
export const LONGEST_NAME = 40

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
    const text = name.trim().slice(0, LONGEST_NAME)
    if (text) localStorage.setItem(KEY, text)
    else localStorage.removeItem(KEY)
  } catch {
    // A browser that keeps nothing draws a sign each time.
  }
}

/** A mark that no other act has, on whatever device: 128 bits by chance. */
export const markAt = (now: Date): Mark => ({
  id: hexadecimal(16),
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

const hexadecimal = (bytes: number) =>
  Array.from(crypto.getRandomValues(new Uint8Array(bytes)), (one) => one.toString(16).padStart(2, "0")).join(
    "",
  )
