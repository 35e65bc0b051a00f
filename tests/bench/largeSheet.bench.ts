import {HyperFormula} from "hyperformula"
import {bench, describe} from "vitest"
import {pastingOf} from "../../src/editor/clipboard"
import {createStore} from "../../src/editor/store"
import {choose} from "../../src/editor/selection"
import type {Content} from "../../src/workbook/document"
import {large, ROWS} from "./largeSheet"

const [PASTED_ROWS, PASTED_COLS] = [200, 50]
const piece = (n: number) =>
  Array.from({length: PASTED_ROWS}, (_, row) =>
    Array.from({length: PASTED_COLS}, (_, col) => `${row + col + n}`),
  )

/** The engine alone with the same cells. */
function bare() {
  const {name, rows, columns} = large().sheets[0]!
  const written = rows.map((row, r) =>
    row.map((content, col): Content =>
      content === "=" ? columns[col]!.formula!.replaceAll("1", `${r + 1}`) : content,
    ),
  )
  return HyperFormula.buildFromSheets({[name]: written}, {licenseKey: "gpl-v3", undoLimit: 0})
}

// One at a time: each holds 600 000 cells.
describe(`a sheet of ${ROWS} rows and 60 columns`, () => {
  const store = createStore(large())
  const engine = bare()
  let n = 0
  const next = () => (n = (n + 1) % 1000)
  bench("one number that a formula rests on", () => {
    const value = next()
    store.run(() => ({type: "enter", cells: [{at: {sheet: 0, row: 5000, col: 0}, content: value}]}))
  })
  bench("the same in the engine alone", () => {
    engine.setCellContents({sheet: 0, row: 5000, col: 0}, next())
  })
  bench("a paste of 10 000 cells", () => {
    store.turn(choose({sheet: 0, row: 100, col: 2}))
    const {edit} = pastingOf(store, {from: "elsewhere", rows: piece(next())})
    store.run(() => edit)
  })
  bench("the same in the engine alone, read as numbers", () => {
    const value = next()
    engine.batch(() =>
      engine.setCellContents(
        {sheet: 0, row: 100, col: 2},
        piece(value).map((row) => row.map(Number)),
      ),
    )
  })
  bench(`a row put in above ${ROWS} formulas, and taken out`, () => {
    store.run(() => ({type: "insertRows", sheet: 0, before: 0, count: 1}))
    store.undo()
  })
  bench("the same in the engine alone", () => {
    engine.addRows(0, [0, 1])
    engine.removeRows(0, [0, 1])
  })
})
