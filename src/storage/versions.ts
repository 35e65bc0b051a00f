import {openDB, type DBSchema, type IDBPDatabase, type IDBPObjectStore} from "idb"
import {documentSchema, type Document} from "../workbook/document"
import {reasonOf, type Refused} from "./deviceStore"

/** Chosen: some weeks of file copies and of other copies compared, at about 0.3 MB each. */
const KEPT_BY_ITSELF = 20

/** A state of a workbook that stays under a name. */
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
  /** The planner kept it, before an act or for a file copy; nobody asked for it. */
  readonly byItself?: true
}

export interface Versions {
  /** So many of those that the planner kept by itself stay, of each workbook; one that a person kept stays until it is dropped. */
  readonly keptByItself: number
  /** Keeps a state under a name. Null when it is kept. */
  keep(version: Omit<Version, "id">, document: Document): Promise<Refused | null>
  /** The versions of a workbook, the newest first. */
  of(workbook: string): Promise<readonly Version[]>
  /** When a file copy of a workbook was last kept or opened here; null where none was. */
  lastCopy(workbook: string): Promise<Date | null>
  take(id: number): Promise<{readonly document: Document} | Refused>
  /** Null when it is dropped. */
  drop(id: number): Promise<Refused | null>
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
  const withReason = async <T>(what: string, action: (held: IDBPDatabase<Schema>) => Promise<T>) => {
    let held: IDBPDatabase<Schema> | undefined
    try {
      held = await database()
      return await action(held)
    } catch (fault) {
      return {refused: `${what}: ${reasonOf(fault).replace(/^./, (letter) => letter.toLowerCase())}`}
    } finally {
      held?.close()
    }
  }
  return {
    keptByItself: KEPT_BY_ITSELF,
    keep: (version, document) =>
      withReason("The version was not kept", async (held) => {
        const change = held.transaction("versions", "readwrite")
        const added = change.store.add({...version, document})
        const cleared = added.then(() => version.byItself && clearOld(change.store, version.workbook))
        await Promise.all([added, cleared, change.done])
        return null
      }),
    async of(workbook) {
      const found = await withReason("The versions cannot be read", async (held) => {
        const {store} = held.transaction("versions")
        return versionsOf(store, workbook)
      })
      return "refused" in found ? [] : found // no storage here: then there are no versions either
    },
    async lastCopy(workbook) {
      const found = await withReason("The versions cannot be read", async (held) => {
        const {store} = held.transaction("versions")
        // One by one from the newest on, since each comes with its document.
        for await (const {value} of store.index("by workbook").iterate(workbook, "prev"))
          if (value.copy !== undefined) return value.at
        return null
      })
      return found instanceof Date ? found : null
    },
    take: (id) =>
      withReason("This version cannot be read on this device", async (held) => {
        const kept = await held.get("versions", id)
        const read = documentSchema.safeParse(kept?.document)
        return read.success ? {document: read.data} : {refused: "This version is gone or damaged"}
      }),
    drop: (id) =>
      withReason("The version was not dropped", async (held) => {
        await held.delete("versions", id)
        return null
      }),
  }
}

type Store<Mode extends IDBTransactionMode> = IDBPObjectStore<Schema, ["versions"], "versions", Mode>

/** The newest first; ids grow, so they tell the order even when the clock was put back. */
async function versionsOf(store: Store<IDBTransactionMode>, workbook: string): Promise<readonly Version[]> {
  const index = store.index("by workbook")
  const [keys, kept] = await Promise.all([index.getAllKeys(workbook), index.getAll(workbook)])
  const versions = kept.map((one, i) => {
    const {document: _, ...version} = one
    return {id: keys[i]!, ...version}
  })
  return versions.toSorted((a, b) => b.id - a.id)
}

async function clearOld(store: Store<"readwrite">, workbook: string) {
  const own = (await versionsOf(store, workbook)).filter(({byItself}) => byItself)
  await Promise.all(own.slice(KEPT_BY_ITSELF).map(({id}) => store.delete(id)))
}
