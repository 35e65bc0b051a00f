import {CellError, ErrorType, FunctionPlugin, SimpleRangeValue} from "hyperformula"

interface Spreading {
  /** What a function that takes one value is given of a range, for one cell of its answer. */
  vectorizeAndBroadcastRangeArgument?(range: SimpleRangeValue, row: number, col: number): unknown
}

const spreading = FunctionPlugin.prototype as unknown as Spreading
const {onlyValues} = SimpleRangeValue
const spread = spreading.vectorizeAndBroadcastRangeArgument

/**
 * What is worked out for each cell of a column, as in =SUM(LEN(A:A)), is "nothing there yet" on a sheet without rows. The
 * engine (3.5.0) throws instead, so that the formula could not be typed, nor the last row of the sheet be emptied under it.
 * Calling it twice does no harm.
 */
export function takeEmptyRanges() {
  SimpleRangeValue.onlyValues = (data) => onlyValues(data.length > 0 ? data : [[nothingThere()]])
  if (!spread) return
  spreading.vectorizeAndBroadcastRangeArgument = function (range, row, col) {
    return range.height() > 0 ? spread.call(this, range, row, col) : nothingThere()
  }
}

const nothingThere = () => new CellError(ErrorType.NA, "Empty range not allowed.")
