import {sheetWith, type CellAddress} from "./document"
import {numberNamed, valueNamed} from "./names"
import {rowsOf} from "./season"
import type {Workbook} from "./workbook"

/** A load that waited too long for the cold. Wait in h. */
export interface LateLoad {
  readonly planting: string
  readonly day: number | null
  readonly wait: number
  /** Where its wait stands. */
  readonly at: CellAddress
}

/** What is known of the crop from the cut to the truck. Weights in kg, temperatures in °C, heat in kW. */
export interface ColdChain {
  /** Loads whose wait is on record. */
  readonly loads: number
  readonly late: readonly LateLoad[]
  /** Weight that all of them lost in the sun, and what it was worth. */
  readonly lost: number
  readonly worth: number
  /** The store: null where how long the crop stays in it, or how cold it is, is not typed. */
  readonly store: Store | null
}

interface Store {
  readonly days: number
  readonly temperature: number
  /** Days that spears keep at that temperature; null where they freeze. */
  readonly keeps: number | null
  /** The day with most in it, the first of them; null where nothing is cut. */
  readonly fullest: {readonly day: number; readonly kg: number; readonly breathing: number} | null
  /** What is to be said against it, or nothing. */
  readonly warns: string
}

/** The cold chain of a workbook; null where it has no log of loads. */
export function coldChainOf(workbook: Workbook): ColdChain | null {
  if (sheetWith(workbook.document, "load planting") < 0) return null
  const loads = rowsOf(workbook, "load planting").flatMap((row) => {
    const wait = row.number("load wait")
    return wait === null || row.word("load planting") === "" ? [] : [{row, wait}]
  })
  const sum = (part: "load lost" | "load worth") =>
    rowsOf(workbook, "load planting").reduce((all, row) => all + (row.number(part) ?? 0), 0)
  return {
    loads: loads.length,
    late: loads.flatMap(({row, wait}) =>
      row.word("load says") === "too long"
        ? [
            {
              planting: row.word("load planting"),
              day: row.number("load day"),
              wait,
              at: row.cells["load wait"]!,
            },
          ]
        : [],
    ),
    lost: sum("load lost"),
    worth: sum("load worth"),
    store: storeOf(workbook),
  }
}

function storeOf(workbook: Workbook): Store | null {
  const [days, temperature] = [numberNamed(workbook, "Hold_days"), numberNamed(workbook, "Store_temp")]
  if (days === null || temperature === null) return null
  const held = rowsOf(workbook, "cutting day").flatMap((row) => {
    const [day, kg, breathing] = [row.number("cutting day"), row.number("in store"), row.number("breathing")]
    return day === null || kg === null || breathing === null || kg <= 0 ? [] : [{day, kg, breathing}]
  })
  const warns = valueNamed(workbook, "Store_warns")
  return {
    days,
    temperature,
    keeps: numberNamed(workbook, "Store_keeps"),
    fullest: held.reduce<Store["fullest"]>((most, one) => (most && most.kg >= one.kg ? most : one), null),
    warns: typeof warns === "string" ? warns : "",
  }
}
