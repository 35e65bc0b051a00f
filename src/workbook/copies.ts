import type {CopyMark, Document} from "./document"

/** So many earlier copies are named in a file at the most; chosen. */
const MOST_NAMED = 100

/**
 * The document as it goes into a file, marked with the copies that it goes back to: those its own mark names, then those
 * kept or opened on this device, the latest last.
 */
export function markedCopy(
  {sheets, copy, ...rest}: Document,
  onDevice: readonly string[],
  mark: Omit<CopyMark, "after">,
): Document {
  const earlier = copy ? idsOf(copy).filter((id) => !onDevice.includes(id)) : []
  return {...rest, copy: {...mark, after: [...earlier, ...onDevice].slice(-MOST_NAMED)}, sheets}
}

/** The latest of the copies at hand here that another file copy goes back to, itself left out; null where there is none. */
export function sharedCopy({copy}: Document, atHand: ReadonlySet<string>): string | null {
  return copy?.after.findLast((id) => atHand.has(id)) ?? null
}

const idsOf = ({id, after}: CopyMark) => [...after, id]
