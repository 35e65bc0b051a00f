import {useEffect, useState} from "react"
import {flushSync} from "react-dom"

/** Whether the page is being printed, known before it is laid out for that. */
export function usePrinting(): boolean {
  const [isPrinting, setPrinting] = useState(() => window.matchMedia("print").matches)
  useEffect(() => {
    const query = window.matchMedia("print")
    const turn = (on: boolean) => flushSync(() => setPrinting(on))
    const onMedia = ({matches}: MediaQueryListEvent) => turn(matches)
    const [before, after] = [() => turn(true), () => turn(false)]
    query.addEventListener("change", onMedia)
    window.addEventListener("beforeprint", before)
    window.addEventListener("afterprint", after)
    return () => {
      query.removeEventListener("change", onMedia)
      window.removeEventListener("beforeprint", before)
      window.removeEventListener("afterprint", after)
    }
  }, [])
  return isPrinting
}
