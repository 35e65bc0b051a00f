import type {CellAddress} from "./document"

/** Something for each of many cells. Faster by far than a map by the text of an address. */
export class CellMap<T> {
  readonly #sheets: (T | undefined)[][][] = []

  get({sheet, row, col}: CellAddress): T | undefined {
    return this.#sheets[sheet]?.[row]?.[col]
  }

  set({sheet, row, col}: CellAddress, held: T) {
    const rows = (this.#sheets[sheet] ??= [])
    const cells = (rows[row] ??= [])
    cells[col] = held
  }

  delete({sheet, row, col}: CellAddress) {
    delete this.#sheets[sheet]?.[row]?.[col]
  }
}
