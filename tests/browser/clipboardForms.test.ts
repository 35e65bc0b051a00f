import type {Page} from "playwright-core"
import {expect, it} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

/** Puts both forms on the clipboard as another program does: as they are, unlike a page's own writing, which is cleaned. */
async function copiedElsewhere(page: Page, plain: string, html: string) {
  const other = await page.context().newPage()
  await other.bringToFront()
  await other.evaluate(
    ([plain, html]) => {
      document.addEventListener("copy", (event) => {
        event.clipboardData!.setData("text/plain", plain)
        if (html) event.clipboardData!.setData("text/html", html)
        event.preventDefault()
      })
      document.execCommand("copy")
    },
    [plain, html] as const,
  )
  await other.close()
  await page.bringToFront()
}

const DAY = "2026-05-26"

/** One picking of Long Acre, 1160.5 kg in 51.5 hours, and one of Sand Piece without hours. */
const forms: readonly (readonly [form: string, plain: string, html: string])[] = [
  [
    "a program on the desk: styles in its head, shown values with thousands parted, raw ones beside them",
    `Long Acre\t${DAY}\t1,160.5\t51.5\r\nSand Piece\t${DAY}\t352\t\r\n`,
    `<!DOCTYPE html><html><head><meta http-equiv="content-type" content="text/html; charset=utf-8"/>
     <style>body,td{font-family:"Sans";font-size:x-small} br{mso-data-placement:same-cell}</style></head><body>
     <table cellspacing="0" border="0"><colgroup width="85"></colgroup><colgroup span="3" width="70"></colgroup>
     <tr><td height="17" align="left">Long
       Acre</td><td align="right" sdval="46168" sdnum="1033;1033;YYYY-MM-DD">${DAY}</td>
       <td align="right" sdval="1160.5" sdnum="1033;0;#,##0.0">1,160.5</td><td align="right" sdval="51.5">51.5</td></tr>
     <tr style="display:none"><td>Well Field</td><td>${DAY}</td><td>9</td><td>9</td></tr>
     <tr><td>Sand Piece</td><td>${DAY}</td><td>352</td><td><br></td></tr>
     </table></body></html>`,
  ],
  [
    "a program in a browser: its own element around, typed values in attributes",
    `Long Acre\t${DAY}\t1160.5\t51.5\nSand Piece\t${DAY}\t352\t`,
    `<meta charset='utf-8'><x-origin><style type="text/css"><!--td {border: 1px solid #ccc;}--></style>
     <table xmlns="http://www.w3.org/1999/xhtml" cellspacing="0" dir="ltr"><colgroup><col width="100"/></colgroup><tbody>
     <tr style="height:21px;"><td style="overflow:hidden" data-value="{&quot;1&quot;:2}">Long Acre</td><td>${DAY}</td>
     <td style="text-align:right" data-value="{&quot;3&quot;:1160.5}">1160.5</td><td>51.5</td></tr>
     <tr style="height:21px;"><td>Sand Piece</td><td>${DAY}</td><td>352</td><td></td></tr></tbody></table></x-origin>`,
  ],
  [
    "a letter: a table within a table, a cell over two rows, blocks and hard spaces",
    `Long Acre ${DAY} 1160.5 51.5 Sand Piece 352`,
    `<html><body><table><tr><td><p>What came in:</p></td></tr><tr><td>
       <table border="1"><tbody>
       <tr><td><p>Long&nbsp;Acre</p></td><td rowspan="2"><div>${DAY}</div></td><td>&nbsp;1160.5&nbsp;</td><td><b>51</b>.5</td></tr>
       <tr><td><p>Sand Piece</p></td><td>352</td><td hidden>7</td><td></td></tr>
       </tbody></table></td></tr></table></body></html>`,
  ],
  [
    "text alone, with quotes and the line ends of another system",
    `"Long Acre"\t${DAY}\t1160.5\t51.5\rSand Piece\t${DAY}\t352\t\r`,
    "",
  ],
  ["text alone, with decimal commas", `Long Acre\t${DAY}\t1160,5\t51,5\nSand Piece\t${DAY}\t352\t\n`, ""],
]

it.each(forms)("takes a block in from %s", async (_, plain, html) => {
  const {page, trouble} = await openPlanner({browser: {permissions: ["clipboard-read", "clipboard-write"]}})
  const sheet = sheetOn(page)
  await sheet.open("Pickings")
  await copiedElsewhere(page, plain, html)
  await sheet.choose(1, "Planting")
  await page.keyboard.press("Control+v")
  const yes = page.getByRole("button", {name: /^Bring in \d/})
  await expect.poll(async () => (await yes.isVisible()) || /pasted/.test(await sheet.said())).toBe(true)
  const told = await sheet.said()
  expect(await yes.isVisible(), told).toBe(false)
  const shown = async (row: number) =>
    Promise.all(["Planting", "Day", "Weight", "Hours"].map((heading) => sheet.text(row, heading)))
  expect(await shown(1)).toEqual(["Long Acre", "26 May 2026", "1\u202f161", "51.5"].map(likeShown))
  // A cell over two rows stands in the first: the day of the second is blank there.
  const isOver = html.includes("rowspan")
  expect((await shown(2)).map(likeShown)).toEqual(["Sand Piece", isOver ? "" : "26 May 2026", "352", ""])
  expect(trouble).toEqual([])
})

const likeShown = (text: string) => text

it("takes words of elsewhere that come without a table, and says so where there are none", async () => {
  const {page, trouble} = await openPlanner({browser: {permissions: ["clipboard-read", "clipboard-write"]}})
  const sheet = sheetOn(page)
  await sheet.open("Pickings")
  for (const [plain, html, note] of [
    ["met the buyer", "<meta charset=utf-8><p>met the <b>buyer</b></p>", "met the buyer"],
    ["", "<h2>rain</h2><p>from <i>noon</i></p>", "rain"],
    ["gates shut", "<table></table><p>gates shut</p>", "gates shut"],
  ] as const) {
    await copiedElsewhere(page, plain, html)
    await sheet.choose(1, "Note")
    await page.keyboard.press("Control+v")
    await expect.poll(() => sheet.text(1, "Note")).toBe(note)
  }
  expect(await sheet.text(2, "Note")).toBe("from noon")
  await copiedElsewhere(page, "", "<img alt=gate>")
  await page.keyboard.press("Control+v")
  await expect.poll(sheet.said).toBe("There is nothing to paste that has words or numbers.")
  expect(trouble).toEqual([])
})
