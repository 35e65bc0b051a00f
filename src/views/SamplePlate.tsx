import type {CellAddress} from "../workbook/document"
import type {SampleSpread as Spread} from "../workbook/sampleSpread"
import {SampleSpread} from "./pictures/SampleSpread"

/** The spread of the root samples. The sheet below is their table. */
export function SamplePlate({spread, onGo}: {spread: Spread; onGo: (at: CellAddress) => void}) {
  return (
    <div className="figures">
      <div className="each">
        <SampleSpread spread={spread} onGo={onGo} />
      </div>
      <p className="small q">
        The last three samplings of each planting; all dug in the dormant time before its opening count as
        one. Dots: plants; ringed ones are questioned. Strip: the interval in which the mean lies by these
        plants; upright in it, the mean; short tick, the median. Means and ends are those of ROOT.MEAN and
        ROOT.EDGE; readings become sugar by your calibration (ROOT.SUGAR).
      </p>
    </div>
  )
}
