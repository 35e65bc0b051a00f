import {numberText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {SampleSpread as Spread} from "../../workbook/sampleSpread"
import {PictureWalk} from "./PictureWalk"
import {HALF, sampleFinding, sampleLayout, sampleSentence} from "./sampleLayout"
import {useWidth} from "./useWidth"
import "./pictures.css"

/** Chosen for the first drawing, before the place is measured. */
const FIRST_WIDTH = 640

/**
 * Every plant of each sampling as a dot, its mean with the interval as a strip, its median as a tick, and the planting's own
 * floor. The sheet below is its table.
 */
export function SampleSpread({spread, onGo}: {spread: Spread; onGo?: (at: CellAddress) => void}) {
  const [place, measured] = useWidth()
  const {width, height, left, right, base, rules, rows} = sampleLayout(spread, measured ?? FIRST_WIDTH)
  // Each sampling first says its mean, then its plants one by one.
  const stops = rows.flatMap(({y, mean, dots}, i) => {
    const sampling = spread.samplings[i]!
    const whole = {
      x: mean,
      y,
      height: 2 * HALF + 6,
      width: 12,
      words: sampleSentence(sampling, spread.confidence),
    }
    const plants = dots.map((dot, k) => {
      const {plant, sugar, isOdd, at} = sampling.plants[k]!
      const name = plant === null ? "a plant" : `plant ${plant}`
      const odd = isOdd ? ", questioned" : ""
      return {
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
      <figcaption>
        <b>{sampleFinding(spread)}</b> <span className="q">sugar in the root, mg per g dry root</span>
      </figcaption>
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
        {rows.map(({y, words, interval, mean, median, floor, dots}) => (
          <g key={y}>
            <text className="strong halo" x={0} y={words.y}>
              {words.name}
            </text>
            <text className="halo" x={words.numbersX} y={words.y}>
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
            <path className="course" d={`M${mean} ${y - HALF}v${2 * HALF}`} />
            <path className="axis" d={`M${median} ${y + HALF}v-5`} />
            {floor && (
              <>
                <path className="axis" d={`M${floor.x} ${y - HALF}v${2 * HALF}`} />
                <text className="halo quiet" x={floor.textX} y={y + 5}>
                  {floor.text}
                </text>
              </>
            )}
            {dots.map((dot, i) => (
              <g key={i}>
                <circle className="sampled" cx={dot.x} cy={dot.y} r={4} />
                {dot.isOdd && <circle className="odd" cx={dot.x} cy={dot.y} r={7} />}
              </g>
            ))}
          </g>
        ))}
      </PictureWalk>
    </figure>
  )
}
