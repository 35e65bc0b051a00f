import {checkWords} from "../../../src/editor/checks"
import {findingsIn} from "../../../src/workbook/checks/checks"
import type {Finding, Rule} from "../../../src/workbook/checks/finding"
import {addressText} from "../../../src/workbook/cells"
import type {Document} from "../../../src/workbook/document"
import {Workbook} from "../../../src/workbook/workbook"

/** What a document is told for by one rule. */
export function told(document: Document, rule: Rule): readonly Finding[] {
  const workbook = new Workbook(document)
  return findingsIn(workbook, checkWords(workbook)).filter((finding) => finding.rule === rule)
}

/** The same as "place: sentence", with plain spaces. */
export const inWords = (document: Document, rule: Rule) =>
  told(document, rule).map(
    ({cells, sentence}) =>
      `${addressText(document, cells[0], 0)}: ${sentence.replaceAll(/[\u00a0\u202f]/g, " ")}`,
  )

/** The document once the mend of the first finding of a rule is made. */
export function mended(document: Document, rule: Rule): Document {
  const workbook = new Workbook(document)
  const [finding] = told(document, rule)
  return workbook.revise(finding!.fix!.edit)
}
