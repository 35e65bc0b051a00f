/** A round step that parts a scale into three to six. */
export function niceStep(most: number): number {
  const raw = most / 4
  const power = 10 ** Math.floor(Math.log10(raw))
  return [1, 2, 5, 10].map((one) => one * power).find((one) => one >= raw) ?? raw
}
