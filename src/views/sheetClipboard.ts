import {blockText, spanOf} from "../editor/block"
import {copyChosen, pasteTable, readTable} from "../editor/clipboard"
import {markCut} from "../editor/cut"
import type {Store} from "../editor/store"

/** The browser's event of this kind; React's has it too. */
type ClipboardAsk = Pick<ClipboardEvent, "type" | "clipboardData" | "preventDefault">

/** What the sheet answers when the browser asks it to copy, cut or paste; while a cell is edited the field answers. */
export function sheetClipboard(store: Store) {
  const onCopy = (event: ClipboardAsk) => {
    if (store.getState().editing) return
    event.preventDefault()
    const {plain, html, cells} = copyChosen(store)
    event.clipboardData?.setData("text/plain", plain)
    event.clipboardData?.setData("text/html", html)
    const said = `${blockText(spanOf(cells))} copied.`
    store.turn(event.type === "cut" ? markCut(cells) : () => ({cut: null, said}))
  }
  const onPaste = (event: ClipboardAsk) => {
    if (store.getState().editing) return
    event.preventDefault()
    const {clipboardData} = event
    const [plain, html] = [clipboardData?.getData("text/plain"), clipboardData?.getData("text/html")]
    pasteTable(store, readTable(plain ?? "", html))
  }
  return {onCopy, onCut: onCopy, onPaste}
}
