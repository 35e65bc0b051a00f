import {useEffect, useState} from "react"
import {askToOwn} from "../editor/reading"
import type {Store} from "../editor/store"
import type {Document} from "../workbook/document"
import {readingState, type ReadingState} from "../workbook/reading"
import {readingWords} from "./readingWords"
import {useEditor} from "./useEditor"

/** Over every sheet of a reading copy: who made it, whether it is what it was, and the way to a copy of one's own. */
export function ReadingLine({store}: {store: Store}) {
  const {document} = useEditor(store)
  const [found, setFound] = useState<{document: Document; state: ReadingState} | null>(null)
  const mark = document.reading
  useEffect(() => {
    if (!mark) return
    let isWanted = true
    void readingState(store.workbook, mark).then((state) => isWanted && setFound({document, state}))
    return () => {
      isWanted = false
    }
  }, [store, document, mark])
  if (!mark) return null
  return (
    <p className="only" role="note">
      {readingWords(mark, found?.document === document ? found.state : null)}{" "}
      <button onClick={() => store.turn(() => askToOwn)}>Make your own copy…</button>
    </p>
  )
}
