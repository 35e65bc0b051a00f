import type {CellAddress} from "../../workbook/document"
import {MovedBars} from "./MovedBars"
import {movedSentence, movedTitle, type MovingBar, type ToldMove} from "./movedBy"
import {useWidth} from "./useWidth"
import "./pictures.css"

const FIRST_WIDTH = 360 // before the place is measured; chosen
const ALL_ELSE = "all else, and what changes do together"

/**
 * What moved a result between two states, a bar for each change with how far it moves the result alone, the largest first; what
 * is left of the way as others, so that the bars together lead from the one value to the other. Its table beneath.
 */
export function ResultMoved({
  result,
  isDate,
  changes,
  others,
  source,
  onGo,
}: {
  result: ToldMove
  isDate: boolean
  changes: readonly (ToldMove & MovingBar & {readonly at: CellAddress})[]
  others: MovingBar | null
  /** Of both states. */
  source: string
  onGo: (at: CellAddress) => void
}) {
  const [place, measured] = useWidth()
  const title = movedTitle(result, changes, others)
  const sentence = movedSentence(changes, others)
  const bars = [
    ...changes.map(({name, was, is, by, text, at}) => ({
      key: name,
      words: [name, `${was} to ${is}`] as const,
      by,
      text,
      sentence: `${name}, ${was} to ${is}: ${text}.`,
      at,
    })),
    ...(others
      ? [
          {
            key: "others",
            words: ["others", ALL_ELSE] as const,
            ...others,
            sentence: `Others, ${ALL_ELSE}: ${others.text}.`,
          },
        ]
      : []),
  ]
  return (
    <figure ref={place} className="result-moved">
      <figcaption>
        <b>{title}</b> {sentence}
      </figcaption>
      {bars.length > 0 && (
        <>
          <MovedBars
            name={`What moved ${result.name}`}
            label={`${title}. ${sentence}`}
            bars={bars}
            width={measured ?? FIRST_WIDTH}
            sides={isDate ? ["days earlier", "later"] : ["less", "more"]}
            onGo={onGo}
          />
          <p className="small q">Each change as far as it moves the result when all others stay.</p>
          <details className="twin">
            <summary>The same as a table</summary>
            <div className="twin-scroll" tabIndex={0} role="region" aria-label={`What moved ${result.name}`}>
              <table>
                <caption>
                  {result.name}, {result.was} to {result.is}
                </caption>
                <thead>
                  <tr>
                    <th scope="col">Change</th>
                    <th scope="col">before</th>
                    <th scope="col">now</th>
                    <th scope="col">moves it</th>
                  </tr>
                </thead>
                <tbody>
                  {changes.map(({name, was, is, text}) => (
                    <tr key={name}>
                      <th scope="row">{name}</th>
                      <td>{was}</td>
                      <td>{is}</td>
                      <td>{text}</td>
                    </tr>
                  ))}
                  {others && (
                    <tr>
                      <th scope="row">others</th>
                      <td colSpan={2}>{ALL_ELSE}</td>
                      <td>{others.text}</td>
                    </tr>
                  )}
                </tbody>
              </table>
            </div>
          </details>
        </>
      )}
      <p className="source">Source: {source}.</p>
    </figure>
  )
}
