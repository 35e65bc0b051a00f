import type {Look} from "./views/FirstLook"

/** A workbook that comes inside the page itself: the text of its file, and how its plan looks. */
export interface Handed {
  readonly look: Look | null
  readonly workbook: string
}

const ELEMENT = /<script type="application\/json" id="handed">([^]*?)<\/script>\n?/

/** What the page that is open was handed with, or null where it is the planner alone. */
export function handed(): Handed | null {
  const held = window.document.getElementById("handed")?.textContent
  return held ? read(held) : null
}

/** What a page in text was handed with, or null. Where that is damaged, its text takes the place of the workbook's. */
export function handedIn(page: string): Handed | null {
  const [, held] = ELEMENT.exec(page) ?? []
  return held === undefined ? null : read(held)
}

function read(held: string): Handed {
  try {
    const {look, workbook} = JSON.parse(held) as Partial<Handed>
    if (typeof workbook === "string") return {look: look ?? null, workbook}
  } catch {
    // Whoever reads it as a workbook says where it is damaged.
  }
  return {look: null, workbook: held}
}

/** The one file of the planner with a workbook inside, in the place of one that it held. */
export function pageWith(page: string, inside: Handed): string {
  const held = JSON.stringify(inside).replaceAll("<", "\\u003c") // nothing in it ends the element, or begins another
  const element = `<script type="application/json" id="handed">${held}</script>\n`
  return page.replace(ELEMENT, "").replace('<script id="program">', (program) => element + program)
}
