import {cropMoves, daysMoved, type Moved} from "../studies/mending"
import {lookingIn} from "../workbook/checks/checks"
import {effectWords, ranking, type Ranked} from "../workbook/checks/effects"
import type {Finding, Words} from "../workbook/checks/finding"
import {inARow} from "../workbook/checks/finding"
import type {Document, Region} from "../workbook/document"
import {regionOf} from "../workbook/region"
import type {Workbook} from "../workbook/workbook"
import {cellColumn} from "./cellColumn"
import {dateText, inTonnes, textWithUnit} from "./display"
import {cellName, rowNames} from "./words"

type Looked = Pick<Workbook, "document" | "isDateAt" | "valueAt">

/** How checks tell a cell and its values: as the screen does. On a naming sheet a value goes by its name. */
export const checkWords = (workbook: Looked): Words => ({
  name(at) {
    const {names, rows} = workbook.document.sheets[at.sheet]!
    const named = names && at.col === 1 ? rows[at.row]?.[0] : null
    return named ? String(named) : cellName(workbook.document, at, rowNames(workbook))
  },
  shown(at, value) {
    const {document} = workbook
    return textWithUnit(value, cellColumn(document, at), workbook.isDateAt(at), regionOf(document))
  },
})

const found = new WeakMap<Document, readonly Finding[]>()

/** What needs a look in the workbook as it stands, looked for once for each document, step by step. */
export function* findingsByStep(workbook: Workbook): Generator<void, readonly Finding[]> {
  const {document} = workbook
  const held = found.get(document) ?? (yield* lookingIn(workbook, checkWords(workbook)))
  found.set(document, held)
  return held
}

/** What needs a look, ranked by what of the plan rests on it. */
export function* rankedByStep(workbook: Workbook): Generator<void, readonly Ranked[]> {
  const held = ranks.get(workbook.document) ?? (yield* ranking(workbook, yield* findingsByStep(workbook)))
  ranks.set(workbook.document, held)
  return held
}
const ranks = new WeakMap<Document, readonly Ranked[]>()

/** What mending moves in the plan, for the findings for which that was tried. */
export type Tried = ReadonlyMap<Finding, Moved>

/** Chosen: more mends than this are not tried, so that the answer comes in seconds. */
export const MOST_TRIED = 12

/** The findings whose mend is worth a try, those with the most resting on them. */
export const toTry = (findings: readonly Ranked[]) =>
  unsettled(findings)
    .filter(({fix}) => fix)
    .slice(0, MOST_TRIED)

/** Those first whose mend moves the closes by the most days; then as they were ranked; last those that move nothing. */
export function rankedByMoves(findings: readonly Ranked[], tried: Tried): readonly Ranked[] {
  const weight = (finding: Ranked) => {
    const moved = tried.get(finding)
    if (finding.note?.settled) return -2
    return moved ? daysMoved(moved) || -1 : 0
  }
  return findings.toSorted((a, b) => weight(b) - weight(a))
}

/** Those of which no note says that they are settled. */
export const unsettled = <T extends Finding>(findings: readonly T[]) =>
  findings.filter(({note}) => !note?.settled)

/** What a finding means for the plan, in words: what mending it moves where that was tried, else what rests on it. */
export function consequence(finding: Ranked, tried: Tried, region?: Region): string {
  const moved = tried.get(finding)
  return moved ? movedWords(moved, region) : effectWords(finding.effect)
}

const MOST_NAMED = 2

function movedWords({closes, crop}: Moved, region: Region | undefined): string {
  const tonnes = (kg: number) => inTonnes(kg, 1, region).join("\u00a0")
  const day = (one: number | null) => (one === null ? "not known" : dateText(one))
  const told = closes
    .slice(0, MOST_NAMED)
    .map(({planting, was, now}) => `the close of ${planting} from ${day(was)} to ${day(now)}`)
  const more = closes.length - MOST_NAMED
  if (more > 0) told.push(more === 1 ? "1 more close" : `${more} more closes`)
  if (cropMoves(crop)) told.push(`the crop of the farm from ${tonnes(crop.was)} to ${tonnes(crop.now)}`)
  return told.length
    ? `Mending it moves ${inARow(told)}`
    : "Mending it moves no close and no crop of the plan"
}
