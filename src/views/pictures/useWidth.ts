import {useEffect, useRef, useState} from "react"

/** The width of the element that the ref is given to, px; null until it is measured. */
export function useWidth() {
  const place = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState<number | null>(null)
  useEffect(() => {
    if (!place.current) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width))
    })
    observer.observe(place.current)
    return () => observer.disconnect()
  }, [])
  return [place, width] as const
}
