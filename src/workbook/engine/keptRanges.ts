import {SimpleRangeValue} from "hyperformula"
import {HAS_ACCENTS} from "./comparedWords"
import {insidesOfRange, nodeOf, type RangeNode, type Search} from "./insides"

/**
 * A range is read once for all the formulas that use it, as long as it holds the same. The engine would read it anew for
 * each of them: with a row for each planting, a cost that grows with the square of their number.
 */
export function readRangesOnce() {
  const values = insidesOfRange(SimpleRangeValue.prototype)
  const read = values.ensureThatComputed
  if (!read) return
  values.ensureThatComputed = function () {
    const {_data: alreadyRead} = insidesOfRange(this)
    if (alreadyRead !== undefined) return
    const node = nodeOf(this)
    const kept = node?.getFunctionValue(HELD) as SimpleRangeValue | undefined
    // A range of whole columns grows with its sheet, also where its own cells stay as they are.
    if (kept && kept.height() === this.height() && kept.width() === this.width()) {
      const {_data, _hasOnlyNumbers} = insidesOfRange(kept)
      Object.assign(this, {_data, _hasOnlyNumbers})
      return
    }
    read.call(this)
    node?.setFunctionValue(HELD, this)
  }
}

const HELD = "what the range holds"

/** Where a value stands first in a range is told by a table of all its values; whatever else is asked, as the engine finds it. */
export function lookUpByTable(search: Search) {
  const {find} = search
  if (!find) return
  search.find = function (key, range, options) {
    const {ordering, ifNoMatch, returnOccurrence = "first"} = options
    const isPlain = ordering === "none" && ifNoMatch === "returnNotFound" && returnOccurrence === "first"
    const node = isPlain ? nodeOf(range) : undefined
    return node ? (placesIn(node, range).get(comparable(key)) ?? -1) : find.call(this, key, range, options)
  }
}

function placesIn(node: RangeNode, {data}: SimpleRangeValue): ReadonlyMap<unknown, number> {
  const kept = node.getFunctionValue(PLACES) as ReadonlyMap<unknown, number> | undefined
  if (kept) return kept // a range that grew without a change in it grew by blanks, which are not looked up
  const places = new Map<unknown, number>()
  for (const [place, held] of data.flat().entries()) {
    const value = comparable(held)
    if (!places.has(value)) places.set(value, place)
  }
  node.setFunctionValue(PLACES, places)
  return places
}

const PLACES = "first place of each value"

/** As the engine compares: words without regard to capitals and accents, a date by its number. */
function comparable(held: unknown): unknown {
  if (typeof held === "string") {
    const word = held.toLowerCase()
    return HAS_ACCENTS.test(word) ? word.normalize("NFD").replace(/[\u0300-\u036f]/g, "") : word
  }
  return typeof held === "object" && held !== null && "val" in held ? held.val : held
}
