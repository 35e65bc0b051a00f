export const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length

/** Deviation over the mean. */
export const variation = (values: Float64Array) => deviation(values) / mean(values)

export function correlation(x: Float64Array, y: Float64Array): number {
  const [mx, my] = [mean(x), mean(y)]
  return mean(x.map((value, i) => (value - mx) * (y[i]! - my))) / deviation(x) / deviation(y)
}

/** The place of each value among all of them in rising order. */
export function ranks(values: Float64Array): Float64Array {
  const order = [...values.keys()].sort((a, b) => values[a]! - values[b]!)
  const places = new Float64Array(values.length)
  for (const [place, i] of order.entries()) places[i] = place
  return places
}

function deviation(values: Float64Array): number {
  const middle = mean(values)
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)))
}
