/**
 * The columns of a wide table in groups that each fit a page, in px; each group begins with the columns that are kept in
 * view. A column too wide for a page by itself stands alone with those.
 */
export function columnGroups(
  widths: readonly number[],
  kept: number,
  room: number,
): readonly (readonly number[])[] {
  const first = widths.slice(0, kept).map((_, col) => col)
  const taken = widths.slice(0, kept).reduce((sum, width) => sum + width, 0)
  const groups: number[][] = []
  let left = 0
  for (let col = kept; col < widths.length; col++) {
    const width = widths[col]!
    if (groups.length === 0 || width > left) {
      groups.push([...first])
      left = room - taken
    }
    groups.at(-1)!.push(col)
    left -= width
  }
  return groups.length ? groups : [first]
}
