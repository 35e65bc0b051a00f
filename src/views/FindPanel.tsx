import {useDeferredValue, useEffect, useMemo, useRef, useState, type KeyboardEvent} from "react"
import {chooseKeeping, keepEditing} from "../editor/editing"
import {cellOfHit, excerpt, findIn, hitBeside, hitName, type Hit, type Search} from "../editor/find"
import {inShort, replaceEdit, replacementsOf, type Replacement} from "../editor/replace"
import {showPanel} from "../editor/selection"
import type {Store} from "../editor/store"
import type {Document} from "../workbook/document"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"
import "./findPanel.css"

const MOST_LISTED = 200

/**
 * Finds in the whole workbook, and replaces what was typed. `onShow` scrolls the chosen cell into view, `onLeave`
 * gives the keyboard's focus back to the sheet.
 */
export function FindPanel({store, onShow, onLeave}: {store: Store; onShow: () => void; onLeave: () => void}) {
  const {document, cell, asksToFind} = useEditor(store)
  const [query, setQuery] = useState("")
  const [where, setWhere] = useState<Search["where"]>("all")
  const [wholeCell, setWholeCell] = useState(false)
  const [matchCase, setMatchCase] = useState(false)
  const [thisSheet, setThisSheet] = useState(false)
  const [replaces, setReplaces] = useState(false)
  const [by, setBy] = useState("")
  /** The hits that are to stay as they are, by their places. */
  const [kept, setKept] = useState<ReadonlySet<string>>(new Set())
  const [walked, setWalked] = useState<{readonly hit: number} | null>(null)
  const [done, setDone] = useState("")
  const panel = useRef<HTMLElement>(null)
  const field = useRef<HTMLInputElement>(null)
  const list = useRef<HTMLOListElement>(null)

  const sheet = thisSheet ? cell.sheet : undefined
  const search = useMemo(
    (): Search => ({query, where, wholeCell, matchCase, ...(sheet === undefined ? {} : {sheet})}),
    [query, where, wholeCell, matchCase, sheet],
  )
  // What is typed, here and in the sheet, is drawn before what is found.
  const asked = useDeferredValue(useMemo(() => ({search, document}), [search, document]))
  const hits = useMemo(() => findIn(store.workbook, asked.search), [store, asked])
  const replacement = useDeferredValue(by)
  const replacements = useMemo(
    () => (replaces ? replacementsOf(readerOf(store, asked.document), hits, asked.search, replacement) : []),
    [store, hits, asked, replaces, replacement],
  )
  const toReplace = replacements.filter(({hit, entry}) => !("refused" in entry) && !kept.has(placeOf(hit)))

  useEffect(() => {
    field.current?.focus({preventScroll: true})
    field.current?.select()
  }, [asksToFind])
  useEffect(() => {
    panel.current?.scrollIntoView({block: "nearest"})
  }, [asksToFind, replaces])
  useEffect(() => {
    if (!walked) return
    onShow()
    const line = list.current?.children[walked.hit] as HTMLElement | undefined
    if (line && list.current) list.current.scrollTop = line.offsetTop - list.current.clientHeight / 3
  }, [walked, onShow])

  const isLookedUp = asked.search === search && asked.document === document
  /** What is found now, where a key comes before the list is drawn. */
  const foundNow = () =>
    asked.search === search && asked.document === store.getState().document
      ? hits
      : findIn(store.workbook, search)
  const go = (hit: number, found = hits) => {
    if (found[hit] && chooseKeeping(store, cellOfHit(found[hit]))) setWalked({hit})
  }
  const walk = (step: 1 | -1) => {
    const found = foundNow()
    go(walked ? (walked.hit + step + found.length) % found.length : hitBeside(found, cell, step), found)
  }
  const leave = () => {
    store.turn(showPanel("where from"))
    onLeave()
  }
  const replace = () => {
    if (!keepEditing(store, 0, 0)) return
    const chosen = foundNow().filter((hit) => !kept.has(placeOf(hit)))
    const edit = replaceEdit(replacementsOf(store.workbook, chosen, search, by), query, by)
    if (!edit || !store.run(() => edit)) return
    setDone(`Done: ${edit.type === "enter" ? edit.name : ""}. `)
    setWalked(null)
    field.current?.focus()
  }
  const change = (act: () => void) => {
    setDone("")
    setWalked(null)
    setKept(new Set())
    act()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const {key, shiftKey, target} = event
    if (key === "Escape") leave()
    else if (key === "Enter" && target === field.current) walk(shiftKey ? -1 : 1)
    else if (key.toLowerCase() === "f" && (event.ctrlKey || event.metaKey)) store.turn(showPanel("find"))
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  const current = walked && hits[walked.hit]
  const listed = hits.slice(0, MOST_LISTED)
  return (
    <PanelFrame
      title="Find in the workbook"
      holds="find-panel"
      onClose={leave}
      frameRef={panel}
      onKeyDown={onKeyDown}
    >
      <div className="ask">
        <label>
          Look for{" "}
          <input
            ref={field}
            type="search"
            value={query}
            onChange={({target}) => change(() => setQuery(target.value))}
          />
        </label>
        <span className="acts">
          <button disabled={hits.length === 0} onClick={() => walk(1)}>
            Next
          </button>
          <button disabled={hits.length === 0} onClick={() => walk(-1)}>
            Previous
          </button>
          <button aria-expanded={replaces} onClick={() => setReplaces(!replaces)}>
            Replace
          </button>
        </span>
      </div>
      {replaces && (
        <div className="ask">
          <label>
            Replace with{" "}
            <input type="text" value={by} autoComplete="off" onChange={({target}) => setBy(target.value)} />
          </label>
          <button className="chief" disabled={toReplace.length === 0} onClick={replace}>
            Replace {toReplace.length}
          </button>
        </div>
      )}
      <div className="choices">
        <label>
          In{" "}
          <select
            value={where}
            onChange={({target}) => change(() => setWhere(target.value as Search["where"]))}
          >
            <option value="all">values, formulas and notes</option>
            <option value="values">values</option>
            <option value="formulas">formulas</option>
            <option value="notes">notes</option>
          </select>
        </label>
        <Choice chosen={thisSheet} onChoose={(on) => change(() => setThisSheet(on))}>
          This sheet only
        </Choice>
        <Choice chosen={wholeCell} onChoose={(on) => change(() => setWholeCell(on))}>
          The whole cell
        </Choice>
        <Choice chosen={matchCase} onChoose={(on) => change(() => setMatchCase(on))}>
          Capitals as typed
        </Choice>
      </div>
      <p className="count" role="status">
        {done}
        {query !== "" && (hits.length > 0 || isLookedUp) && countWords(hits.length)}
        {current && ` Now at ${walked.hit + 1}: ${hitName(asked.document, current)}.`}
        {replaces && hits.length > 0 && ` ${stayWords(hits.length - toReplace.length)}`}
      </p>
      <ol ref={list} aria-label="Found">
        {listed.map((hit, i) => (
          <li key={placeOf(hit)}>
            <button
              className="link"
              aria-current={walked?.hit === i ? "true" : undefined}
              onClick={() => go(i)}
            >
              <HitWords document={asked.document} hit={hit} />
            </button>
            {replacements[i] && (
              <Outcome
                document={asked.document}
                replacement={replacements[i]}
                isKept={kept.has(placeOf(hit))}
                onKeep={() => setKept(toggled(kept, placeOf(hit)))}
              />
            )}
          </li>
        ))}
      </ol>
    </PanelFrame>
  )
}

const readerOf = ({workbook}: Store, document: Document) => ({
  document,
  normalized: (formula: string) => workbook.normalized(formula),
})

const placeOf = ({sheet, row, col, inNote}: Hit) => `${sheet}:${row}:${col}${inNote ? ":note" : ""}`

const toggled = (all: ReadonlySet<string>, one: string): ReadonlySet<string> =>
  new Set(all.has(one) ? [...all].filter((other) => other !== one) : [...all, one])

function countWords(count: number) {
  if (count === 0) return "Nothing found."
  return count > MOST_LISTED ? `${count} found, the first ${MOST_LISTED} are listed.` : `${count} found.`
}

const stayWords = (count: number) =>
  count === 0
    ? "All can be replaced."
    : `${count} ${count === 1 ? "stays" : "stay"} as ${count === 1 ? "it is" : "they are"}.`

function Choice({
  chosen,
  onChoose,
  children,
}: {
  chosen: boolean
  onChoose: (on: boolean) => void
  children: string
}) {
  return (
    <label>
      <input type="checkbox" checked={chosen} onChange={({target}) => onChoose(target.checked)} /> {children}
    </label>
  )
}

/** Where it stands, and what stands there. */
function HitWords({document, hit}: {document: Document; hit: Hit}) {
  const {before, found, after} = excerpt(hit)
  return (
    <>
      <span className="place">{hitName(document, hit)}</span>{" "}
      <span className="text">
        {before}
        <mark>{found}</mark>
        {after}
      </span>
    </>
  )
}

/** What replacing would make of a hit, or why it stays. */
function Outcome({
  document,
  replacement,
  isKept,
  onKeep,
}: {
  document: Document
  replacement: Replacement
  isKept: boolean
  onKeep: () => void
}) {
  const {hit, entry} = replacement
  if ("refused" in entry) return <p className="q">Stays as it is. {entry.refused}.</p>
  const {before, after} = inShort(replacement)
  return (
    <label className="outcome">
      <input type="checkbox" checked={!isKept} onChange={onKeep} />
      <span>
        <span className="hide">Replace in {hitName(document, hit)}:</span> {before}{" "}
        <span aria-hidden="true">→</span>
        <span className="hide">becomes</span> <b>{after === "" ? "blank" : after}</b>
      </span>
    </label>
  )
}
