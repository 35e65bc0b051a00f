import {useState, type ReactNode} from "react"

/** So many are listed at first, and so many at the most, that the page stays quick; chosen. */
const FIRSTS = 12
const MOST = 1000

/** The first of a long list, and a button for all of it where a decision rests on that. */
export function useFirsts<T>(all: readonly T[], firsts = FIRSTS): {listed: readonly T[]; more: ReactNode} {
  const [isWhole, setWhole] = useState(false)
  if (all.length <= firsts) return {listed: all, more: null}
  const most = Math.min(MOST, all.length)
  const beyond = all.length - most
  return {
    listed: all.slice(0, isWhole ? most : firsts),
    more: (
      <p className="small q">
        <button className="plain" aria-expanded={isWhole} onClick={() => setWhole(!isWhole)}>
          {isWhole
            ? `Show the first ${firsts}`
            : `Show ${beyond ? `${most} of ${all.length}` : `all ${all.length}`}`}
        </button>
        {isWhole && beyond > 0 && ` and ${beyond} more`}
      </p>
    ),
  }
}
