import {drawPart, howSure, type DrawnPart, type HowSure, type HowSureInput} from "./howSure"
import {answerFor} from "./shareOut"

answerFor<HowSureInput, DrawnPart, HowSure>({
  draw: drawPart,
  gather: ({floor}, parts) => howSure(parts, floor),
  buffers: ({inputs, picked, nextSugar, lowest, refill, store}) =>
    [inputs, picked, nextSugar, lowest, refill, store].map(({buffer}) => buffer),
})
