import {type KeyboardEvent, useEffect, useId, useLayoutEffect, useMemo, useRef, useState} from "react"
import {pairAt, placedTokens} from "../editor/brackets"
import {callAt, offersAt, withOffer, type Call, type Offer} from "../editor/completion"
import {cellColumn, measureAt} from "../editor/cellColumn"
import {textWithUnit} from "../editor/display"
import {
  choicesNow,
  closeChoices,
  keepArrows,
  lineText,
  startEditing,
  takeChoice,
  typeText,
} from "../editor/editing"
import {troublesIn, type Trouble} from "../editor/entry"
import {pressLineKey, type NameList} from "../editor/lineKeys"
import {measureOf} from "../editor/measures"
import type {Store} from "../editor/store"
import {rowNames} from "../editor/words"
import type {CellAddress, Document} from "../workbook/document"
import {columnAt} from "../workbook/extras"
import {cellText} from "../workbook/formula"
import {decimalOf, regionOf, type Decimal} from "../workbook/region"
import {argumentSign} from "../workbook/screenFormula"
import {keyOfRow} from "../workbook/trace"
import {described, parameterFor} from "../../functions/described"
import {namedArguments} from "../../functions/standard/argumentNames"
import {namesIn} from "../workbook/names"
import {numberedReferences} from "./cellView"
import {AddressBox} from "./AddressBox"
import {FunctionCard} from "./FunctionCard"
import {useEditor} from "./useEditor"
import "./contentLine.css"

const MOST_OFFERS = 8
const REST = 500 // ms without a key before it is said what is off; chosen

/** The line where a cell is read and typed: its address and name above, completion and the meaning of arguments below. */
export function ContentLine({store, onLeave}: {store: Store; onLeave: () => void}) {
  const state = useEditor(store)
  const {document, editing, question} = state
  const cell = editing?.at ?? state.cell
  const field = useRef<HTMLTextAreaElement>(null)
  const id = useId()
  const [went, setWent] = useState<{at: CellAddress; to: number} | null>(null)
  const [closed, setClosed] = useState(false)

  /** The place in the list that arrow keys went to; null while they did not. */
  const active = went?.at === editing?.at ? (went?.to ?? null) : null
  const setActive = (to: number | null) => setWent(editing && to !== null ? {at: editing.at, to} : null)
  const column = columnAt(document, cell)
  const text = editing?.text ?? lineText(document, cell)
  const caret = editing?.caret ?? text.length
  const decimal = decimalOf(document)
  const isCounted = typeof column?.format === "number" || column?.format === undefined
  const unit = isCounted ? measureAt(document, cell).unit : ""
  const names = useMemo(
    () => namesIn(document).map(({name, at}) => ({name, gives: unitOfName(document, at)})),
    [document],
  )
  const offers = useMemo(
    () =>
      editing && !closed && !editing.pointed
        ? offersAt(text, caret, names, store.workbook.standardFunctions, decimal).slice(0, MOST_OFFERS)
        : [],
    [editing, closed, text, caret, names, store, decimal],
  )
  const call = editing ? callAt(text, caret, decimal) : null
  const words = choicesNow(state)
  const isOpen = words.length > 0 || offers.length > 0
  const chosen = words.length ? undefined : offers[active ?? 0]
  const isFormula = editing !== null && text.startsWith("=")
  const rests = useRested(text)
  const functions = useMemo(() => new Set(store.workbook.standardFunctions), [store])
  const allTroubles = useMemo(
    () =>
      isFormula && rests
        ? troublesIn(text, (formula) => store.workbook.normalized(formula), functions, document, decimal)
        : [],
    [isFormula, rests, text, functions, document, store, decimal],
  )

  // A name that the list still completes is not wrong yet.
  const isUnfinished = ({places}: Trouble) => offers.length > 0 && places.some(({end}) => end === caret)
  const troubles = allTroubles.filter((one) => !isUnfinished(one))

  // Typing on a cell begins here: the keyboard's focus comes along before the next key, the caret where the text stands.
  useLayoutEffect(() => {
    if (!editing || !field.current) return
    if (window.document.activeElement !== field.current) field.current.focus({preventScroll: false})
    if (editing.isMarked) field.current.select()
    else if (field.current.selectionStart !== editing.caret)
      field.current.setSelectionRange(editing.caret, editing.caret)
  }, [editing])

  // Under a long sheet the list would open below the page's end.
  const list = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (isOpen) list.current?.scrollIntoView({block: "nearest"})
  }, [isOpen])

  const type = (next: string, at: number) => {
    setActive(null)
    setClosed(false)
    store.turn(typeText(next, at))
  }
  const take = (offer: Offer) => {
    const next = withOffer(text, caret, offer, decimal)
    setActive(null)
    setClosed(true)
    store.turn(typeText(next.text, next.caret))
  }
  const takeWord = (word: string) => {
    setActive(null)
    if (takeChoice(store, word)) onLeave()
  }
  const count = words.length || offers.length
  const nameList: NameList = {
    isOpen,
    isChosen: active !== null,
    isMarked: active !== null || words.length === 0,
    step: (by) => setActive(((active ?? (by === 1 ? -1 : 0)) + by + count) % count),
    take() {
      if (chosen) take(chosen)
      else takeWord(words[active ?? 0]!)
    },
    close() {
      setActive(null)
      if (words.length) store.turn(closeChoices)
      else setClosed(true)
    },
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return // it belongs to the input method
    if (!editing) {
      if (event.key !== "Enter") return
      store.turn(startEditing)
    } else {
      if (!pressLineKey(store, event, nameList)) return
      const {editing: still, question: asked} = store.getState()
      if (!still && !asked) onLeave()
    }
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <section className="content" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`} className="hide">
        Content of the chosen cell
      </h2>
      <div className="what">
        <AddressBox store={store} onLeave={onLeave} />
        <span>
          {column?.heading}
          {cell.col > 0 &&
            cell.row < document.sheets[cell.sheet]!.rows.length &&
            `, ${keyOfRow(document, cell, rowNames(store.workbook))}`}
          {cell.sheet !== state.cell.sheet && `, of ${document.sheets[cell.sheet]!.name}`}
        </span>
        {unit && <span className="q">{unit}</span>}
        <span className="state">
          {editing ? "editing" : question ? "a question" : ""}
          {isFormula && document.region?.measures === "US" && ": numbers typed in a formula are metric"}
        </span>
      </div>
      <div className="line">
        <div className="mirror" aria-hidden="true">
          <Coloured text={text} caret={editing && caret} troubles={troubles} decimal={decimal} />
        </div>
        <textarea
          ref={field}
          rows={1}
          spellCheck={false}
          autoCapitalize="off"
          autoComplete="off"
          aria-label={`Content of ${cellText(cell.row, cell.col)}, ${column?.heading ?? ""}`}
          aria-haspopup="listbox"
          aria-autocomplete="list"
          {...(isOpen ? {"aria-controls": `${id}list`} : {})}
          {...(isOpen && active !== null ? {"aria-activedescendant": `${id}offer${active}`} : {})}
          aria-describedby={`${id}hint ${id}off`}
          {...(editing?.refused ? {"aria-invalid": true} : {})}
          value={text}
          onChange={({target}) => type(target.value.replaceAll("\n", " "), target.selectionStart)}
          onSelect={({currentTarget: {selectionStart}}) => {
            if (editing && selectionStart !== editing.caret)
              store.turn(typeText(editing.text, selectionStart))
          }}
          onPointerUp={() => store.turn(keepArrows)}
          onKeyDown={onKeyDown}
        />
      </div>
      <div id={`${id}hint`} className="hint">
        {editing?.refused ? (
          <p className="refused">{editing.refused}.</p>
        ) : call && functions.has(call.name) ? (
          <CallHint call={call} decimal={decimal} />
        ) : editing ? (
          <p className="q">Enter keeps it, Esc drops it.</p>
        ) : null}
      </div>
      <p id={`${id}off`} role="status" className={isFormula ? "off-line" : "off-line hide"}>
        {!editing?.refused && troubles.map(({words}) => `${words}.`).join(" ")}
        {rests && chosen && (
          <span className="hide">
            {offers.length === 1 ? "One name" : `${offers.length} names`}; Tab takes {chosen.name}.
          </span>
        )}
      </p>
      {words.length > 0 && (
        <div className="offer words" ref={list}>
          <ul role="listbox" id={`${id}list`} aria-label="Words for this cell">
            {words.map((word, i) => (
              <li
                key={word}
                id={`${id}offer${i}`}
                role="option"
                aria-selected={i === active}
                ref={i === active ? intoView : null}
                onPointerDown={(event) => event.preventDefault()}
                onPointerUp={() => takeWord(word)}
              >
                {word}
              </li>
            ))}
          </ul>
        </div>
      )}
      {words.length === 0 && offers.length > 0 && (
        <div className="offer" ref={list}>
          <ul role="listbox" id={`${id}list`} aria-label="Names that begin with what is typed">
            {offers.map((offer, i) => (
              <li
                key={offer.name}
                id={`${id}offer${i}`}
                role="option"
                aria-selected={i === (active ?? 0)}
                onPointerDown={(event) => {
                  event.preventDefault()
                  take(offer)
                }}
              >
                {offer.name} <span>{offer.gives}</span>
              </li>
            ))}
          </ul>
          {chosen && <OfferHelp store={store} offer={chosen} />}
        </div>
      )}
    </section>
  )
}

const intoView = (one: HTMLElement | null) => one?.scrollIntoView({block: "nearest"})

/** Whether the text has stood as it is for a while. */
function useRested(text: string): boolean {
  const [rested, setRested] = useState(text)
  useEffect(() => {
    const timer = setTimeout(() => setRested(text), REST)
    return () => clearTimeout(timer)
  }, [text])
  return rested === text
}

/**
 * The text of a formula: each reference in the line kind and colour of its cells on the sheet, the brackets that
 * belong to the one at the caret framed, and what is off underlined by a wave.
 */
function Coloured({
  text,
  caret,
  troubles,
  decimal,
}: {
  text: string
  caret: number | null
  troubles: readonly Trouble[]
  decimal: Decimal
}) {
  if (!text.startsWith("=")) return <>{text || "\u00a0"}</>
  const numbers = numberedReferences(text, decimal)
  const pair = caret === null ? null : pairAt(text, caret, decimal)
  const off = new Set(troubles.flatMap(({places}) => places.map(({start}) => start)))
  return (
    <>
      {placedTokens(text, decimal).map(({kind, text: piece, start}) => {
        const number = kind === "reference" ? numbers.get(piece) : undefined
        const marks = [number && `r${number}`, pair?.includes(start) && "pair", off.has(start) && "off"]
        return (
          <span key={start} className={marks.filter(Boolean).join(" ") || undefined}>
            {piece}
          </span>
        )
      })}
    </>
  )
}

/** The call round the caret, the argument that stands there underlined, with what it means and may be. */
function CallHint({call, decimal}: {call: Call; decimal: Decimal}) {
  const {name, argument, definition} = call
  const parameters = definition?.parameters ?? call.named
  if (!parameters) return <p>{name}(…), a general function</p>
  const now = parameterFor(parameters, argument)
  const here = now === null ? undefined : definition && Object.entries(definition.parameters)[now]
  return (
    <p>
      <Arguments parameters={parameters} name={name} now={now} decimal={decimal} />{" "}
      {here && (
        <>
          <b>{here[0]}</b>: {here[1].label}, {here[1].takes}
          {here[1].absent && `; left out: ${here[1].absent.words || "none"}`}
        </>
      )}
      {now === null && (
        <b>{Object.keys(parameters).length ? "one argument too many" : "takes no argument"}</b>
      )}
    </p>
  )
}

interface ArgumentsProps {
  name: string
  parameters: Readonly<Record<string, {absent?: unknown; mayBeAbsent?: true; repeats?: true}>>
  /** Which one is typed, counted from 0. */
  now: number | null
  decimal: Decimal
}

/** A call with the names of its arguments; in brackets those that may be left out. */
function Arguments({name, parameters, now, decimal}: ArgumentsProps) {
  const sign = argumentSign(decimal)
  const all = Object.entries(parameters)
  return (
    <>
      {name}(
      {all.map(([key, {absent, mayBeAbsent}], i) => (
        <span key={key} className={i === now ? "now" : "arg"}>
          {i > 0 && `${sign} `}
          {absent || mayBeAbsent ? `[${key}]` : key}
        </span>
      ))}
      {all.at(-1)?.[1].repeats && `${sign} …`})
    </>
  )
}

function OfferHelp({store, offer: {name, kind}}: {store: Store; offer: Offer}) {
  const isDescribed = kind !== "named value" && described.some((one) => one.name === name)
  if (isDescribed) return <FunctionCard store={store} name={name} short />
  const {document} = store.getState()
  if (kind === "function")
    return (
      <div className="help">
        <p>
          <Arguments
            name={name}
            parameters={namedArguments(name) ?? {}}
            now={null}
            decimal={decimalOf(document)}
          />
        </p>
        <p>A standard function.</p>
      </div>
    )
  const named = namesIn(document).find((one) => one.name === name)
  const value = named && store.valueAt(named.at)
  const note =
    named && document.sheets[named.at.sheet]!.rows[named.at.row]!.slice(3).filter(Boolean).join(". ")
  return (
    <div className="help">
      <h3>{name}</h3>
      <p>
        A named value
        {typeof value === "number" &&
          `, now ${textWithUnit(value, cellColumn(document, named!.at), false, regionOf(document))}`}
        . {note}
      </p>
    </div>
  )
}

function unitOfName(document: Document, at: {sheet: number; row: number}): string {
  const unit = document.sheets[at.sheet]?.rows[at.row]?.[2]
  return typeof unit === "string" ? measureOf(unit, regionOf(document)).unit : ""
}
