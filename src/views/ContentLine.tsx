import {type KeyboardEvent, useId, useLayoutEffect, useMemo, useRef, useState} from "react"
import {callAt, offersAt, withOffer, type Call, type Offer} from "../editor/completion"
import {numberText} from "../editor/display"
import {columnAt, dropEditing, keepEditing, startEditing, typeText} from "../editor/editing"
import {readsAs} from "../editor/entry"
import type {Store} from "../editor/store"
import {contentAt} from "../workbook/document"
import {cellText, tokens} from "../workbook/formula"
import {keyOfRow} from "../workbook/trace"
import {formulaIn, namesIn} from "../workbook/workbook"
import {numberedReferences} from "./cellView"
import {AddressBox} from "./AddressBox"
import {FunctionCard} from "./FunctionCard"
import {useEditor} from "./useEditor"
import "./contentLine.css"

const MOST_OFFERS = 8

/** The line where a cell is read and typed: its address and name above, completion and the meaning of arguments below. */
export function ContentLine({store, onLeave}: {store: Store; onLeave: () => void}) {
  const state = useEditor(store)
  const {document, cell, editing, question} = state
  const field = useRef<HTMLTextAreaElement>(null)
  const id = useId()
  const [active, setActive] = useState<number | null>(null)
  const [closed, setClosed] = useState(false)

  const column = columnAt(document, cell)
  const text = editing?.text ?? readsAs(contentAt(document, cell), column, formulaIn(document, cell))
  const caret = editing?.caret ?? text.length
  const names = useMemo(
    () => namesIn(document).map(({name, at}) => ({name, gives: unitOfName(document, at)})),
    [document],
  )
  const offers = useMemo(
    () =>
      editing && !closed
        ? offersAt(text, caret, names, store.workbook.standardFunctions).slice(0, MOST_OFFERS)
        : [],
    [editing, closed, text, caret, names, store],
  )
  const call = editing ? callAt(text, caret) : null
  const chosen = offers[active ?? 0]

  // Typing on a cell begins here: the keyboard's focus comes along before the next key, the caret where the text stands.
  useLayoutEffect(() => {
    if (!editing || !field.current) return
    if (window.document.activeElement !== field.current) field.current.focus({preventScroll: false})
    if (field.current.selectionStart !== editing.caret)
      field.current.setSelectionRange(editing.caret, editing.caret)
  }, [editing])

  const type = (next: string, at: number) => {
    setActive(null)
    setClosed(false)
    store.turn(typeText(next, at))
  }
  const take = (offer: Offer) => {
    const next = withOffer(text, caret, offer)
    setActive(null)
    setClosed(true)
    store.turn(typeText(next.text, next.caret))
  }
  const leave = (down: number, right: number) => {
    if (keepEditing(store, down, right)) onLeave()
  }

  const onKeyDown = (event: KeyboardEvent) => {
    const {key, shiftKey} = event
    const listed = offers.length > 0
    const used = () => {
      event.preventDefault()
      event.stopPropagation()
    }
    if (key === "Enter") {
      used()
      if (listed && active !== null && chosen) take(chosen)
      else if (editing) leave(shiftKey ? -1 : 1, 0)
      else store.turn(startEditing)
    } else if (key === "Tab" && editing) {
      used()
      if (listed && chosen && !shiftKey) take(chosen)
      else leave(0, shiftKey ? -1 : 1)
    } else if (key === "Escape" && editing) {
      used()
      if (listed) setClosed(true)
      else {
        store.turn(dropEditing)
        onLeave()
      }
    } else if (key === "F2" && editing) {
      used()
      store.turn(({editing: typing}) => ({editing: {...typing!, arrowsLeave: false}}))
    } else if ((key === "ArrowDown" || key === "ArrowUp") && editing) {
      const down = key === "ArrowDown" ? 1 : -1
      if (listed) {
        used()
        setActive(
          (active === null ? (down === 1 ? 0 : offers.length - 1) : active + down + offers.length) %
            offers.length,
        )
      } else if (editing.arrowsLeave) {
        used()
        leave(down, 0)
      }
    } else if ((key === "ArrowLeft" || key === "ArrowRight") && editing?.arrowsLeave) {
      used()
      leave(0, key === "ArrowRight" ? 1 : -1)
    }
  }

  return (
    <section className="content" aria-label="Content of the chosen cell">
      <div className="what">
        <AddressBox store={store} onLeave={onLeave} />
        <span>
          {column?.heading}
          {cell.col > 0 &&
            cell.row < document.sheets[cell.sheet]!.rows.length &&
            `, ${keyOfRow(document, cell)}`}
        </span>
        <span className="state">{editing ? "editing" : question ? "a question" : ""}</span>
      </div>
      <div className="line">
        <div className="mirror" aria-hidden="true">
          <Coloured text={text} />
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
          aria-controls={`${id}list`}
          {...(offers.length > 0 && active !== null ? {"aria-activedescendant": `${id}offer${active}`} : {})}
          aria-describedby={`${id}hint`}
          {...(editing?.refused ? {"aria-invalid": true} : {})}
          value={text}
          onChange={({target}) => type(target.value.replaceAll("\n", " "), target.selectionStart)}
          onSelect={({currentTarget: {selectionStart}}) => {
            if (editing && selectionStart !== editing.caret)
              store.turn(typeText(editing.text, selectionStart))
          }}
          onPointerUp={() =>
            editing && store.turn(({editing: typing}) => ({editing: {...typing!, arrowsLeave: false}}))
          }
          onKeyDown={onKeyDown}
        />
      </div>
      <div id={`${id}hint`} className="hint">
        {editing?.refused ? (
          <p className="refused">{editing.refused}.</p>
        ) : call ? (
          <CallHint call={call} />
        ) : editing ? (
          <p className="q">Enter keeps it, Esc drops it.</p>
        ) : null}
      </div>
      {offers.length > 0 && (
        <div className="offer">
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

/** The text of a formula with each reference in the line kind and colour of its cells on the sheet. */
function Coloured({text}: {text: string}) {
  const numbers = numberedReferences(text)
  if (!text.startsWith("=")) return <>{text || "\u00a0"}</>
  return (
    <>
      {tokens(text).map(({kind, text: piece}, i) => {
        const number = kind === "reference" ? numbers.get(piece) : undefined
        return number ? (
          <span key={i} className={`r${number}`}>
            {piece}
          </span>
        ) : (
          <span key={i}>{piece}</span>
        )
      })}
    </>
  )
}

/** The call round the caret, the argument that stands there underlined, with what it means and may be. */
function CallHint({call: {name, argument, definition}}: {call: Call}) {
  if (!definition) return <p>{name}(…), a standard function</p>
  const parameters = Object.entries(definition.parameters)
  const here = parameters[Math.min(argument, parameters.length - 1)]
  return (
    <p>
      {name}(
      {parameters.map(([key, {absent}], i) => (
        <span key={key} className={i === argument ? "now" : "arg"}>
          {i > 0 && ", "}
          {absent ? `[${key}]` : key}
        </span>
      ))}
      ){" "}
      {here && argument < parameters.length && (
        <>
          <b>{here[0]}</b>: {here[1].label}, {here[1].takes}
          {here[1].absent && `; left out: ${here[1].absent.words || "none"}`}
        </>
      )}
      {argument >= parameters.length && <b>one argument too many</b>}
    </p>
  )
}

function OfferHelp({store, offer: {name, kind}}: {store: Store; offer: Offer}) {
  if (kind === "our function") return <FunctionCard store={store} name={name} short />
  if (kind === "function") return <div className="help">A standard function.</div>
  const {document} = store.getState()
  const named = namesIn(document).find((one) => one.name === name)
  const value = named && store.valueAt(named.at)
  const note =
    named && document.sheets[named.at.sheet]!.rows[named.at.row]!.slice(3).filter(Boolean).join(". ")
  return (
    <div className="help">
      <h3>{name}</h3>
      <p>
        A named value{typeof value === "number" && `, now ${numberText(value)}`}. {note}
      </p>
    </div>
  )
}

function unitOfName(document: Parameters<typeof namesIn>[0], at: {sheet: number; row: number}): string {
  const unit = document.sheets[at.sheet]?.rows[at.row]?.[2]
  return typeof unit === "string" ? unit : ""
}
