import type {CellAddress} from "../workbook/document"
import type {SpearSizes} from "../workbook/spears"
import {SpearSize} from "./pictures/SpearSize"

/** The spears of every planting that was measured. The sheet below is their table. */
export function SpearPlate({sizes, onGo}: {sizes: SpearSizes; onGo: (at: CellAddress) => void}) {
  const {plantings} = sizes
  return (
    <div className="figures">
      <div className="each">
        {plantings.map((one) => (
          <SpearSize
            key={one.planting}
            one={one}
            sizes={sizes}
            isAlone={plantings.length === 1}
            onGo={onGo}
          />
        ))}
      </div>
      <p className="small q">
        Small dots: each spear counted by size, with their mean as a short line. Large dots: means alone.
        Solid: the straight line through the means. Dashed: the line drawn on; weather, water and a change of
        hands bend it, so measure each week. Band: where the line may lie, by how far the means stand from it;
        bar on the limit: the days on which it may meet it. Dotted, upright: as of. The line and its day are
        those of SPEAR.TREND and SPEAR.DATE_AT; the limits and the share of the band are Spear_limit,
        Spear_share and Edge_confidence on Named values.
      </p>
    </div>
  )
}
