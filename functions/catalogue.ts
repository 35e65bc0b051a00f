import type {FormulaFunction} from "./define"
import {SPEAR_HEAT} from "./spear/heat"
import {SEASON_AGE_WEEKS} from "./season/ageWeeks"
import {SEASON_CLOSE} from "./season/close"
import {SEASON_LIMIT} from "./season/limit"
import {SEASON_SLACK} from "./season/slack"
import {SEASON_PICKINGS} from "./season/pickings"
import {SEASON_PACE} from "./season/pace"
import {SEASON_TO_COME} from "./season/toCome"
import {SEASON_DAY_WORTH} from "./season/dayWorth"
import {SEASON_STOP_PRICE} from "./season/stopPrice"
import {CROP_AT_AGE} from "./crop/atAge"
import {CROP_BAND} from "./crop/band"
import {CROP_HISTORY} from "./crop/history"
import {CROP_OLYMPIC} from "./crop/olympic"
import {CROP_BLEND} from "./crop/blend"
import {CROP_GAP} from "./crop/gap"
import {CROP_CARRY} from "./crop/carry"
import {CROP_DENSITY} from "./crop/density"

/** Every formula function, in help order. A function is published by its line here. */
export const catalogue: readonly FormulaFunction[] = [
  SPEAR_HEAT,
  SEASON_AGE_WEEKS,
  SEASON_CLOSE,
  SEASON_LIMIT,
  SEASON_SLACK,
  SEASON_PICKINGS,
  SEASON_PACE,
  SEASON_TO_COME,
  SEASON_DAY_WORTH,
  SEASON_STOP_PRICE,
  CROP_AT_AGE,
  CROP_BAND,
  CROP_HISTORY,
  CROP_OLYMPIC,
  CROP_BLEND,
  CROP_GAP,
  CROP_CARRY,
  CROP_DENSITY,
]
