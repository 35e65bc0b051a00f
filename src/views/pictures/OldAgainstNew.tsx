import {numberText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import {CROSSING, replantLayout, type OldAgainstNew as Picture, type Words} from "./replantLayout"
import {PictureWalk} from "./PictureWalk"
import {crossingWords, replantSentence, seasonSentence} from "./replantWords"
import {useWidth} from "./useWidth"
import "./pictures.css"

const FIRST_WIDTH = 640 // before the place is measured; chosen

/** The seasons of a standing field against the level that a new planting sets, with the crossing marked; its table beneath. */
export function OldAgainstNew({picture, onGo}: {picture: Picture; onGo?: (at: CellAddress) => void}) {
  const [place, measured] = useWidth()
  const layout = replantLayout(picture, measured ?? FIRST_WIDTH)
  const {width, height, left, right, level} = layout
  const seasons = layout.dots.map(({x, y}, i) => {
    const season = picture.seasons[i]!
    return {x, y, words: seasonSentence(season, picture), at: season.at}
  })
  const {crossing} = layout
  const meets = crossing ? [{...crossing, words: `${crossingWords(picture)}.`}] : []
  const stops = [...seasons, ...meets].toSorted((a, b) => a.x - b.x)
  return (
    <div ref={place} className="old-new">
      <PictureWalk
        name="This field and a new planting"
        label={replantSentence(picture)}
        width={width}
        height={height}
        stops={stops}
        onGo={onGo}
      >
        {layout.rules.map(({y}) => (
          <path key={y} className="hair" d={`M${left} ${y}H${right}`} />
        ))}
        <path className="past-band either" d={layout.either} />
        {layout.edges.map((edge) => (
          <path key={edge} className="range-edge" d={edge} />
        ))}
        {[level.low, level.high].map((y) => (
          <path key={y} className="range-edge dashed" d={`M${left} ${y}H${right}`} />
        ))}
        {layout.nought !== null && <path className="axis" d={`M${left} ${layout.nought}H${right}`} />}
        <path className="level" d={`M${left} ${level.y}H${right}`} />
        <path className="course to-be" d={layout.line} />
        {layout.dots.map(({x, y, isAbove}) => (
          <circle key={x} className={isAbove ? "dot" : "to-come"} cx={x} cy={y} r={4.5} />
        ))}
        {crossing && <circle className="crossing" cx={crossing.x} cy={crossing.y} r={CROSSING} />}
        {layout.crossingLead && <path className="lead" d={layout.crossingLead} />}
        {layout.rules.map(({y, words}) => (
          <text key={y} className="quiet" x={left - 8} y={y + 5} textAnchor="end">
            {words}
          </text>
        ))}
        <text className="quiet" x={0} y={14}>
          {layout.unit}
        </text>
        {layout.years.map((year) => (
          <Label key={year.x} at={year} className="quiet" />
        ))}
        <Label at={level.words} className="strong halo" />
        <Label at={layout.oldWords} className="held halo" />
        {layout.crossingWords && <Label at={layout.crossingWords} className="held halo" />}
        {layout.eitherWords && <Label at={layout.eitherWords} className="strong halo" />}
      </PictureWalk>
      <p className="small q">
        Every season is expected; a filled dot brings what a year must. Thin lines hold 8 outcomes of 10 of a
        season’s crop; the dashed ones are a new planting that yields a tenth less or more.
      </p>
      <details className="twin">
        <summary>This field and the new one as a table</summary>
        <div className="twin-scroll" tabIndex={0} role="region" aria-label="Old and new by year">
          <table>
            <caption>
              Net cash of {picture.field} by season, {picture.unit}
            </caption>
            <thead>
              <tr>
                <th scope="col">Season</th>
                <th scope="col">this field</th>
                <th scope="col">8 of 10 within</th>
                <th scope="col">a year must bring</th>
              </tr>
            </thead>
            <tbody>
              {picture.seasons.map(({year, cash, low, high}) => (
                <tr key={year}>
                  <th scope="row">{year}</th>
                  <td>{shown(cash)}</td>
                  <td>{high > low ? `${shown(low)} to ${shown(high)}` : "not known"}</td>
                  <td>{shown(picture.level)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </div>
  )
}

const shown = (value: number) => numberText(Math.round(value), 0)

const Label = ({at, className}: {at: Words; className: string}) => (
  <text className={className} x={at.x} y={at.y} textAnchor={at.anchor}>
    {at.words}
  </text>
)
