import type {Book, Look} from "./book"
import {Unreadable} from "./limits"
import {contentIn} from "./odsContent"
import {stylesReader} from "./odsStyles"
import {propertiesIn} from "./reading"
import {readXml} from "./xml"
import {openZip} from "./zip"

/** Reads a file of ISO/IEC 26300. Formulas are given as ours are written. Throws `Unreadable` with a sentence. */
export function readOds(bytes: Uint8Array): {readonly book: Book; readonly left: readonly string[]} {
  const zip = openZip(bytes)
  const content = zip.part("content.xml")
  if (!content) throw new Unreadable("Its part content.xml is missing")
  if (zip.names.includes("META-INF/manifest.xml") && isLocked(zip.part("META-INF/manifest.xml")!))
    throw new Unreadable("It is locked with a password")
  const left: string[] = []
  const looks = new Map<string, Look>()
  const styles = zip.part("styles.xml")
  if (styles) readXml(styles, stylesReader(looks))
  const {sheets, names} = contentIn(content, looks, left)
  if (!sheets.length) throw new Unreadable("It has no sheet of cells")
  if (zip.names.some((name) => /^(Basic|Scripts)\//.test(name)))
    left.push("Its macros are left out; none was run")
  if (zip.names.some((name) => /^(Pictures|Object )/.test(name)))
    left.push("Its pictures and charts are left out")
  return {book: {...propertiesIn(zip.part("meta.xml")), sheets, names}, left}
}

function isLocked(manifest: Uint8Array): boolean {
  let found = false
  readXml(manifest, {
    open(element) {
      if (element === "encryption-data") found = true
    },
  })
  return found
}
