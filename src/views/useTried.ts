import {useEffect, useState} from "react"
import {toTry, type Tried} from "../editor/checks"
import type {MendingInput, Moved} from "../studies/mending"
import {startWorker} from "../studies/startWorker"
import type {Ranked} from "../workbook/checks/effects"
import type {Document} from "../workbook/document"

const NONE: Tried = new Map()

/** What mending moves in the plan, tried in a worker; `isTrying` until it is known. */
export function useTried(
  findings: readonly Ranked[] | null,
  document: Document | null,
): {tried: Tried; isTrying: boolean} {
  const [done, setDone] = useState<{readonly findings: readonly Ranked[]; readonly tried: Tried} | null>(null)
  useEffect(() => {
    const chosen = toTry(findings ?? [])
    if (!findings || !document || chosen.length === 0) return
    const worker = startWorker("mending")
    const finish = (moved: readonly (Moved | null)[]) =>
      setDone({findings, tried: new Map(chosen.flatMap((one, i) => (moved[i] ? [[one, moved[i]]] : [])))})
    worker.addEventListener("message", ({data}: MessageEvent<readonly (Moved | null)[]>) => finish(data))
    worker.addEventListener("error", () => finish([])) // what rests on a finding is told all the same
    const input: MendingInput = {document, edits: chosen.map(({fix}) => fix!.edit)}
    worker.postMessage(input, [])
    return () => worker.terminate()
  }, [findings, document])
  const isDone = done !== null && done.findings === findings
  return {
    tried: isDone ? done.tried : NONE,
    isTrying: !isDone && findings !== null && toTry(findings).length > 0,
  }
}
