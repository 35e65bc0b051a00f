import {useEffect, useId, useLayoutEffect, useRef, useState} from "react"
import {awaitCorner, chooseColumns, chooseRows, chosenBlock} from "../editor/block"
import {copyChosen, pasteTable, readTable} from "../editor/clipboard"
import {markCut} from "../editor/cut"
import {insertRowsAbove, rowActs} from "../editor/commands/rows"
import {fillDown, fillRight, fillSeries, seriesBegins, STEPS, type Step} from "../editor/commands/fill"
import {emptied, filled} from "../editor/blockActs"
import {deleteRows} from "../editor/deletion"
import {openChoices} from "../editor/editing"
import {showPanel} from "../editor/selection"
import {sortRows} from "../editor/sortRows"
import {showAllRows, showOnlyLikeThis} from "../editor/showOnly"
import type {Panel, Store} from "../editor/store"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  onDone: () => void
}

/** Acts on the chosen cells that have a key too, or need more to be said. Opened by its button, Shift+F10, the menu key or the mouse's second button. */
export function MoreActs({store, onDone}: Props) {
  const state = useEditor(store)
  const {actsAt, only} = state
  const isOpen = actsAt !== null
  const {above, removal} = rowActs(state)
  const onOpen = (opens: boolean) => store.turn(() => ({actsAt: opens ? "button" : null}))
  const id = useId()
  const list = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    if (!actsAt || !list.current) return
    if (actsAt !== "button") putAt(list.current, actsAt === "cell" ? belowChosen() : actsAt)
    list.current.querySelector("button")?.focus({preventScroll: actsAt !== "button"})
  }, [actsAt])
  useEffect(() => {
    if (!isOpen) return
    const onElsewhere = ({target}: PointerEvent) => {
      if (!list.current?.parentElement?.contains(target as Node)) store.turn(() => ({actsAt: null}))
    }
    window.addEventListener("pointerdown", onElsewhere, true)
    return () => window.removeEventListener("pointerdown", onElsewhere, true)
  }, [isOpen, store])
  const does = (act: () => void) => () => {
    onOpen(false)
    act()
    onDone()
  }
  return (
    <div
      className="more-acts"
      role="presentation"
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !isOpen) return
        event.stopPropagation()
        does(() => {})()
      }}
      onBlur={({relatedTarget, currentTarget}) => {
        if (relatedTarget && !currentTarget.contains(relatedTarget)) onOpen(false)
      }}
    >
      <button aria-expanded={isOpen} aria-controls={id} onClick={() => onOpen(!isOpen)}>
        More acts
      </button>
      {isOpen && (
        <div
          id={id}
          className={actsAt === "button" ? "acts-list" : "acts-list at-cell"}
          ref={list}
          role="group"
          aria-label="More acts on the chosen cells"
        >
          <Item onClick={does(() => void copyToSystem(store, false))} keys="Ctrl+C">
            Copy
          </Item>
          <Item onClick={does(() => void copyToSystem(store, true))} keys="Ctrl+X">
            Cut
          </Item>
          <Item onClick={does(() => void pasteFromSystem(store, false))} keys="Ctrl+V">
            Paste
          </Item>
          <Item onClick={does(() => void pasteFromSystem(store, true))}>Values only</Item>
          <Item onClick={does(() => filled(store, fillDown))} keys="Ctrl+D">
            Fill down
          </Item>
          <Item onClick={does(() => filled(store, fillRight))} keys="Ctrl+R">
            Fill right
          </Item>
          <Item onClick={does(() => emptied(store))} keys="Delete">
            Empty
          </Item>
          <Item
            onClick={() => {
              onOpen(false)
              store.turn(openChoices)
              if (!store.getState().editing) onDone()
            }}
            keys="Alt+↓"
          >
            Choose a word from its list
          </Item>
          <Item onClick={does(() => store.turn(awaitCorner))}>Choose up to another cell</Item>
          <Item onClick={does(() => store.turn(chooseRows))} keys="Shift+Space">
            Choose whole rows
          </Item>
          <Item onClick={does(() => store.turn(chooseColumns))} keys="Ctrl+Space">
            Choose whole columns
          </Item>
          <Item onClick={does(() => sortRows(store, false))}>Sort rows, lowest first</Item>
          <Item onClick={does(() => sortRows(store, true))}>Sort rows, highest first</Item>
          <Item onClick={does(() => void store.run(insertRowsAbove))}>{above}</Item>
          <Item
            onClick={() => {
              onOpen(false)
              deleteRows(store)
              if (!store.getState().question) onDone()
            }}
          >
            {removal}
          </Item>
          {only ? (
            <Item onClick={does(() => showAllRows(store))}>Show all rows</Item>
          ) : (
            <Item onClick={does(() => showOnlyLikeThis(store))}>Show only rows like this</Item>
          )}
          {PANELS.map(({panel, words, keys}) => (
            <Item
              key={panel}
              {...(keys ? {keys} : {})}
              onClick={() => {
                onOpen(false)
                store.turn(showPanel(panel))
              }}
            >
              {words}
            </Item>
          ))}
          <Series store={store} onDone={does(() => {})} />
        </div>
      )}
    </div>
  )
}

/** Where the chosen cell ends on screen; the upper left of the window while it is not drawn. */
function belowChosen() {
  const {left = 0, bottom = 0} =
    window.document.querySelector('.ag-cell[data-chosen="cell"]')?.getBoundingClientRect() ?? {}
  return {x: left, y: bottom}
}

/** Puts the list at a place of the window, and far enough up and left to be seen whole. */
function putAt({style, offsetWidth, offsetHeight}: HTMLElement, {x, y}: {x: number; y: number}) {
  const {clientWidth, clientHeight} = window.document.documentElement
  style.left = `${Math.max(0, Math.min(x, clientWidth - offsetWidth))}px`
  style.top = `${Math.max(0, Math.min(y, clientHeight - offsetHeight))}px`
}

/** Panels that say more of what is chosen. */
const PANELS: readonly {readonly panel: Panel; readonly words: string; readonly keys?: string}[] = [
  {panel: "note", words: "Note on the cell", keys: "Shift+F2"},
  {panel: "names", words: "Name this value"},
  {panel: "cases", words: "Cases"},
  {panel: "column", words: "Column: heading, width, format"},
  {panel: "sheet", words: "Sheet: name, place, copy"},
]

function Item({onClick, keys, children}: {onClick: () => void; keys?: string; children: string}) {
  return (
    <button className="plain" onClick={onClick}>
      {children}
      {keys && <kbd>{keys}</kbd>}
    </button>
  )
}

/** Continues the first chosen cell by a step. */
function Series({store, onDone}: {store: Store; onDone: () => void}) {
  const state = useEditor(store)
  const begins = seriesBegins(state)
  const [by, setBy] = useState("1")
  const [chosen, setStep] = useState<Step>("days")
  const {rows, cols} = chosenBlock(state)
  const along = rows[0] === rows[1] && cols[0] < cols[1] ? "cols" : "rows"
  const chosenCells = along === "cols" ? cols[1] - cols[0] + 1 : rows[1] - rows[0] + 1
  const [cells, setCells] = useState(chosenCells > 1 ? String(chosenCells) : "")
  if (!begins)
    return <p className="small q">For a series choose a cell with a number or a date to begin with.</p>
  const step = begins === "number" ? "number" : chosen
  const number = Number(by.replace(",", "."))
  const fits =
    by.trim() !== "" && Number.isFinite(number) && (begins === "number" || Number.isInteger(number))
  const count = Number(cells)
  const isCount = Number.isInteger(count) && count > 1 && count <= MOST_CELLS
  return (
    <form
      className="series"
      onSubmit={(event) => {
        event.preventDefault()
        if (!fits) {
          const said =
            begins === "number"
              ? `“${by}” is no step: type a number.`
              : `“${by}” is no step: type a whole number.`
          store.turn(() => ({said}))
          return
        }
        if (!isCount) {
          const said = `Over how many cells, the first counted? Type a whole number from 2 to ${MOST_CELLS}.`
          store.turn(() => ({said}))
          return
        }
        filled(store, fillSeries(number, step, along, count))
        onDone()
      }}
    >
      <label>
        Continue by steps of{" "}
        <input
          value={by}
          size={4}
          inputMode="decimal"
          aria-invalid={!fits}
          onChange={({currentTarget}) => setBy(currentTarget.value)}
        />
      </label>
      {begins === "date" && (
        <select
          aria-label="Unit of the steps"
          value={chosen}
          onChange={({currentTarget}) => setStep(currentTarget.value as Step)}
        >
          {STEPS.filter((one) => one !== "number").map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      )}
      <label>
        over{" "}
        <input
          value={cells}
          size={4}
          inputMode="numeric"
          aria-invalid={cells !== "" && !isCount}
          onChange={({currentTarget}) => setCells(currentTarget.value)}
        />{" "}
        cells {along === "rows" ? "down" : "to the right"}
      </label>
      <button>Continue</button>
    </form>
  )
}

const MOST_CELLS = 1000 // chosen: more days than two seasons have

const NOT_ALLOWED = "This browser does not allow it from a button here: use the keys."

async function copyToSystem(store: Store, cuts: boolean) {
  const {plain, html, cells} = copyChosen(store)
  try {
    const blob = (text: string, type: string) => new Blob([text], {type})
    await navigator.clipboard.write([
      new ClipboardItem({"text/plain": blob(plain, "text/plain"), "text/html": blob(html, "text/html")}),
    ])
    store.turn(cuts ? markCut(cells) : () => ({cut: null, said: "Copied."}))
  } catch {
    store.turn(() => ({said: NOT_ALLOWED}))
  }
}

async function pasteFromSystem(store: Store, valuesOnly: boolean) {
  try {
    const plain = await navigator.clipboard.readText()
    pasteTable(store, readTable(plain), {valuesOnly})
  } catch {
    store.turn(() => ({said: NOT_ALLOWED}))
  }
}
