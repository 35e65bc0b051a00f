import {numberText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {SampleSpread as Spread} from "../../workbook/sampleSpread"
import {PictureWalk} from "./PictureWalk"
import {HALF, RING, sampleLayout, sampleSentence} from "./sampleLayout"
import {useWidth} from "./useWidth"
import "./pictures.css"

/** Chosen for the first drawing, before the place is measured. */
const FIRST_WIDTH = 640

/**
 * Every plant of each planting's last samplings as a dot, the mean with its interval as a strip, the median as a tick. The
 * page's finding is its title, the sheet below its table.
 */
export function SampleSpread({spread, onGo}: {spread: Spread; onGo?: (at: CellAddress) => void}) {
  const [place, measured] = useWidth()
  const {width, height, left, right, base, rules, rows} = sampleLayout(spread, measured ?? FIRST_WIDTH)
  // Each sampling first says its mean, then its plants one by one.
  const stops = rows.flatMap(({y, mean, dots}, i) => {
    const sampling = spread.samplings[i]!
    const line = String(i)
    const whole = {
      line,
      x: mean,
      y,
      height: 2 * HALF + 6,
      width: 12,
      words: sampleSentence(sampling, spread.confidence),
      at: sampling.at,
    }
    const plants = dots.map((dot, k) => {
      const {plant, sugar, isOdd, at} = sampling.plants[k]!
      const name = plant === null ? "a plant" : `plant ${plant}`
      const odd = isOdd ? ", questioned" : ""
      return {
        line,
        x: dot.x,
        y: dot.y,
        words: `${sampling.planting}, ${name}: ${numberText(sugar, 0)}\u00a0mg/g${odd}.`,
        at,
      }
    })
    return [whole, ...plants]
  })
  return (
    <figure ref={place} className="finding-figure">
      <figcaption className="q">sugar in the root, mg per g dry root</figcaption>
      <PictureWalk
        name="Spread of the root samples"
        stops={stops}
        onGo={onGo}
        label={spread.samplings.map((one) => sampleSentence(one, spread.confidence)).join(" ")}
        width={width}
        height={height}
      >
        {rules.map(({x, text}) => (
          <g key={text}>
            <path className="hair" d={`M${x} 4V${base}`} />
            <text className="quiet" x={x} y={base + 18} textAnchor="middle">
              {text}
            </text>
          </g>
        ))}
        <path className="axis" d={`M${left} ${base}H${right}`} />
        {rows.map(({y, words, isLeastSure, interval, within, mean, median, dots}) => (
          <g key={y}>
            <text className="strong halo" x={0} y={words.y}>
              {words.name}
            </text>
            <text className={isLeastSure ? "held halo" : "halo"} x={words.numbersX} y={words.y}>
              {words.numbers}
            </text>
            {interval && (
              <rect
                className="band strip"
                x={interval.x}
                y={y - HALF}
                width={interval.width}
                height={2 * HALF}
              />
            )}
            {within && (
              <text className={isLeastSure ? "held halo" : "quiet halo"} x={within.x} y={within.y}>
                {within.text}
              </text>
            )}
            <path className="course" d={`M${mean} ${y - HALF}v${2 * HALF}`} />
            <path className="axis" d={`M${median} ${y + HALF}v-5`} />
            {dots.map((dot, i) => (
              <g key={i}>
                <circle className="sampled" cx={dot.x} cy={dot.y} r={4} />
                {dot.odd && (
                  <>
                    <circle className="odd" cx={dot.x} cy={dot.y} r={RING} />
                    <text className="halo" x={dot.odd.x} y={dot.odd.y}>
                      {dot.odd.text}
                    </text>
                  </>
                )}
              </g>
            ))}
          </g>
        ))}
      </PictureWalk>
    </figure>
  )
}
