import {CellError, EmptyValue, ErrorType, FunctionPlugin, SimpleRangeValue} from "hyperformula"

interface Spreading {
  /** What a function that takes one value is given of a range, for one cell of its answer. */
  vectorizeAndBroadcastRangeArgument?(range: SimpleRangeValue, row: number, col: number): unknown
}

const spreading = FunctionPlugin.prototype as unknown as Spreading
const {onlyValues} = SimpleRangeValue
const spread = spreading.vectorizeAndBroadcastRangeArgument

/**
 * Over a column of a sheet without rows a function of one value, as in =SUM(LEN(A:A)), is given a blank, and a sign, as in
 * =-A:A, gives "nothing there yet". The engine (3.5.0) throws instead, so that the formula could not be typed, nor the last
 * row of the sheet be emptied under it. Calling it twice does no harm.
 */
export function takeEmptyRanges() {
  SimpleRangeValue.onlyValues = (data) => onlyValues(data.length > 0 ? data : [[nothingThere()]])
  if (!spread) return
  spreading.vectorizeAndBroadcastRangeArgument = function (range, row, col) {
    return range.height() > 0 ? spread.call(this, range, row, col) : EmptyValue
  }
}

export const nothingThere = () => new CellError(ErrorType.NA, "Empty range not allowed.")
