import {drawWays, type WaysInput, type WaysPart} from "./drawWays"
import {answerFor} from "./shareOut"
import {waysRisk, type WaysRisk} from "./waysRisk"

answerFor<WaysInput, WaysPart, WaysRisk>({
  draw: drawWays,
  gather: waysRisk,
  buffers: ({worths}) => [worths.buffer],
})
