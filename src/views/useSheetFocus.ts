import {createRef, useEffect, useMemo} from "react"
import type {KeyPress} from "../editor/keyPress"
import {pressKey, pressPageKey} from "../editor/sheetKeys"
import type {Store} from "../editor/store"
import {sheetClipboard} from "./sheetClipboard"
import {MOST_ROWS_SHOWN} from "./sheetSize"

/** What others may ask of the sheet on screen. */
export interface SheetFocus {
  /** Takes the keyboard's focus to the chosen cell; false while that is not drawn yet. */
  focus(): boolean
  /** Scrolls the chosen cell into view; the focus stays where it is. */
  show(): void
}

export type SheetKeys = ReturnType<typeof sheetKeys>

/** The keyboard's way to the sheet: `grid` is the sheet on screen, once there is one. */
export function useSheetFocus(store: Store, keepFileCopy: () => void) {
  const keys = useMemo(() => sheetKeys(store, keepFileCopy), [store, keepFileCopy])
  useEffect(() => keys.stop, [keys])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing || isWriting(event.target)) return
      if (pressPageKey(store, event, {page: PAGE, keepFileCopy})) event.preventDefault()
    }
    window.addEventListener("keydown", onKey)
    return () => window.removeEventListener("keydown", onKey)
  }, [store, keepFileCopy])
  return keys
}

/** Whether the keyboard is where text is written, which has an undoing of its own. */
const isWriting = (target: EventTarget | null) =>
  target instanceof HTMLElement &&
  (target.isContentEditable || target.matches("input:not([type=radio], [type=checkbox]), textarea, select"))

const PAGE = MOST_ROWS_SHOWN - 1

/**
 * A sheet that opens, a new row and one that is scrolled to are drawn a moment after they are chosen. Until the cell has the
 * focus, that stays where it was, so that nothing else is heard, and what is pressed goes to the sheet all the same.
 */
function sheetKeys(store: Store, keepFileCopy: () => void) {
  const grid = createRef<SheetFocus>()
  let waits: AbortController | null = null
  const stop = () => {
    waits?.abort()
    waits = null
  }
  /** Takes the focus to the chosen cell, as soon as that is there. */
  const focus = () => {
    if (grid.current?.focus()) stop()
    else if (!waits) wait()
  }
  /** Handles a key pressed on the sheet; answers whether it was used. */
  const press = (event: KeyPress & {preventDefault(): void}) => {
    const {asksToFind} = store.getState()
    if (!pressKey(store, event, {page: PAGE, keepFileCopy})) return false
    event.preventDefault()
    const {editing, asksToFind: asked} = store.getState()
    if (!editing && asked === asksToFind) focus()
    return true
  }
  const {onCopy, onPaste} = sheetClipboard(store)
  const wait = () => {
    waits = new AbortController()
    const {signal} = waits
    const hears = {signal, capture: true}
    const again = () => {
      if (signal.aborted) return
      focus()
      requestAnimationFrame(again)
    }
    requestAnimationFrame(again)
    window.addEventListener("focusin", stop, hears) // it came, or was wanted elsewhere
    window.addEventListener(
      "keydown",
      (event) => {
        if (event.key === "Escape")
          stop() // no key may be held for good
        else if (!event.isComposing && press(event)) event.stopPropagation()
      },
      hears,
    )
    const toSheet = (act: (event: ClipboardEvent) => void) => (event: ClipboardEvent) => {
      act(event)
      event.stopPropagation()
    }
    window.addEventListener("copy", toSheet(onCopy), hears)
    window.addEventListener("cut", toSheet(onCopy), hears)
    window.addEventListener("paste", toSheet(onPaste), hears)
  }
  return {grid, focus, press, stop}
}
