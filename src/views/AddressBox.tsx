import {useState} from "react"
import {blockAt, blockText, chooseBlock, chosenBlock} from "../editor/block"
import {keepEditing} from "../editor/editing"
import type {Store} from "../editor/store"
import {namesIn} from "../workbook/names"
import {useEditor} from "./useEditor"

/** Where the chosen cells stand. Typing another address, range or name and Enter chooses that. */
export function AddressBox({store, onLeave}: {store: Store; onLeave: () => void}) {
  const state = useEditor(store)
  const [typed, setTyped] = useState<string | null>(null)

  const go = () => {
    const {document, cell} = state
    const names = new Map(namesIn(document).map(({name, at}) => [name.toLowerCase(), at]))
    const block = blockAt(document, cell.sheet, typed ?? "", names)
    if (!block) {
      store.turn(() => ({
        said: `“${typed}” is no cell, range, named value or sheet. Type it as B7, B2:D9 or Prices!A1.`,
      }))
      return
    }
    if (!keepEditing(store, 0, 0)) return
    setTyped(null)
    store.turn(chooseBlock(block))
    onLeave()
  }
  return (
    <input
      className="at"
      aria-label="Chosen cells; type an address, range or name to go there"
      value={typed ?? blockText(chosenBlock(state))}
      size={Math.max(4, (typed ?? blockText(chosenBlock(state))).length)}
      spellCheck={false}
      onFocus={({currentTarget}) => currentTarget.select()}
      onBlur={() => setTyped(null)}
      onChange={({currentTarget}) => setTyped(currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== "Escape") return
        event.preventDefault()
        if (event.key === "Enter" && typed !== null) go()
        else {
          setTyped(null)
          onLeave()
        }
      }}
    />
  )
}
