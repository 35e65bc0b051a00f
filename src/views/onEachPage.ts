import {dayOf} from "../../functions/calendar"
import {dateText} from "../editor/display"
import {isoDate} from "../workbook/clock"

/** The style of the foot of each printed page: the plan's words on the left, the program, today and the page's number on the right. */
export function onEachPage(plan: string, program: string): string {
  const print = `${program}, printed ${dateText(dayOf(isoDate(new Date()))!)}. Page `
  return `@page { @bottom-left { content: ${quoted(plan)} } @bottom-right { content: ${quoted(print)} counter(page) " of " counter(pages) } }`
}

/** Quotes would end the words. */
const quoted = (words: string) => JSON.stringify(words.replace(/[<>\\"\n]/g, " "))
