import {documentOf, type Knows, type Taken} from "./documentOf"
import {Unreadable, unlessUnreadable} from "./limits"
import {readOds} from "./odsIn"
import {readXlsx} from "./xlsxIn"
import {openZip} from "./zip"

/**
 * Reads a workbook of another program, .xlsx or .ods, by what the file holds and not by its name. A file that is damaged, too
 * large or of another kind is refused with a sentence.
 */
export function readBook(
  bytes: Uint8Array,
  fileName: string,
  knows: Knows,
): Taken | {readonly refused: string} {
  return unlessUnreadable(() => {
    const {book, left} = readerFor(bytes)(bytes)
    const taken = documentOf(book, fileName.replace(/\.[^.]*$/, ""), knows)
    return {...taken, left: [...left, ...taken.left]}
  })
}

function readerFor(bytes: Uint8Array): typeof readXlsx {
  const begins = (...signs: number[]) => signs.every((sign, i) => bytes[i] === sign)
  if (!bytes.length) throw new Unreadable("It is empty")
  if (begins(0xd0, 0xcf, 0x11, 0xe0))
    throw new Unreadable(
      "It is locked with a password, or of an older form: save it as .xlsx or .ods without a password first",
    )
  if (!begins(0x50, 0x4b)) throw new Unreadable("It is neither .xlsx nor .ods")
  const {names} = openZip(bytes)
  if (names.includes("xl/workbook.bin"))
    throw new Unreadable("It is of the form .xlsb: save it as .xlsx first")
  return names.includes("content.xml") ? readOds : readXlsx
}
