import type {Book, BookName, BookSheet} from "./book"
import {LIMITS, Unreadable} from "./limits"
import {namesTaken, OF_ONE_SHEET, propertiesIn, type NameLeft} from "./reading"
import {looksIn} from "./xlsxLooks"
import {notesIn} from "./xlsxNotes"
import {sheetIn} from "./xlsxSheet"
import {wordsIn} from "./xlsxWords"
import {readXml} from "./xml"
import {openZip, type Zip} from "./zip"

/**
 * Reads a file of ECMA-376. Formulas are given as they are written, with "=" before them; those of a table shared by several
 * cells are moved to each. Throws `Unreadable` with a sentence.
 */
export function readXlsx(bytes: Uint8Array): {readonly book: Book; readonly left: readonly string[]} {
  const zip = openZip(bytes)
  const main = targetOf(zip, "", /\/officeDocument$/) ?? "xl/workbook.xml"
  const workbook = workbookIn(part(zip, main))
  if (!workbook.sheets.length) throw new Unreadable("It has no sheets")
  if (workbook.sheets.length > LIMITS.sheets)
    throw new Unreadable(`It has ${workbook.sheets.length} sheets, and ${LIMITS.sheets} are the most`)
  const left = [...workbook.left]
  const relations = relationsOf(zip, main)
  const shared = wordsIn(partAt(zip, find(relations, /\/sharedStrings$/)))
  const looks = looksIn(partAt(zip, find(relations, /\/styles$/)))
  const room = {cells: LIMITS.cells as number}
  const sheets = workbook.sheets.flatMap(({name, id}): BookSheet[] => {
    const relation = relations.get(id)
    const bytes = relation && relation.type.endsWith("/worksheet") ? zip.part(relation.target) : null
    if (!relation || !bytes) {
      left.push(`“${name}” is no sheet of cells, or its part is missing`)
      return []
    }
    const notes = notesIn(partAt(zip, targetOf(zip, relation.target, /\/comments$/)))
    return [sheetIn(bytes, name, {shared, looks, notes, room, is1904: workbook.is1904, left})]
  })
  if (!sheets.length) throw new Unreadable("It has no sheet of cells")
  if (zip.names.some((name) => /vbaProject|macrosheets/i.test(name)))
    left.push("Its macros are left out; none was run")
  if (zip.names.some((name) => /externalLinks\//.test(name)))
    left.push("It points at other files; those were not opened")
  if (zip.names.some((name) => /\/(charts|media|pivotTables)\//.test(name)))
    left.push("Its pictures and charts are left out")
  return {book: {...propertiesIn(zip.part("docProps/core.xml")), sheets, names: workbook.names}, left}
}

const partAt = (zip: Zip, name: string | undefined) => (name === undefined ? null : zip.part(name))

function part(zip: Zip, name: string): Uint8Array {
  const bytes = zip.part(name)
  if (!bytes) throw new Unreadable(`Its part ${name.slice(0, 60)} is missing`)
  return bytes
}

interface Relation {
  readonly type: string
  readonly target: string
}

/** What a part points at within the file, by the id of each pointer; what lies outside is left out. */
function relationsOf(zip: Zip, name: string): ReadonlyMap<string, Relation> {
  const [folder, file] = [name.slice(0, name.lastIndexOf("/") + 1), name.slice(name.lastIndexOf("/") + 1)]
  const bytes = zip.part(`${folder}_rels/${file}.rels`)
  const relations = new Map<string, Relation>()
  if (bytes)
    readXml(bytes, {
      open(element, attribute) {
        const [id, target] = [attribute("Id"), attribute("Target")]
        if (
          element !== "Relationship" ||
          id === null ||
          target === null ||
          attribute("TargetMode") === "External"
        )
          return
        relations.set(id, {type: attribute("Type") ?? "", target: within(folder, target)})
      },
    })
  return relations
}

const targetOf = (zip: Zip, name: string, type: RegExp) => find(relationsOf(zip, name), type)
const find = (relations: ReadonlyMap<string, Relation>, type: RegExp) =>
  [...relations.values()].find((one) => type.test(one.type))?.target

/** The name of a part that is pointed at from a folder: "../comments1.xml". */
function within(folder: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1)
  const path = folder.split("/").slice(0, -1)
  for (const step of target.split("/"))
    if (step === "..") path.pop()
    else if (step !== ".") path.push(step)
  return path.join("/")
}

function workbookIn(bytes: Uint8Array) {
  const sheets: {name: string; id: string}[] = []
  const names: BookName[] = []
  const others: NameLeft[] = []
  let is1904 = false
  let name: string | null = null
  let words = ""
  readXml(bytes, {
    open(element, attribute) {
      if (element === "workbookPr") is1904 = /^(1|true)$/.test(attribute("date1904") ?? "")
      if (element === "sheet")
        sheets.push({name: attribute("name") ?? "", id: attribute("r:id") ?? attribute("id") ?? ""})
      if (element === "definedName") {
        const written = attribute("name") ?? ""
        const [isOfForm, isOfSheet] = [written.startsWith("_xlnm."), attribute("localSheetId") !== null]
        name = isOfForm || isOfSheet ? null : written
        if (isOfSheet && !isOfForm) others.push({name: written, why: OF_ONE_SHEET})
        words = ""
      }
    },
    words(text) {
      if (name !== null && words.length <= LIMITS.text) words += text
    },
    close(element) {
      if (element !== "definedName") return
      if (name !== null && words) names.push({name, formula: `=${words}`})
      name = null
    },
  })
  return {sheets, ...namesTaken(names, others), is1904}
}
