import type {DescribedParameter} from "../define"
import {CellFault, isRange, shown, type Given, type Held} from "../parameters"
import {outOfRange, wrongKind, type Refusal} from "../refusal"

/** How the engine converts an argument before it is read: as it does for its own functions (OpenFormula 6.3). */
export type Conversion = "number" | "text" | "logical" | "value" | "value or error" | "cells"

/** Whether what a cell holds meets a condition. */
export type Condition = (held: Held) => boolean

/** What the engine lends: the conditions of its own COUNTIF. Null when there is no such condition. */
export interface Host {
  conditionOf(held: Held): Condition | null
}

/** One argument of a standard function: what it means, how it is converted and how it is read then. */
export interface StandardParameter<T> extends DescribedParameter {
  readonly conversion: Conversion
  read(given: Given, host: Host): T | Refusal | CellFault
}

/** The cells of an argument, row by row. */
export type Cells = readonly (readonly Held[])[]

/** One number: text that reads as a number counts as it, a blank as 0, a logical value as 0 or 1. */
export function number(label: string, {above, min}: {above?: number; min?: number} = {}) {
  const takes = above !== undefined ? `above ${above}` : min !== undefined ? `${min} or more` : "a number"
  const read = (given: Given) => {
    const value = given as number
    const isRefused = (above !== undefined && value <= above) || (min !== undefined && value < min)
    return isRefused ? outOfRange(`${label} must be ${takes}, not ${value}`) : value
  }
  return parameter<number>({label, unit: "number", takes, conversion: "number", read})
}

export const text = (label: string, takes = "text") =>
  parameter<string>({label, unit: "text", takes, conversion: "text", read: (given) => given as string})

export const logical = (label: string) =>
  parameter<boolean>({
    label,
    unit: "as given",
    takes: "TRUE or FALSE",
    conversion: "logical",
    read: (given) => given as boolean,
  })

/** One day: a date, or text in quotes that reads as one. Gives its number; a part of a day is left off. */
export const day = (label: string) =>
  parameter<number>({
    label,
    unit: "date",
    takes: "a date",
    conversion: "number",
    read: (given) => Math.floor(given as number),
  })

/** One value of any kind. */
export const value = (label: string) =>
  parameter<Held>({
    label,
    unit: "as given",
    takes: "any value",
    conversion: "value",
    read: (given) => given as Held,
  })

/** One value of any kind, an error too, which does not make the result an error. */
export const valueOrError = (label: string) =>
  parameter<Held>({
    label,
    unit: "as given",
    takes: "any value or error",
    conversion: "value or error",
    read: (given) => given as Held, // as a value, an error would be passed on
  })

/** The numbers of a range in their order; what is no number is passed over, an error passed on. */
export const numbers = (label: string) =>
  parameter<readonly number[]>({
    label,
    unit: "number",
    takes: "numbers",
    conversion: "cells",
    read: (given) => numbersIn(label, given),
  })

/** The cells of a range as they are, errors included. */
export const cells = (label: string) =>
  parameter<Cells>({label, unit: "as given", takes: "cells", conversion: "cells", read: cellsOf})

export const condition = (label: string) =>
  parameter<Condition>({
    label,
    unit: "as given",
    takes: 'a value, or text such as ">5" or "Long*"',
    conversion: "value",
    read: (given, host) =>
      host.conditionOf(given as Held) ?? wrongKind(`${label} cannot be read: ${shown(given as Held)}`),
  })

/** Left out, the argument stands for `fallback`. */
export const optionally = <T, F>(
  one: StandardParameter<T>,
  fallback: F,
  words = fallback === null ? "" : String(fallback),
): StandardParameter<T | F> =>
  ({...one, absent: {value: fallback, words}}) as unknown as StandardParameter<T | F>

/** May be given again and again, and is read as a list. */
export const repeated = <T>(one: StandardParameter<T>): StandardParameter<readonly T[]> =>
  ({...one, repeats: true}) as unknown as StandardParameter<readonly T[]>

const parameter = <T>(one: StandardParameter<T>) => one

const cellsOf = (given: Given): Cells => (isRange(given) ? given : [[given]])

function numbersIn(label: string, given: Given): readonly number[] | Refusal | CellFault {
  if (!isRange(given)) {
    if (given === null) return []
    return typeof given === "number" ? [given] : wrongKind(`${label} must be numbers, not ${shown(given)}`)
  }
  const found: number[] = []
  for (const row of given)
    for (const held of row) {
      if (held instanceof CellFault) return held
      if (typeof held === "number") found.push(held)
    }
  return found
}
