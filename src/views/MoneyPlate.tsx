import type {CellAddress} from "../workbook/document"
import type {LenderPage} from "../workbook/lender"
import {CashAndDebt} from "./pictures/CashAndDebt"
import {YieldByAge} from "./pictures/YieldByAge"
import "./lender.css"

interface Props {
  page: LenderPage
  onGo: (at: CellAddress) => void
}

/** Cash and debt by year above their sheet, which is their table. */
export const CashPlate = ({page, onGo}: Props) => (
  <div className="figures one">
    <CashAndDebt page={page} isAlone onGo={onGo} />
  </div>
)

/** The farm's yields by age above the sheets that they rest on. */
export const YieldPlate = ({page, onGo}: Props) => (
  <div className="figures one">
    <YieldByAge page={page} isAlone onGo={onGo} />
  </div>
)
