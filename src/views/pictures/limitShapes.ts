import {isSameName, YOU} from "./calendarWords"

/** The shape of a limit's mark, in multiples of the mark's radius. */
export interface LimitShape {
  readonly name: string
  /** How far its bulk reaches to each side of its middle, and up or down: sharp corners may touch a neighbour. */
  readonly halfWidth: number
  readonly halfHeight: number
  /** How it is drawn: a filled outline, lines only, or a ring. */
  readonly drawn: "filled" | "lines" | "ring"
  /** An svg path around a middle, at a radius in px. */
  readonly path: (x: number, y: number, radius: number) => string
}

/** One shape for each limit, all of about the same weight, so that no colour is needed to tell them apart. */
const SHAPES: readonly LimitShape[] = [
  {name: "reserve", halfWidth: 1, halfHeight: 1, drawn: "filled", path: circle},
  {
    name: "spear size",
    halfWidth: 1.05,
    halfHeight: 1,
    drawn: "filled",
    path: (x, y, r) => polygon([x, y - 1.1 * r], [x + 1.1 * r, y + 0.86 * r], [x - 1.1 * r, y + 0.86 * r]),
  },
  {
    name: "fern days",
    halfWidth: 0.9,
    halfHeight: 0.9,
    drawn: "filled",
    path: (x, y, r) => rectangle(x, y, 0.9 * r, 0.9 * r),
  },
  {
    name: "price",
    halfWidth: 1.05,
    halfHeight: 1.05,
    drawn: "filled",
    path: (x, y, r) => polygon([x, y - 1.2 * r], [x + 1.2 * r, y], [x, y + 1.2 * r], [x - 1.2 * r, y]),
  },
  {
    name: "crew",
    halfWidth: 1,
    halfHeight: 1,
    drawn: "lines",
    path: (x, y, r) => line(x - r, y, x + r, y) + line(x, y - r, x, y + r),
  },
  {
    name: "last date",
    halfWidth: 0.45,
    halfHeight: 1.1,
    drawn: "filled",
    path: (x, y, r) => rectangle(x, y, 0.45 * r, 1.2 * r),
  },
  {
    name: "weeks for its age",
    halfWidth: 0.7,
    halfHeight: 1.05,
    drawn: "lines",
    path: (x, y, r) =>
      line(x - 0.46 * r, y - 1.15 * r, x - 0.46 * r, y + 1.15 * r) +
      line(x + 0.46 * r, y - 1.15 * r, x + 0.46 * r, y + 1.15 * r),
  },
  {
    name: YOU,
    halfWidth: 0.9,
    halfHeight: 1.1,
    drawn: "lines",
    path: (x, y, r) => line(x - 0.8 * r, y + 1.1 * r, x + 0.8 * r, y - 1.1 * r),
  },
]

/** The limits that have a shape of their own, in the order of the key. */
export const LIMIT_NAMES: readonly string[] = SHAPES.map(({name}) => name)

/** The shape of a limit by its name. A limit that the person named gets a plain small ring. */
export const shapeOf = (name: string): LimitShape =>
  SHAPES.find((shape) => isSameName(shape.name, name)) ?? {
    name,
    halfWidth: 0.9,
    halfHeight: 0.9,
    drawn: "ring",
    path: (x, y, r) => circle(x, y, 0.72 * r),
  }

/** Hundredths of a px are below what a screen shows. */
export const px = (value: number): number => Math.round(value * 100) / 100

type Point = readonly [number, number]

function line(x0: number, y0: number, x1: number, y1: number) {
  return `M${px(x0)} ${px(y0)}L${px(x1)} ${px(y1)}`
}

function polygon(...points: readonly Point[]) {
  return `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join("L")}Z`
}

function rectangle(x: number, y: number, halfWidth: number, halfHeight: number) {
  const [left, right, top, bottom] = [x - halfWidth, x + halfWidth, y - halfHeight, y + halfHeight]
  return polygon([left, top], [right, top], [right, bottom], [left, bottom])
}

function circle(x: number, y: number, r: number) {
  const arc = `a${px(r)} ${px(r)} 0 1 0`
  return `M${px(x - r)} ${px(y)}${arc} ${px(2 * r)} 0${arc} ${px(-2 * r)} 0Z`
}
