import type {StudyName} from "./startWorker"

const STUDIES: Readonly<Record<StudyName, () => Promise<unknown>>> = {
  "how sure": () => import("./howSureWorker"),
  risk: () => import("./riskWorker"),
  "best weeks": () => import("./bestWeeksWorker"),
  ways: () => import("./waysRiskWorker"),
  mending: () => import("./mendingWorker"),
  "work back": () => import("./workBackWorker"),
  cases: () => import("./casesWorker"),
  effects: () => import("./effectsWorker"),
  "moves apart": () => import("./movesApartWorker"),
}

/** Makes the worker this is called in answer for a study. What is asked while its code is loaded waits for it. */
export async function answerAs(study: StudyName) {
  const waiting: MessageEvent[] = []
  const keep = (event: MessageEvent) => void waiting.push(event)
  self.addEventListener("message", keep)
  try {
    await STUDIES[study]()
  } catch (fault) {
    return reportError(fault) // a promise that failed would not reach the page
  }
  self.removeEventListener("message", keep)
  for (const {data} of waiting) self.dispatchEvent(new MessageEvent("message", {data}))
}
