import type {GridApi} from "ag-grid-community"

/** For how many milliseconds the grid may draw rows at a time; chosen: what is drawn has to be laid out and painted after it. */
const MOST = 10

interface Frames {
  executeFrame(most: number): void
}

/**
 * Lets the page move while the grid draws rows it was scrolled to: by itself the grid draws for 60 ms before it lets a frame
 * through. It has no option for that, so that its own part that draws in frames is given another measure.
 */
export function letFramesThrough<T>(grid: GridApi<T>) {
  const frames: Frames = Reflect.get(grid.getColumns()![0]!, "beans").animationFrameSvc
  const draw = frames.executeFrame.bind(frames)
  frames.executeFrame = (most) => draw(most > 0 ? MOST : most)
}
