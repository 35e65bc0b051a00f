import {renderToStaticMarkup} from "react-dom/server"
import {describe, expect, it} from "vitest"
import {CalendarTable} from "../../../src/views/pictures/CalendarTable"
import {CalendarKey, LimitMark} from "../../../src/views/pictures/marks"
import {SeasonCalendar} from "../../../src/views/pictures/SeasonCalendar"
import {planRow, planWith, sixWeeks} from "./plans"

const draw = (plan = sixWeeks, selected: number | null = 2, labels: "beside" | "inside" = "beside") =>
  renderToStaticMarkup(
    <SeasonCalendar plan={plan} selected={selected} onSelect={() => {}} width={440} labels={labels} />,
  )
const count = (markup: string, pattern: RegExp) => markup.match(pattern)?.length ?? 0

describe("SeasonCalendar", () => {
  it("draws a bar in two parts, a mark for each limit with a day, and a bar for each day of the farm", () => {
    const markup = draw()
    // Limits with a day: two of Long Acre, one of Sand Piece. 42 days, 14 of them before 11 May.
    expect(count(markup, /class="mark[ "]/g)).toBe(3)
    expect(count(markup, /class="mark [a-z]+ binding"/g)).toBe(2)
    expect(count(markup, /class="past"/g)).toBe(2 + 14)
    expect(count(markup, /class="to-come"/g)).toBe(2)
    expect(count(markup, /class="to-come thin"/g)).toBe(28)
    expect(count(markup, /class="tail"/g)).toBe(1)
  })

  it("makes each row a button with its sentence, one of them in the order of tabs", () => {
    const markup = draw()
    expect(count(markup, /role="button"/g)).toBe(2)
    expect(count(markup, /tabindex="0"/gi)).toBe(1)
    expect(markup).toContain(
      'aria-label="Long Acre: 27 Apr to 17 May, 21 days, held by reserve; weeks for its age would hold it 4 days later."',
    )
    expect(markup).toMatch(/tabindex="0" aria-label="Sand Piece[^"]*" aria-pressed="true"/i)
    expect(draw(sixWeeks, null)).toMatch(/tabindex="0" aria-label="Long Acre[^"]*" aria-pressed="false"/i)
  })

  it("escapes names, in the picture and to readers", () => {
    const plan = planWith([planRow(0, 'The "<b>" & field', ["04-27", "05-17"], "<i>", {})])
    const markup = draw(plan, null, "inside")
    expect(markup).toContain('aria-label="The &quot;&lt;b&gt;&quot; &amp; field: 27 Apr')
    expect(markup).toContain("&lt;i&gt;</text>")
    expect(markup).not.toMatch(/<[bi]>/)
  })

  it("draws an empty plan and one without days", () => {
    expect(draw(planWith([]))).toContain("No plantings in this plan yet")
    expect(draw(planWith([planRow(0, "A", [null, null], "young")]))).toContain(">young</text>")
  })
})

describe("the marks", () => {
  it("have eight shapes that differ, and a ring for any other name", () => {
    const names = [
      "reserve",
      "spear size",
      "fern days",
      "price",
      "crew",
      "last date",
      "weeks for its age",
      "you",
    ]
    const shape = (name: string) => renderToStaticMarkup(<LimitMark name={name} />)
    expect(new Set([...names, "hail"].map(shape)).size).toBe(9)
    expect(shape("hail")).toBe(shape("anything else"))
    expect(shape(" Spear Size")).toBe(shape("spear size"))
    const key = renderToStaticMarkup(<CalendarKey />)
    expect(count(key, /<li>/g)).toBe(8)
    for (const name of names) expect(key).toContain(`</svg>${name}</li>`)
  })
})

describe("CalendarTable", () => {
  it("holds a line for each planting and each week, behind a summary", () => {
    const markup = renderToStaticMarkup(<CalendarTable plan={sixWeeks} />)
    expect(markup).toContain('<details class="twin"><summary>The same as a table</summary>')
    expect(count(markup, /<th scope="row">/g)).toBe(2 + 6)
    expect(markup).toContain("As of 11 May 2026.")
    expect(count(markup, /not measured yet/g)).toBe(3)
  })
})
