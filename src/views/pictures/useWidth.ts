import {useEffect, useRef, useState} from "react"
import {flushSync} from "react-dom"

/** px: what an A4 page has within its margins. */
const PAGE_WIDTH = 688

/**
 * The width of the element that the ref is given to, px; null until it is measured; and whether it is that on paper. There a
 * picture has the width of the page, or what it says: nothing is measured again for printing, and one that is wider is made
 * smaller with its words.
 */
export function useWidth(onPaper = PAGE_WIDTH) {
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
    const begin = () => flushSync(() => setPrinting(true))
    const end = () => setPrinting(false)
    addEventListener("beforeprint", begin)
    addEventListener("afterprint", end)
    return () => {
      removeEventListener("beforeprint", begin)
      removeEventListener("afterprint", end)
    }
  }, [])
  return [place, isPrinting ? onPaper : width, isPrinting] as const
}
