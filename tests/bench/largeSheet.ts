import type {Content, Document} from "../../src/workbook/document"

export const ROWS = 10_000
const COLUMNS = 60

/** A sheet of numbers, with a formula in every row that rests on two of them and on the row's neighbour above. */
export function large(): Document {
  const columns = Array.from(
    {length: COLUMNS},
    (_, col) => ({heading: `Column ${col + 1}`, kind: "typed"}) as const,
  )
  const formula = "=A1*2+B1"
  const rows = Array.from({length: ROWS}, (_, row) =>
    Array.from({length: COLUMNS}, (_, col): Content => (col === 1 ? "=" : (row * 7 + col * 13) % 997)),
  )
  return {
    name: "Large",
    sheets: [
      {
        name: "Records",
        group: "Large",
        columns: columns.with(1, {
          heading: "Twice",
          kind: "worked out",
          formula: formula.replace("B1", "C1"),
        } as never),
        rows,
      },
    ],
  }
}
