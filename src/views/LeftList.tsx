import {useFirsts} from "./useFirsts"

/** Sentences on what could not be taken along, the first of them where there are many, and all when asked for. */
export function LeftList({left}: {left: readonly string[]}) {
  const {listed, more} = useFirsts(left)
  return (
    <>
      <div className="preview" tabIndex={0} role="group" aria-label="What is left, can be scrolled">
        <ul>
          {listed.map((sentence, i) => (
            <li key={i}>{sentence}.</li>
          ))}
        </ul>
      </div>
      {more}
    </>
  )
}
