import {gatherWeeks, weeksPart, type BestWeeks, type WeeksPart} from "./bestWeeks"
import type {BestWeeksInput} from "./bestWeeksAsked"
import {answerFor} from "./shareOut"

answerFor<BestWeeksInput, WeeksPart, BestWeeks>({
  draw: weeksPart,
  gather: (_, parts) => gatherWeeks(parts),
  buffers: () => [],
})
