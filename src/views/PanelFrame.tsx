import {useId, type KeyboardEvent, type ReactNode, type Ref} from "react"
import "./panel.css"

interface Props {
  title: string
  onClose: () => void
  /** What it holds, for its style: "keys-panel". */
  holds: string
  /** Buttons beside the one that puts it away. */
  acts?: ReactNode
  frameRef?: Ref<HTMLElement>
  onKeyDown?: (event: KeyboardEvent) => void
  children: ReactNode
}

/** A panel beside the content line: its title, the way to put it away, which Esc is too, and what it holds. */
export function PanelFrame({title, onClose, holds, acts, frameRef, onKeyDown, children}: Props) {
  const id = useId()
  const closeByEsc = ({key, nativeEvent}: KeyboardEvent) => {
    if (key === "Escape" && !nativeEvent.isComposing) onClose()
  }
  return (
    <section
      ref={frameRef}
      className={`panel ${holds}`}
      aria-labelledby={id}
      onKeyDown={onKeyDown ?? closeByEsc}
    >
      <div className="top">
        <h2 id={id} tabIndex={-1}>
          {title}
        </h2>
        <span className="acts">
          {acts}
          <button className="plain" onClick={onClose}>
            Put away
          </button>
        </span>
      </div>
      {children}
    </section>
  )
}
