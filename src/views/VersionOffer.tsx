import {useState} from "react"
import {showPanel} from "../editor/selection"
import type {Store} from "../editor/store"
import type {Document} from "../workbook/document"
import type {Keeping} from "./keeping"
import {useEditor} from "./useEditor"

/**
 * After a named value was changed and moved others, such as the calibration of the readings: offers to keep the state before it
 * as a version, for comparing it with now.
 */
export function VersionOffer({store, keeping}: {store: Store; keeping: Keeping}) {
  const {document, undoable, changes} = useEditor(store)
  const [kept, setKept] = useState<Document | null>(null)
  const step = undoable.at(-1)
  if (!step || step.opens || step.document === kept || changes.length === 0) return null
  if (!changesNames(step.document, document)) return null
  const keep = async () => {
    const {name} = document
    const version = {
      workbook: name,
      name: `before: ${step.name}`,
      by: "",
      reason: "kept by itself",
      at: new Date(),
    }
    store.turn(showPanel("where from")) // the list of versions is read when it opens
    const refused = await keeping.versions.keep(version, step.document)
    if (!refused) setKept(step.document)
    store.turn((state) => ({
      ...showPanel("versions")(state),
      said: refused ? `${refused.refused}.` : `The state before is kept as the version “${version.name}”.`,
    }))
  }
  return (
    <button className="plain" onClick={() => void keep()}>
      Keep the state before as a version
    </button>
  )
}

const changesNames = (before: Document, {sheets}: Document) =>
  sheets.some((sheet, i) => sheet.names && before.sheets[i] !== sheet)
