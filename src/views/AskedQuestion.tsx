import {answerYes} from "../editor/editing"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import {useEditor} from "./useEditor"

/** A question that waits for a yes, with links to the cells it speaks of. */
export function AskedQuestion({store, onDone}: {store: Store; onDone: () => void}) {
  const {question} = useEditor(store)
  if (!question) return null
  const leave = () => {
    store.turn(() => ({question: null, said: "Unchanged."}))
    onDone()
  }
  return (
    <div
      className="note"
      role="alertdialog"
      aria-labelledby="question"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return
        event.stopPropagation()
        leave()
      }}
    >
      <p id="question">{question.asks}</p>
      {question.links && (
        <ul className="links">
          {question.links.map(({at, words}) => (
            <li key={words}>
              <button
                className="plain"
                onClick={() => {
                  store.turn(choose(at))
                  onDone()
                }}
              >
                {words}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="acts">
        <button
          className="chief"
          autoFocus
          onClick={() => {
            answerYes(store)
            onDone()
          }}
        >
          {question.yes}
        </button>
        <button onClick={leave}>Leave it</button>
      </div>
    </div>
  )
}
