import {drawRisk, type RiskInput, type RiskPart} from "./drawRisk"
import {risk, type Risk} from "./risk"
import {answerFor} from "./shareOut"

answerFor<RiskInput, RiskPart, Risk>({
  draw: drawRisk,
  gather: risk,
  buffers: ({kg, sales}) => [kg.buffer, sales.buffer],
})
