/** What a first visit sees on the demonstration farm: what this is, how it answers, and how to begin one's own. */
export const Welcome = ({onBegin}: {onBegin?: () => void}) => (
  <p className="welcome" role="note">
    <span>
      This farm is invented: six plantings of green asparagus in late May, each with the day it closes and
      what holds it. Change any number and all that rests on it follows; Undo takes it back, and Where from
      says what a number rests on. What you type stays on this device.
    </span>{" "}
    <button onClick={onBegin} disabled={!onBegin}>
      Begin your own workbook
    </button>
  </p>
)
