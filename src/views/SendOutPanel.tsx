import {useEffect, useState} from "react"
import type {Store} from "../editor/store"
import type {Keeping, OutCopy} from "./keeping"
import {LeftList} from "./LeftList"
import {onceDrawn} from "./onceDrawn"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

const COPIES: readonly {words: string; about: string; copy: OutCopy}[] = [
  {
    words: "Values alone, .xlsx",
    about:
      "For a lender or adviser: all numbers as they are shown, and a sheet that says in words how each was worked out.",
    copy: {form: "xlsx", holds: "values"},
  },
  {words: "Values alone, .ods", about: "The same, in the other form.", copy: {form: "ods", holds: "values"}},
  {
    words: "With formulas, .xlsx",
    about:
      "All formulas with the values they have now, metric as they are stored. Functions of ours are unknown to other programs: there they show the value until they are worked out anew.",
    copy: {form: "xlsx", holds: "formulas"},
  },
  {
    words: "With formulas, .ods",
    about:
      "The same, in the other form. Some programs work an .ods out anew as soon as it opens, and show #NAME? for what our functions gave: to be read, send values alone.",
    copy: {form: "ods", holds: "formulas"},
  },
  {
    words: "This sheet, .csv",
    about:
      "Its values as a table in text. Words that another program could take for a formula begin with an apostrophe.",
    copy: {form: "csv"},
  },
]

/** Parts of the program come when they are asked for: a page that has lost its server, or is older than what lies there, gets none. */
const NOT_ALL_HERE = "A part of the program did not come: keep a file copy, and load this page again."
const NOT_KNOWN = `What that is cannot be told. ${NOT_ALL_HERE}`

interface Props {
  store: Store
  keeping: Keeping
  onClose: () => void
}

/** Copies for other programs. */
export function SendOutPanel({store, keeping, onClose}: Props) {
  const {document, cell} = useEditor(store)
  const [chosen, setChosen] = useState(0)
  const [found, setFound] = useState<{readonly of: readonly unknown[]; readonly left: readonly string[]}>()
  const [isAtWork, setAtWork] = useState(false)
  const {copy} = COPIES[chosen]!
  const {sheet} = cell
  const left = [copy, document, sheet].every((one, i) => found?.of[i] === one) ? found!.left : null
  useEffect(() => {
    let isWanted = true
    const of = [copy, document, sheet]
    const look = async () => {
      const left = await keeping.leftOut(copy).catch(() => [NOT_KNOWN])
      if (isWanted) setFound({of, left})
    }
    onceDrawn(() => isWanted && void look())
    return () => {
      isWanted = false
    }
  }, [keeping, copy, document, sheet])
  const send = async () => {
    setAtWork(true)
    try {
      await keeping.sendOut(copy)
    } catch {
      store.turn(() => ({said: `Nothing was sent out. ${NOT_ALL_HERE}`}))
    }
    setAtWork(false)
  }
  return (
    <PanelFrame title="Send out" holds="files-panel" onClose={onClose}>
      <p>A copy for other programs. To keep the workbook itself, keep a file copy.</p>
      <fieldset>
        <legend>What is sent</legend>
        {COPIES.map(({words}, i) => (
          <label key={words}>
            <input type="radio" name="copy" checked={i === chosen} onChange={() => setChosen(i)} /> {words}
          </label>
        ))}
      </fieldset>
      <p className="small q">
        {COPIES[chosen]!.about}
        {COPIES[chosen]!.copy.form === "csv" && ` The open sheet is ${document.sheets[cell.sheet]!.name}.`}
      </p>
      <div aria-live="polite" aria-busy={left === null}>
        <p>What is not in the file:</p>
        {left === null ? <p className="small q">Looking at the workbook …</p> : <LeftList left={left} />}
      </div>
      <div className="acts">
        <button className="chief" disabled={isAtWork || left === null} onClick={() => void send()}>
          Send it out
        </button>
      </div>
    </PanelFrame>
  )
}
