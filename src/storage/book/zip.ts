import {Inflate, zipSync} from "fflate"
import {inMegabytes, LIMITS, Unreadable} from "./limits"

/** The parts of a zip file by their names. */
export interface Zip {
  readonly names: readonly string[]
  /** The bytes of a part, or null where there is none of the name. */
  part(name: string): Uint8Array | null
}

interface Entry {
  readonly name: string
  readonly method: number
  readonly packed: number
  readonly unpacked: number
  readonly check: number
  readonly at: number
}

const END = 0x06054b50
const CENTRAL = 0x02014b50
const LOCAL = 0x04034b50

/**
 * Opens a zip file (ISO/IEC 21320-1: stored or deflated, neither encrypted nor split). Sizes and counts are checked as the
 * file states them before anything is unpacked, and again while unpacking, since what a file states need not be true.
 */
export function openZip(bytes: Uint8Array): Zip {
  if (bytes.length > LIMITS.file)
    throw new Unreadable(`It is ${inMegabytes(bytes.length)}; the most is ${inMegabytes(LIMITS.file)}`)
  const entries = entriesIn(bytes)
  let left: number = LIMITS.unpacked
  return {
    names: [...entries.keys()],
    part(name) {
      const entry = entries.get(name)
      if (!entry) return null
      left -= entry.unpacked
      if (left < 0) throw tooMuch()
      return unpacked(bytes, entry)
    },
  }
}

function entriesIn(bytes: Uint8Array): ReadonlyMap<string, Entry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const end = endOf(view)
  const count = view.getUint16(end + 10, true)
  let at = view.getUint32(end + 16, true)
  if (count > LIMITS.parts) throw new Unreadable(`It has ${count} parts, and ${LIMITS.parts} are the most`)
  const entries = new Map<string, Entry>()
  let sum = 0
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== CENTRAL) throw damaged()
    const lengths = [28, 30, 32].map((offset) => view.getUint16(at + offset, true))
    const [nameLength, extra, comment] = lengths as [number, number, number]
    const entry = {
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      method: view.getUint16(at + 10, true),
      check: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      unpacked: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    }
    if (view.getUint16(at + 8, true) & 1) throw new Unreadable("It is locked with a password")
    if (entries.has(entry.name)) throw new Unreadable(`Two parts of it are named “${short(entry.name)}”`)
    sum += entry.unpacked
    if (sum > LIMITS.unpacked) throw tooMuch()
    if (entry.unpacked > LIMITS.small && entry.unpacked > entry.packed * LIMITS.ratio)
      throw new Unreadable(
        `Its part “${short(entry.name)}” is packed ${Math.round(entry.unpacked / Math.max(1, entry.packed))} times smaller, as no workbook is`,
      )
    entries.set(entry.name, entry)
    at += 46 + nameLength + extra + comment
  }
  return entries
}

const LONGEST_COMMENT = 65_535

function endOf(view: DataView): number {
  const first = Math.max(0, view.byteLength - 22 - LONGEST_COMMENT)
  for (let at = view.byteLength - 22; at >= first; at--) if (view.getUint32(at, true) === END) return at
  throw new Unreadable("It is no workbook of this kind, or its end is missing")
}

function unpacked(bytes: Uint8Array, {name, method, packed, unpacked, check, at}: Entry): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL) throw damaged()
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true)
  if (start + packed > bytes.length) throw damaged()
  const data = bytes.subarray(start, start + packed)
  if (method !== 0 && method !== 8)
    throw new Unreadable(`Its part “${short(name)}” is packed in a way that is not read here`)
  const whole = method === 0 ? data : inflated(data, unpacked)
  if (whole.length !== unpacked || checkOf(whole) !== check) throw damaged()
  return whole
}

/** Little is given at a time, so that a part that unpacks to more than it states is stopped early. */
const AT_A_TIME = 16_384

function inflated(data: Uint8Array, size: number): Uint8Array {
  const whole = new Uint8Array(size)
  let filled = 0
  const inflate = new Inflate((chunk) => {
    if (filled + chunk.length > size)
      throw new Unreadable("It unpacks to more than it says, as no workbook does")
    whole.set(chunk, filled)
    filled += chunk.length
  })
  try {
    for (let at = 0; at < data.length; at += AT_A_TIME)
      inflate.push(data.subarray(at, at + AT_A_TIME), at + AT_A_TIME >= data.length)
  } catch (fault) {
    throw fault instanceof Unreadable ? fault : damaged()
  }
  if (filled !== size) throw damaged()
  return whole
}

const damaged = () => new Unreadable("It is damaged, or cut short")
const tooMuch = () =>
  new Unreadable(`Unpacked it is more than ${inMegabytes(LIMITS.unpacked)}, the most that is read`)
const short = (name: string) => (name.length > 40 ? `${name.slice(0, 40)}…` : name)

/** CRC-32 of ISO 3309, as zip has it. */
function checkOf(bytes: Uint8Array): number {
  let check = -1
  for (const byte of bytes) check = CHECKS[(check ^ byte) & 255]! ^ (check >>> 8)
  return (check ^ -1) >>> 0
}

const CHECKS = Int32Array.from({length: 256}, (_, byte) => {
  let check = byte
  for (let bit = 0; bit < 8; bit++) check = check & 1 ? (check >>> 1) ^ 0xedb88320 : check >>> 1
  return check
})

/** A zip file of texts; those of `stored` come first and are not packed. */
export function zipOf(
  parts: Readonly<Record<string, string>>,
  on: Date,
  stored: readonly string[] = [],
): Uint8Array {
  const encoder = new TextEncoder()
  const order = [...stored, ...Object.keys(parts).filter((name) => !stored.includes(name))]
  const files = order.map((name) => [
    name,
    [encoder.encode(parts[name]), {level: stored.includes(name) ? 0 : 6, mtime: on}] as const,
  ])
  return zipSync(Object.fromEntries(files))
}
