import {openDB, type DBSchema} from "idb"
import {documentSchema, type Document} from "../workbook/document"
import type {Refused} from "./deviceStore"

/** A state of a workbook that was kept on purpose. */
export interface Version {
  readonly id: number
  readonly workbook: string
  readonly name: string
  /** Who kept it, as they sign; and why. */
  readonly by: string
  readonly reason: string
  readonly at: Date
  /** It is a file copy that was kept or opened here: the id of its mark. */
  readonly copy?: string
}

export interface Versions {
  /** Keeps a state under a name. Null when it is kept. */
  keep(version: Omit<Version, "id">, document: Document): Promise<Refused | null>
  /** The versions of a workbook, the newest first. */
  of(workbook: string): Promise<readonly Version[]>
  take(id: number): Promise<{readonly document: Document} | Refused>
  drop(id: number): Promise<void>
}

interface Schema extends DBSchema {
  versions: {
    key: number
    value: Omit<Version, "id"> & {readonly document: Document}
    indexes: {"by workbook": string}
  }
}

/** The versions on this device, in a store of their own: they stay when the states of the autosave go. */
export function openVersions(): Versions {
  const database = () =>
    openDB<Schema>("fernledger-versions", 1, {
      upgrade(made) {
        made.createObjectStore("versions", {autoIncrement: true}).createIndex("by workbook", "workbook")
      },
    })
  return {
    async keep(version, document) {
      try {
        const held = await database()
        await held.add("versions", {...version, document})
        held.close()
        return null
      } catch (fault) {
        return {
          refused: `The version was not kept: ${fault instanceof Error ? fault.message : String(fault)}`,
        }
      }
    },
    async of(workbook) {
      try {
        const held = await database()
        const keys = await held.getAllKeysFromIndex("versions", "by workbook", workbook)
        const kept = await held.getAllFromIndex("versions", "by workbook", workbook)
        held.close()
        return kept
          .map(({workbook: of, name, by, reason, at, copy}, i) => ({
            id: keys[i]!,
            workbook: of,
            name,
            by,
            reason,
            at,
            ...(copy === undefined ? {} : {copy}),
          }))
          .toSorted((a, b) => b.id - a.id)
      } catch {
        return [] // no storage here: then there are no versions either
      }
    },
    async take(id) {
      try {
        const held = await database()
        const kept = await held.get("versions", id)
        held.close()
        const read = documentSchema.safeParse(kept?.document)
        return read.success ? {document: read.data} : {refused: "This version is gone or damaged"}
      } catch {
        return {refused: "This version cannot be read on this device"}
      }
    },
    async drop(id) {
      const held = await database()
      await held.delete("versions", id)
      held.close()
    },
  }
}
