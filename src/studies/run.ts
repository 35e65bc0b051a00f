import type {BestWeeks} from "./bestWeeks"
import type {BestWeeksInput} from "./bestWeeksAsked"
import type {RiskInput} from "./drawRisk"
import type {WaysInput} from "./drawWays"
import type {HowSure, HowSureInput} from "./howSure"
import type {Risk} from "./risk"
import {shareOut, type RunningStudy} from "./shareOut"
import {startWorker} from "./startWorker"
import type {WaysRisk} from "./waysRisk"

/** A study of how sure that is being run. */
export type Running = RunningStudy<HowSure>

/** Runs the study of how sure in workers; `progress` is told the share of the draws done. */
export const runHowSure = (input: HowSureInput, draws: number, progress: (share: number) => void): Running =>
  shareOut(() => startWorker("how sure"), input, draws, progress)

/** Runs the study of a farm's risk in workers; `progress` is told the share of the draws done. */
export const runRisk = (
  input: RiskInput,
  draws: number,
  progress: (share: number) => void,
): RunningStudy<Risk> => shareOut(() => startWorker("risk"), input, draws, progress)

/** Runs the study of the best weeks in workers, its plantings shared out; `progress` is told the share done. */
export const runBestWeeks = (
  input: BestWeeksInput,
  progress: (share: number) => void,
): RunningStudy<BestWeeks> =>
  shareOut(() => startWorker("best weeks"), input, input.plantings.length, progress)

/** Runs the comparison of ways on drawn years in workers; `progress` is told the share of the draws done. */
export const runWays = (
  input: WaysInput,
  draws: number,
  progress: (share: number) => void,
): RunningStudy<WaysRisk> => shareOut(() => startWorker("ways"), input, draws, progress)
