import type {FormulaFunction} from "./define"
import {ROOT_SUGAR} from "./root/sugar"
import {ROOT_SUGAR_FROM_SAP} from "./root/sugarFromSap"
import {ROOT_READING} from "./root/reading"
import {ROOT_MEAN} from "./root/mean"
import {ROOT_EDGE} from "./root/edge"
import {ROOT_SAMPLES} from "./root/samples"
import {ROOT_SAMPLES_SHARE} from "./root/samplesShare"
import {ROOT_POOL} from "./root/pool"
import {ROOT_RESERVE} from "./root/reserve"
import {ROOT_STRUCTURE} from "./root/structure"
import {ROOT_SUGAR_OF} from "./root/sugarOf"
import {ROOT_DRAW} from "./root/draw"
import {ROOT_UPKEEP} from "./root/upkeep"
import {ROOT_AFTER} from "./root/after"
import {ROOT_SPEARS_TO} from "./root/spearsTo"
import {ROOT_LEFT} from "./root/left"
import {ROOT_DATE_AT} from "./root/dateAt"
import {ROOT_START} from "./root/start"
import {ROOT_ON} from "./root/on"
import {ROOT_SEASON} from "./root/season"
import {ROOT_LAST_CLOSE} from "./root/lastClose"
import {ROOT_RESERVE_FOR} from "./root/reserveFor"
import {ROOT_WEIGH} from "./root/weigh"
import {FERN_REFILL} from "./fern/refill"
import {FERN_DAYS_NEEDED} from "./fern/daysNeeded"
import {FERN_LAST_CLOSE} from "./fern/lastClose"
import {FERN_SAFE_CLOSE} from "./fern/safeClose"
import {SPEAR_MEAN} from "./spear/mean"
import {SPEAR_SHARE_UNDER} from "./spear/shareUnder"
import {SPEAR_TALLY} from "./spear/tally"
import {SPEAR_TREND} from "./spear/trend"
import {SPEAR_DATE_AT} from "./spear/dateAt"
import {SPEAR_EXPECTED_DATE} from "./spear/expectedDate"
import {SPEAR_SHARE_DATE} from "./spear/shareDate"
import {SPEAR_HEAT} from "./spear/heat"
import {SPEAR_GROWTH} from "./spear/growth"
import {SPEAR_DAYS_TO_LENGTH} from "./spear/daysToLength"
import {SPEAR_PICK_GAP} from "./spear/pickGap"
import {SPEAR_UP_DATE} from "./spear/upDate"
import {SPEAR_MASS} from "./spear/mass"
import {SPEAR_MEDIAN} from "./spear/median"
import {SEASON_AGE_WEEKS} from "./season/ageWeeks"
import {SEASON_CLOSE} from "./season/close"
import {SEASON_LIMIT} from "./season/limit"
import {SEASON_SLACK} from "./season/slack"
import {SEASON_PICKINGS} from "./season/pickings"
import {SEASON_PACE} from "./season/pace"
import {SEASON_TO_COME} from "./season/toCome"
import {SEASON_WEEK_SHARE} from "./season/weekShare"
import {SEASON_DAY_WORTH} from "./season/dayWorth"
import {SEASON_STOP_PRICE} from "./season/stopPrice"
import {SEASON_CROP_ON} from "./season/cropOn"
import {SEASON_PICK_ON} from "./season/pickOn"
import {CREW_ON_DAY} from "./crew/onDay"
import {SEASON_CROP_BY} from "./season/cropBy"
import {SEASON_BEST} from "./season/best"
import {SEASON_PICKED} from "./season/picked"
import {SEASON_WAITING} from "./season/waiting"
import {CROP_AT_AGE} from "./crop/atAge"
import {CROP_BAND} from "./crop/band"
import {CROP_HISTORY} from "./crop/history"
import {CROP_OLYMPIC} from "./crop/olympic"
import {CROP_APPROVED} from "./crop/approved"
import {CROP_DISASTER_MEAN} from "./crop/disasterMean"
import {CROP_AS_IF_AGE} from "./crop/asIfAge"
import {CROP_TREND} from "./crop/trend"
import {CROP_BLEND} from "./crop/blend"
import {CROP_GAP} from "./crop/gap"
import {CROP_CARRY} from "./crop/carry"
import {CROP_DENSITY} from "./crop/density"
import {CROP_IN_YEAR} from "./crop/inYear"
import {CROP_FIT} from "./crop/fit"
import {STAND_AGE} from "./stand/age"
import {STAND_UNKNOWN_NAMES} from "./stand/unknownNames"
import {STAND_PLANTS} from "./stand/plants"
import {STAND_ALIVE} from "./stand/alive"
import {STAND_PER_YEAR} from "./stand/perYear"
import {STAND_LIFE} from "./stand/life"
import {STAND_LIFE_WORTH} from "./stand/lifeWorth"
import {STAND_LIFE_COST} from "./stand/lifeCost"
import {STAND_LIFE_SPAN} from "./stand/lifeSpan"
import {STAND_WORTH} from "./stand/worth"
import {STAND_GROUND} from "./stand/ground"
import {STAND_KEEP_WORTH} from "./stand/keepWorth"
import {STAND_KEEP_YEARS} from "./stand/keepYears"
import {STAND_KEEP_SPAN} from "./stand/keepSpan"
import {STAND_WAIT_GAIN} from "./stand/waitGain"
import {STAND_REPLANT_YEAR} from "./stand/replantYear"
import {STAND_PAYBACK} from "./stand/payback"
import {STAND_UNIT_COST} from "./stand/unitCost"
import {STAND_CHEAPEST_LIFE} from "./stand/cheapestLife"
import {STAND_RISKY_WORTH} from "./stand/riskyWorth"
import {STAND_RISKY_LIFE} from "./stand/riskyLife"
import {STAND_REST_WORTH} from "./stand/restWorth"
import {STAND_REST_YEARS} from "./stand/restYears"
import {STAND_REST_PENALTY} from "./stand/restPenalty"
import {STAND_LEASE} from "./stand/lease"
import {STAND_CULTIVAR} from "./stand/cultivar"
import {CREW_HOURS} from "./crew/hours"
import {CREW_PEOPLE} from "./crew/people"
import {CREW_AREA} from "./crew/area"
import {CREW_CUTTERS} from "./crew/cutters"
import {CREW_BREAK_RATE} from "./crew/breakRate"
import {CREW_TOP_UP} from "./crew/topUp"
import {PACK_CARTONS} from "./pack/cartons"
import {PACK_PRICE} from "./pack/price"
import {PACK_MIX_PRICE} from "./pack/mixPrice"
import {PACK_TRIM} from "./pack/trim"
import {PACK_SIZE} from "./pack/size"
import {PACK_SIZE_SHARE} from "./pack/sizeShare"
import {PACK_CRATE} from "./pack/crate"
import {PACK_HEAD_SPACE} from "./pack/headSpace"
import {COOLER_HEAT} from "./cooler/heat"
import {COOLER_LOAD} from "./cooler/load"
import {COOLER_TIME} from "./cooler/time"
import {COOLER_AFTER} from "./cooler/after"
import {COOLER_BREATH} from "./cooler/breath"
import {COOLER_KEEP_DAYS} from "./cooler/keepDays"
import {DEBT_DUE} from "./debt/due"
import {DEBT_LOAN} from "./debt/loan"
import {DEBT_CAPACITY} from "./debt/capacity"
import {DEBT_MARGIN} from "./debt/margin"
import {DEBT_COVER} from "./debt/cover"
import {DEBT_REPLACE_MARGIN} from "./debt/replaceMargin"
import {DEBT_REPLACE_COVER} from "./debt/replaceCover"
import {DEBT_BREAK_PRICE} from "./debt/breakPrice"
import {DEBT_PRICE_NEEDED} from "./debt/priceNeeded"
import {DEBT_WEIGHT_NEEDED} from "./debt/weightNeeded"
import {CLIMATE_DAY_LENGTH} from "./climate/dayLength"
import {CLIMATE_SKY_RADIATION} from "./climate/skyRadiation"
import {CLIMATE_SOLAR} from "./climate/solar"
import {CLIMATE_SOIL} from "./climate/soil"
import {CLIMATE_SOIL_FROM_AIR} from "./climate/soilFromAir"
import {CLIMATE_ON_DAY} from "./climate/onDay"

/** Every formula function, in help order. A function is published by its line here. */
export const catalogue: readonly FormulaFunction[] = [
  ROOT_SUGAR,
  ROOT_SUGAR_FROM_SAP,
  ROOT_READING,
  ROOT_MEAN,
  ROOT_EDGE,
  ROOT_SAMPLES,
  ROOT_SAMPLES_SHARE,
  ROOT_POOL,
  ROOT_RESERVE,
  ROOT_STRUCTURE,
  ROOT_SUGAR_OF,
  ROOT_DRAW,
  ROOT_UPKEEP,
  ROOT_AFTER,
  ROOT_SPEARS_TO,
  ROOT_LEFT,
  ROOT_DATE_AT,
  ROOT_START,
  ROOT_ON,
  ROOT_SEASON,
  ROOT_LAST_CLOSE,
  ROOT_RESERVE_FOR,
  ROOT_WEIGH,
  FERN_REFILL,
  FERN_DAYS_NEEDED,
  FERN_LAST_CLOSE,
  FERN_SAFE_CLOSE,
  SPEAR_MEAN,
  SPEAR_SHARE_UNDER,
  SPEAR_TALLY,
  SPEAR_TREND,
  SPEAR_DATE_AT,
  SPEAR_EXPECTED_DATE,
  SPEAR_SHARE_DATE,
  SPEAR_HEAT,
  SPEAR_GROWTH,
  SPEAR_DAYS_TO_LENGTH,
  SPEAR_PICK_GAP,
  SPEAR_UP_DATE,
  SPEAR_MASS,
  SPEAR_MEDIAN,
  SEASON_AGE_WEEKS,
  SEASON_CLOSE,
  SEASON_LIMIT,
  SEASON_SLACK,
  SEASON_PICKINGS,
  SEASON_PACE,
  SEASON_TO_COME,
  SEASON_WEEK_SHARE,
  SEASON_DAY_WORTH,
  SEASON_STOP_PRICE,
  SEASON_PICKED,
  SEASON_WAITING,
  SEASON_CROP_ON,
  SEASON_CROP_BY,
  SEASON_PICK_ON,
  SEASON_BEST,
  CROP_AT_AGE,
  CROP_BAND,
  CROP_HISTORY,
  CROP_OLYMPIC,
  CROP_APPROVED,
  CROP_DISASTER_MEAN,
  CROP_AS_IF_AGE,
  CROP_TREND,
  CROP_BLEND,
  CROP_GAP,
  CROP_CARRY,
  CROP_DENSITY,
  CROP_IN_YEAR,
  CROP_FIT,
  STAND_AGE,
  STAND_UNKNOWN_NAMES,
  STAND_PLANTS,
  STAND_ALIVE,
  STAND_PER_YEAR,
  STAND_LIFE,
  STAND_LIFE_WORTH,
  STAND_LIFE_COST,
  STAND_LIFE_SPAN,
  STAND_WORTH,
  STAND_GROUND,
  STAND_KEEP_WORTH,
  STAND_KEEP_YEARS,
  STAND_KEEP_SPAN,
  STAND_WAIT_GAIN,
  STAND_REPLANT_YEAR,
  STAND_PAYBACK,
  STAND_UNIT_COST,
  STAND_CHEAPEST_LIFE,
  STAND_RISKY_WORTH,
  STAND_RISKY_LIFE,
  STAND_REST_WORTH,
  STAND_REST_YEARS,
  STAND_REST_PENALTY,
  STAND_LEASE,
  STAND_CULTIVAR,
  CREW_HOURS,
  CREW_PEOPLE,
  CREW_ON_DAY,
  CREW_AREA,
  CREW_CUTTERS,
  CREW_BREAK_RATE,
  CREW_TOP_UP,
  PACK_CARTONS,
  PACK_PRICE,
  PACK_MIX_PRICE,
  PACK_TRIM,
  PACK_SIZE,
  PACK_SIZE_SHARE,
  PACK_CRATE,
  PACK_HEAD_SPACE,
  COOLER_HEAT,
  COOLER_LOAD,
  COOLER_TIME,
  COOLER_AFTER,
  COOLER_BREATH,
  COOLER_KEEP_DAYS,
  DEBT_DUE,
  DEBT_LOAN,
  DEBT_CAPACITY,
  DEBT_MARGIN,
  DEBT_COVER,
  DEBT_REPLACE_MARGIN,
  DEBT_REPLACE_COVER,
  DEBT_BREAK_PRICE,
  DEBT_PRICE_NEEDED,
  DEBT_WEIGHT_NEEDED,
  CLIMATE_DAY_LENGTH,
  CLIMATE_SKY_RADIATION,
  CLIMATE_SOLAR,
  CLIMATE_SOIL,
  CLIMATE_SOIL_FROM_AIR,
  CLIMATE_ON_DAY,
]
