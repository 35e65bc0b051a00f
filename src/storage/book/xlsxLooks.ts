import type {Look} from "./book"
import {readXml} from "./xml"

export interface XlsxLook {
  readonly look: Look
  readonly isLocked: boolean
}

/** The looks of the cells' styles, by their numbers, and whether each is locked. */
export function looksIn(bytes: Uint8Array | null): readonly XlsxLook[] {
  const codes = new Map<number, string>(Object.entries(BUILT_IN).map(([id, code]) => [Number(id), code]))
  const looks: XlsxLook[] = []
  let isInside = false
  if (bytes)
    readXml(bytes, {
      open(element, attribute) {
        if (element === "numFmt") codes.set(Number(attribute("numFmtId")), attribute("formatCode") ?? "")
        if (element === "cellXfs") isInside = true
        if (isInside && element === "xf")
          looks.push({look: lookOf(codes.get(Number(attribute("numFmtId"))) ?? "General"), isLocked: true})
        if (isInside && element === "protection" && looks.length)
          looks[looks.length - 1] = {
            ...looks.at(-1)!,
            isLocked: !/^(0|false)$/.test(attribute("locked") ?? "1"),
          }
      },
      close(element) {
        if (element === "cellXfs") isInside = false
      },
    })
  return looks
}

/** Formats that the form has numbers for (ECMA-376, 18.8.30). */
const BUILT_IN: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  14: "m/d/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  22: "m/d/yy h:mm",
  37: "#,##0",
  38: "#,##0",
  39: "#,##0.00",
  40: "#,##0.00",
  49: "@",
}

/** What the code of a format comes nearest to here. */
export function lookOf(code: string): Look {
  const [first = ""] = code.slice(0, 200).split(";")
  const bare = first.replace(/"[^"]*"|\\.|\[[^\]]*\]|_./g, "")
  if (bare.includes("@")) return "words"
  if (/[yd]/i.test(bare) && !/general/i.test(bare)) return /y/i.test(bare) ? "date" : "day"
  if (bare.includes("%")) return "share"
  const decimals = /[0#](?:\.([0#?]*))?$/.exec(bare.trim())
  if (!decimals || /[eE]|general/i.test(bare)) return "plain"
  return Math.min(9, decimals[1]?.length ?? 0) as Look
}
