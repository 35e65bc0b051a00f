import {isoDate, isoTime} from "../workbook/clock"
import {openDB, type DBSchema, type IDBPDatabase} from "idb"
import {documentSchema, type Document} from "../workbook/document"
import {readFile, writeFile} from "../workbook/file"

/** Why something could not be kept or read: a sentence without a full stop. */
export interface Refused {
  readonly refused: string
}

export const isRefused = (result: unknown): result is Refused =>
  typeof result === "object" && result !== null && "refused" in result

/** A state that is kept, without its content. */
export interface KeptState {
  readonly id: number
  readonly name: string
  readonly savedAt: Date
}

/** What was found on the device. `notice` says that something newer was damaged and passed over. */
export interface Found {
  readonly document: Document
  readonly savedAt: Date
  readonly notice: string | null
}

/** Where the browser keeps workbooks on this device. No method rejects: what goes wrong comes back as a sentence. */
export interface Device {
  /** Keeps a state. Null when it is kept. */
  save(document: Document, at: Date): Promise<Refused | null>
  /** The newest state that can be read, or null when nothing was ever kept. */
  latest(): Promise<Found | Refused | null>
  /** Every state that is kept, the newest first. */
  earlier(): Promise<readonly KeptState[] | Refused>
  /** The document of a kept state. */
  take(id: number): Promise<{readonly document: Document} | Refused>
}

/** How many states are kept, whatever their workbook (chosen). */
const NEWEST = 20
/** For how many days the last state of each day is kept, for each workbook (chosen). */
const DAYS = 14

const DAY = 86_400_000

/** The name is that of the workbook. A workbook's newest state stays however old it is, so that opening another loses nothing. */
interface SavedState {
  readonly name: string
  readonly savedAt: Date
  /** As in a file copy: to hand the browser a text takes a twentieth of the time that the document itself takes. */
  readonly text: string
}

/** As states were kept before. */
interface OlderState extends Omit<SavedState, "text"> {
  readonly document: unknown
}

interface Schema extends DBSchema {
  states: {key: number; value: SavedState | OlderState; indexes: {"by workbook": [string, Date]}}
}

/** The store of this device. It is there even where the browser offers none, or refuses it: then its methods say why. */
export async function openDevice(): Promise<Device> {
  let connection: Promise<IDBPDatabase<Schema>> | null = null
  // Browsers end the connections of pages that rest; after that, or a failure, the next use makes a new one.
  const drop = () => {
    connection?.then(
      (database) => database.close(),
      () => {},
    )
    connection = null
  }
  const connected = () => (connection ??= open(drop))
  /** The states as this page knows them. Others may have come since: then too few are let go of, never a wrong one. */
  let known: readonly KeptState[] = []
  const device: Device = {
    save: (document, at) =>
      withReason(drop, async () => {
        known = await save(await connected(), document, at, known)
        return null
      }),
    latest: () => withReason(drop, async () => latest(await connected())),
    earlier: () => withReason(drop, async () => (known = await earlier(await connected()))),
    take: (id) => withReason(drop, async () => take(await connected(), id)),
  }
  await device.earlier()
  return device
}

async function open(drop: () => void): Promise<IDBPDatabase<Schema>> {
  if (!globalThis.indexedDB) throw new DOMException("There is no IndexedDB", "NotSupportedError")
  return openDB<Schema>("fernledger", 2, {
    upgrade(database, was) {
      if (was > 0) return // what a program before this one kept is read as it is; that one could not read ours
      const states = database.createObjectStore("states", {autoIncrement: true})
      states.createIndex("by workbook", ["name", "savedAt"])
    },
    blocking: drop, // a tab with a newer version of the program waits for this one to let go
    terminated: drop,
  })
}

/**
 * Adds the state and lets go of those no longer wanted, all or nothing; gives the states that are known then. The browser has all
 * it needs at once: a page that is busy with drawing would be slow to answer it.
 */
async function save(
  database: IDBPDatabase<Schema>,
  document: Document,
  at: Date,
  known: readonly KeptState[],
): Promise<readonly KeptState[]> {
  const {name} = document
  const change = database.transaction("states", "readwrite", {durability: "strict"})
  const added = change.store.add({name, savedAt: at, text: writeFile(document)})
  const gone = new Set(unwanted([...known, {id: Infinity, name, savedAt: at}], at).map(({id}) => id))
  const dropped = [...gone].map((id) => change.store.delete(id))
  change.commit()
  const [id] = await Promise.all([added, change.done, ...dropped])
  return [...known.filter((state) => !gone.has(state.id)), {id, name, savedAt: at}]
}

async function latest(database: IDBPDatabase<Schema>): Promise<Found | Refused | null> {
  let passedOver = 0
  const states = database.transaction("states").store
  for (let cursor = await states.openCursor(null, "prev"); cursor; cursor = await cursor.continue()) {
    const found = readState(cursor.value)
    if (found) return {...found, notice: noticeOf(passedOver, found.savedAt)}
    passedOver++
  }
  return passedOver === 0 ? null : {refused: "What was kept on this device is damaged and cannot be read"}
}

const earlier = async (database: IDBPDatabase<Schema>) =>
  newestFirst(await keptStates(database.transaction("states").store.index("by workbook")))

async function take(database: IDBPDatabase<Schema>, id: number): Promise<{document: Document} | Refused> {
  const kept = await database.get("states", id)
  if (!kept) return {refused: "This state is no longer kept on this device"}
  const found = readState(kept)
  return found ? {document: found.document} : {refused: "This state is damaged and cannot be read"}
}

/** Reads the keys alone, so that no document is loaded. A record too damaged to have them is left out. */
async function keptStates(index: {
  openKeyCursor(): Promise<KeyCursor | null>
}): Promise<readonly KeptState[]> {
  const kept: KeptState[] = []
  for (let cursor = await index.openKeyCursor(); cursor; cursor = await cursor.continue()) {
    const [name, savedAt] = cursor.key
    kept.push({id: cursor.primaryKey, name, savedAt})
  }
  return kept
}

interface KeyCursor {
  readonly key: [string, Date]
  readonly primaryKey: number
  continue(): Promise<KeyCursor | null>
}

/** Ids grow, so they tell the order even when the clock was put back. */
const newestFirst = (kept: readonly KeptState[]) => [...kept].sort((a, b) => b.id - a.id)

/** The states that are neither among the newest, nor a workbook's newest, nor the last of one of its days of late. */
function unwanted(kept: readonly KeptState[], at: Date): readonly KeptState[] {
  const seen = new Set<string>()
  const isFirst = (mark: string) => !seen.has(mark) && Boolean(seen.add(mark))
  return newestFirst(kept).filter(({name, savedAt}, i) => {
    const isNewestOfWorkbook = isFirst(JSON.stringify([name]))
    const isLastOfDay = isFirst(JSON.stringify([name, savedAt.toDateString()]))
    const isRecent = at.getTime() - savedAt.getTime() < DAYS * DAY
    return !(i < NEWEST || isNewestOfWorkbook || (isLastOfDay && isRecent))
  })
}

function readState(state: SavedState | OlderState): {document: Document; savedAt: Date} | null {
  const document = "text" in state ? readText(state.text) : documentSchema.safeParse(state.document).data
  return document && state.savedAt instanceof Date ? {document, savedAt: state.savedAt} : null
}

function readText(text: string): Document | null {
  const read = readFile(text)
  return "document" in read ? read.document : null
}

function noticeOf(passedOver: number, savedAt: Date): string | null {
  if (passedOver === 0) return null
  const [states, were] =
    passedOver === 1 ? ["The newest state", "was"] : [`The ${passedOver} newest states`, "were"]
  const [date, time] = [isoDate(savedAt), isoTime(savedAt)]
  return `${states} on this device ${were} damaged and passed over: this is the one of ${date} ${time}`
}

async function withReason<T>(drop: () => void, action: () => Promise<T>): Promise<T | Refused> {
  try {
    return await action()
  } catch (fault) {
    drop()
    return {refused: reasonOf(fault)}
  }
}

/** Keyed by the names of errors in Indexed Database API (W3C). */
const REASONS: Readonly<Record<string, string>> = {
  QuotaExceededError: "Storage is full",
  NotSupportedError: "This browser offers no storage",
  SecurityError: "This browser does not allow this page to store anything",
  VersionError: "A newer version of the program is open in another tab: load this page again",
}

/** Why storage failed, in a sentence without a full stop. */
export function reasonOf(fault: unknown): string {
  const {name, message} = fault instanceof Error ? fault : {name: "", message: String(fault)}
  return REASONS[name] ?? `Storage failed: ${message.replace(/\.$/, "") || name}`
}
