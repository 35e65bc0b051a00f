import type {History} from "./insides"

/**
 * With nothing to do again there is nothing to clear. The engine would go through all that its batch has done so far, for
 * each cell of it: a cost that grows with the square of what is pasted.
 */
export function clearNothing(history: History) {
  const clear = history.clearRedoStack
  if (!clear) return
  history.clearRedoStack = function () {
    if (this.redoStack.length > 0) clear.call(this)
  }
}
