import {useEffect, useRef, useState} from "react"
import {flushSync} from "react-dom"

/**
 * The width of the element that the ref is given to, px; null until it is measured; and whether it is that on paper. A picture
 * whose place on paper has another shape says how wide that is: nothing is measured again for printing.
 */
export function useWidth(onPaper?: number) {
  const place = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState<number | null>(null)
  const [isPrinting, setPrinting] = useState(false)
  useEffect(() => {
    if (!place.current) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width))
    })
    observer.observe(place.current)
    return () => observer.disconnect()
  }, [])
  useEffect(() => {
    if (onPaper === undefined) return
    const begin = () => flushSync(() => setPrinting(true))
    const end = () => setPrinting(false)
    addEventListener("beforeprint", begin)
    addEventListener("afterprint", end)
    return () => {
      removeEventListener("beforeprint", begin)
      removeEventListener("afterprint", end)
    }
  }, [onPaper])
  const isOnPaper = isPrinting && onPaper !== undefined
  return [place, isOnPaper ? onPaper : width, isOnPaper] as const
}
