import {useEffect, useMemo, useRef, useState, type KeyboardEvent} from "react"
import {consequence, rankedByMoves, rankedByStep, unsettled, type Tried} from "../editor/checks"
import {chooseKeeping, keepEditing, openSheetKeeping} from "../editor/editing"
import {showPanel} from "../editor/selection"
import type {Store} from "../editor/store"
import {addressText} from "../workbook/cells"
import type {Ranked} from "../workbook/checks/effects"
import {sheetNamed, type Document} from "../workbook/document"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"
import {useLooked} from "./useLooked"
import {useTried} from "./useTried"
import "./findPanel.css"
import "./checksPanel.css"

const MOST_LISTED = 100

/**
 * Everything in the workbook that needs a look, what moves the plan most first. `onShow` scrolls the chosen cell into view,
 * `onLeave` gives the keyboard's focus back to the sheet.
 */
export function ChecksPanel({
  store,
  onShow,
  onLeave,
}: {
  store: Store
  onShow: () => void
  onLeave: () => void
}) {
  const {document} = useEditor(store)
  const looked = useLooked(store, rankedByStep, true)
  const {tried, isTrying} = useTried(looked.seen, looked.of)
  const findings = useMemo(() => rankedByMoves(looked.seen ?? [], tried), [looked.seen, tried])
  const [walked, setWalked] = useState<{readonly key: string} | null>(null)
  const panel = useRef<HTMLElement>(null)
  const list = useRef<HTMLOListElement>(null)
  const listed = findings.slice(0, MOST_LISTED)
  const at = walked ? listed.findIndex((one) => keyOf(one) === walked.key) : -1

  useEffect(() => {
    if (walked) onShow()
  }, [walked, onShow])

  const go = (finding: Ranked | undefined) => {
    if (finding && chooseKeeping(store, finding.cells[0])) setWalked({key: keyOf(finding)})
  }
  const walk = (step: 1 | -1) => {
    const to = at < 0 && step < 0 ? listed.length - 1 : (at + step + listed.length) % listed.length
    go(listed[to])
    buttonOf(to)?.scrollIntoView({block: "nearest"})
  }
  const buttonOf = (index: number) => list.current?.children[index]?.querySelector("button")
  const mend = ({fix}: Ranked) => {
    // The row goes away with what it told of: the keyboard's focus would be lost with it.
    if (fix && keepEditing(store, 0, 0) && store.run(() => fix.edit))
      panel.current?.querySelector("h2")?.focus()
  }
  const leave = () => {
    store.turn(showPanel("where from"))
    onLeave()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const {key, target} = event
    const line = [...(list.current?.children ?? [])].findIndex((one) => one.contains(target as Node))
    if (key === "Escape") leave()
    else if (key === "ArrowDown" && line >= 0) buttonOf(line + 1)?.focus()
    else if (key === "ArrowUp" && line >= 0) buttonOf(line - 1)?.focus()
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  const own = sheetNamed(document.sheets, "Checks")
  return (
    <PanelFrame
      title="Checks"
      holds="find-panel checks-panel"
      onClose={leave}
      frameRef={panel}
      onKeyDown={onKeyDown}
      acts={
        <>
          <button className="plain" disabled={listed.length === 0} onClick={() => walk(1)}>
            Next
          </button>
          <button className="plain" disabled={listed.length === 0} onClick={() => walk(-1)}>
            Previous
          </button>
        </>
      }
    >
      <p className="count" role="status">
        {looked.seen && countWords(findings)}
        {at >= 0 && ` Now at ${at + 1}: ${placeOf(document, listed[at]!)}.`}
      </p>
      {(looked.isOld || isTrying) && (
        <p className="q">{looked.isOld ? "Looking through the workbook…" : "Trying what mending moves…"}</p>
      )}
      <ol ref={list} aria-label="To look at" aria-busy={looked.isOld}>
        {listed.map((finding, i) => (
          <li key={keyOf(finding)}>
            <FindingRow
              document={looked.of!}
              finding={finding}
              tried={tried}
              isCurrent={i === at}
              onGo={() => go(finding)}
              onMend={looked.isOld ? null : () => mend(finding)}
            />
          </li>
        ))}
      </ol>
      <p className="small q">
        Looked for: errors and rings, typed-over cells, formulas and ranges unlike what is round them, numbers
        as text, typed into formulas or far from the usual, blanks among measurements, dates outside the
        season, units that do not go together, names, sources, old samples, plantings that a sheet lacks, more
        picked than expected, pickings before the wait of a label was over or after their close, openings
        other than picked. Not looked for: whether a number is true to the field, cover, rows left out of a
        printed total.
        {own >= 0 && (
          <>
            {" "}
            <button className="link" onClick={() => openSheetKeeping(store, own)}>
              The sheet Checks
            </button>{" "}
            counts what is not measured yet.
          </>
        )}
      </p>
    </PanelFrame>
  )
}

interface RowProps {
  document: Document
  finding: Ranked
  tried: Tried
  isCurrent: boolean
  onGo: () => void
  /** Null while the workbook is another than the one looked through. */
  onMend: (() => void) | null
}

function FindingRow({document, finding, tried, isCurrent, onGo, onMend}: RowProps) {
  const place = placeOf(document, finding)
  return (
    <>
      <button className="link" aria-current={isCurrent ? "true" : undefined} onClick={onGo}>
        <span className="place">{place}</span> <span className="text">{finding.sentence}.</span>
      </button>
      {finding.note && (
        <p className="q">
          {finding.note.settled ? "Settled" : "Note"}: {finding.note.text}
        </p>
      )}
      <p className="q">
        {consequence(finding, tried, document.region)}.{" "}
        {finding.fix && (
          <button className="mend" disabled={!onMend} onClick={() => onMend?.()}>
            {finding.fix.words}
            <span className="hide">, {place}</span>
          </button>
        )}
      </p>
    </>
  )
}

const keyOf = ({rule, cells: [{sheet, row, col}], sentence}: Ranked) =>
  `${rule}:${sheet}:${row}:${col}:${sentence}`

/** "Season plan F2" */
const placeOf = (document: Document, {cells: [at]}: Ranked) =>
  `${document.sheets[at.sheet]?.name ?? ""} ${addressText(document, at, at.sheet)}`

function countWords(findings: readonly Ranked[]) {
  const count = unsettled(findings).length
  const settled = findings.length - count
  const first =
    count === 0
      ? "Nothing found that needs a look."
      : `${count} to look at, what weighs most on the plan first.`
  const last = settled ? ` ${settled} settled, last.` : ""
  const more = findings.length > MOST_LISTED ? ` The first ${MOST_LISTED} are listed.` : ""
  return first + last + more
}
