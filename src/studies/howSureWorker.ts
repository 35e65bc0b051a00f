import {drawPart, howSure, type DrawnPart, type HowSure, type HowSureInput} from "./howSure"
import {answerFor} from "./shareOut"

answerFor<HowSureInput, DrawnPart, HowSure>({
  draw: drawPart,
  gather: (_, parts) => howSure(parts),
  buffers: ({inputs, picked, nextSugar, refill, store}) =>
    [inputs, picked, nextSugar, refill, store].map(({buffer}) => buffer),
})
