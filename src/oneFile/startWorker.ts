import type {StudyName} from "../studies/startWorker"

let address: string | null = null

/** Starts a worker that answers for a study. It runs the text of the page's own script, which sees that it is no page. */
export function startWorker(study: StudyName): Worker {
  address ??= URL.createObjectURL(
    new Blob([document.getElementById("program")!.textContent], {type: "text/javascript"}),
  )
  return new Worker(address, {name: study})
}
