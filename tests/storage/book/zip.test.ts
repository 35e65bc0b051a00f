import {zipSync} from "fflate"
import {describe, expect, it} from "vitest"
import {unlessUnreadable} from "../../../src/storage/book/limits"
import {openZip, zipOf} from "../../../src/storage/book/zip"

const on = new Date("2026-05-25T12:00:00Z")
const bytesOf = (text: string) => new TextEncoder().encode(text)
const reading = (bytes: Uint8Array, name = "a.xml") =>
  unlessUnreadable(() => {
    const part = openZip(bytes).part(name)
    return part && new TextDecoder().decode(part)
  })

/** The file with a number of two or four bytes changed in the list of its parts. */
function withListed(bytes: Uint8Array, offset: number, value: number, size: 2 | 4): Uint8Array {
  const copy = bytes.slice()
  const view = new DataView(copy.buffer)
  const at = view.getUint32(copy.length - 22 + 16, true) + offset
  if (size === 2) view.setUint16(at, value, true)
  else view.setUint32(at, value, true)
  return copy
}

describe("openZip", () => {
  it("reads back what zipOf wrote, packed or not", () => {
    const bytes = zipOf({"a.xml": "words ".repeat(1000), mimetype: "kind"}, on, ["mimetype"])
    expect(reading(bytes)).toBe("words ".repeat(1000))
    expect(reading(bytes, "mimetype")).toBe("kind")
    expect(reading(bytes, "none")).toBeNull()
    expect(new TextDecoder().decode(bytes.slice(30, 42))).toBe("mimetypekind")
  })

  const whole = zipOf({"a.xml": "words ".repeat(1000)}, on)

  it.each([1, 21, 40, 100, whole.length - 10])(
    "refuses a file of which the last %d bytes are missing",
    (missing) => {
      expect(reading(whole.slice(0, whole.length - missing))).toHaveProperty("refused")
    },
  )

  it("refuses a part whose bytes are not those that were packed", () => {
    const damaged = whole.slice()
    damaged[45] = damaged[45]! ^ 255
    expect(reading(damaged)).toEqual({refused: "It is damaged, or cut short"})
    const plain = zipOf({mimetype: "kind"}, on, ["mimetype"])
    expect(plain[38]).toBe("k".charCodeAt(0)) // 30 bytes and the name stand before it
    plain[38] = "m".charCodeAt(0)
    expect(reading(plain, "mimetype")).toEqual({refused: "It is damaged, or cut short"})
  })

  it("refuses a part that is far smaller packed than any workbook's, before it is unpacked", () => {
    const bomb = zipSync({"a.xml": new Uint8Array(50_000_000)}, {level: 9})
    expect(bomb.length).toBeLessThan(100_000)
    expect(reading(bomb)).toEqual({
      refused: expect.stringMatching(/^Its part “a.xml” is packed \d+ times smaller/),
    })
  })

  it("stops a part that unpacks to more than it states", () => {
    const lying = withListed(zipSync({"a.xml": new Uint8Array(50_000_000)}, {level: 9}), 24, 1000, 4)
    expect(reading(lying)).toEqual({refused: "It unpacks to more than it says, as no workbook does"})
  })

  it("refuses what is too much in all, by what the parts state", () => {
    const many = Object.fromEntries(Array.from({length: 120}, (_, i) => [`p${i}`, new Uint8Array(900_000)]))
    expect(reading(zipSync(many, {level: 1}))).toEqual({
      refused: "Unpacked it is more than 100 MB, the most that is read",
    })
    expect(reading(new Uint8Array(20_000_001))).toEqual({refused: "It is 20.1 MB; the most is 20 MB"})
  })

  it("refuses too many parts, twins, a password, and other ways of packing", () => {
    const many = Object.fromEntries(Array.from({length: 1001}, (_, i) => [`p${i}`, bytesOf("x")]))
    expect(reading(zipSync(many))).toEqual({refused: "It has 1001 parts, and 1000 are the most"})
    const two = zipSync({ab: bytesOf("1"), ac: bytesOf("2")})
    const twins = two.map((byte, i) => (byte === 0x63 && two[i - 1] === 0x61 ? 0x62 : byte))
    expect(reading(twins)).toEqual({refused: "Two parts of it are named “ab”"})
    expect(reading(withListed(whole, 8, 1, 2))).toEqual({refused: "It is locked with a password"})
    expect(reading(withListed(whole, 10, 99, 2))).toEqual({
      refused: "Its part “a.xml” is packed in a way that is not read here",
    })
  })
})
