import {AVERAGEIFS} from "./averageIfs"
import {CEILING} from "./ceiling"
import {CONVERT} from "./convert"
import {DATEDIF} from "./dateDif"
import type {StandardFunction} from "./define"
import {EDATE} from "./eDate"
import {ERROR_TYPE} from "./errorType"
import {FLOOR} from "./floor"
import {FORECAST} from "./forecast"
import {FREQUENCY} from "./frequency"
import {GROWTH} from "./growth"
import {INT} from "./int"
import {INTERCEPT} from "./intercept"
import {LOOKUP} from "./lookup"
import {MODE} from "./mode"
import {NUMBERVALUE} from "./numberValue"
import {SUMX2MY2, SUMX2PY2, SUMXMY2} from "./pairedSquares"
import {PERCENTRANK} from "./percentRank"
import {RANK} from "./rank"
import {TREND} from "./trend"
import {VDB} from "./vdb"
import {XNPV} from "./xnpv"

/** The functions of the standard that take the place of the engine's, or that it lacks, by name. */
export const standardFunctions: readonly StandardFunction[] = [
  AVERAGEIFS,
  CEILING,
  CONVERT,
  DATEDIF,
  EDATE,
  ERROR_TYPE,
  FLOOR,
  FORECAST,
  FREQUENCY,
  GROWTH,
  INT,
  INTERCEPT,
  LOOKUP,
  MODE,
  NUMBERVALUE,
  PERCENTRANK,
  RANK,
  SUMX2MY2,
  SUMX2PY2,
  SUMXMY2,
  TREND,
  VDB,
  XNPV,
]
