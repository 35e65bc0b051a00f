import {blockText, chosenBlock} from "../editor/block"
import {emptied} from "../editor/blockActs"
import {copyChosen, pasteTable, readTable} from "../editor/clipboard"
import type {Store} from "../editor/store"

/** The browser's event of this kind; React's has it too. */
type ClipboardAsk = Pick<ClipboardEvent, "type" | "clipboardData" | "preventDefault">

/** What the sheet answers when the browser asks it to copy, cut or paste; while a cell is edited the field answers. */
export function sheetClipboard(store: Store) {
  const onCopy = (event: ClipboardAsk) => {
    if (store.getState().editing) return
    event.preventDefault()
    const {plain, html} = copyChosen(store)
    event.clipboardData?.setData("text/plain", plain)
    event.clipboardData?.setData("text/html", html)
    const said = `${blockText(chosenBlock(store.getState()))} copied.`
    store.turn(() => ({said}))
    if (event.type === "cut") emptied(store)
  }
  const onPaste = (event: ClipboardAsk) => {
    if (store.getState().editing) return
    event.preventDefault()
    const {clipboardData} = event
    const [plain, html] = [clipboardData?.getData("text/plain"), clipboardData?.getData("text/html")]
    if (plain || html) pasteTable(store, readTable(plain ?? "", html))
  }
  return {onCopy, onCut: onCopy, onPaste}
}
