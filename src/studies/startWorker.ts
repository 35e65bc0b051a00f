export type StudyName =
  "how sure" | "risk" | "best weeks" | "ways" | "mending" | "work back" | "cases" | "effects" | "moves apart"

/** Starts a worker that answers for a study. The one file has its own of this: `src/oneFile/startWorker.ts`. */
export const startWorker = (study: StudyName): Worker =>
  new Worker(new URL("./studyWorker.ts", import.meta.url), {type: "module", name: study})
