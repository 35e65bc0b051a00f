import type {Document} from "../workbook/document"
import {isRefused, type Device} from "./deviceStore"

/** Whether the newest document is safe on this device. `reason` begins in lower case and has no full stop. */
export type SavingState =
  | {readonly kind: "saved"; readonly at: Date}
  | {readonly kind: "saving"}
  | {readonly kind: "not saved"; readonly reason: string}

export interface Autosave {
  /** Call after every act: saving begins at once, or as soon as the write under way has ended. */
  changed(document: Document): void
  /** Ends when nothing is left to write. What could not be saved is tried once more. */
  flush(): Promise<void>
}

/**
 * Keeps the document on the device after every change. One write is under way at most; of the changes that
 * come meanwhile the newest is written next. What could not be saved is tried again with the next change.
 *
 * After the first change it asks the browser not to clear the storage by itself, and reports the answer:
 * true, false, or null where the browser cannot be asked.
 */
export function createAutosave(
  device: Pick<Device, "save">,
  onState: (state: SavingState) => void,
  onLasting: (isLasting: boolean | null) => void = () => {},
): Autosave {
  let waiting: Document | null = null
  let unsaved: Document | null = null
  let underWay: Promise<void> | null = null
  let hasAsked = false

  async function write() {
    try {
      while (waiting) await writeNewest(waiting)
    } finally {
      underWay = null
    }
  }

  async function writeNewest(document: Document) {
    waiting = null
    onState({kind: "saving"})
    const at = new Date()
    const result = await device.save(document, at)
    if (waiting) return // the newer one decides what is said
    if (!isRefused(result)) return onState({kind: "saved", at})
    unsaved = document
    onState({kind: "not saved", reason: result.refused.replace(/^./, (letter) => letter.toLowerCase())})
  }

  const begin = (document: Document) => {
    waiting = document
    unsaved = null
    return (underWay ??= write())
  }

  return {
    changed(document) {
      void begin(document)
      if (hasAsked) return
      hasAsked = true
      void askToLast().then(onLasting)
    },
    async flush() {
      await underWay
      if (unsaved) await begin(unsaved)
    },
  }
}

/** Whether the browser keeps the storage, without asking it to; null where it cannot be told. */
export async function isLastingNow(): Promise<boolean | null> {
  try {
    return (await globalThis.navigator?.storage?.persisted?.()) ?? null
  } catch {
    return null
  }
}

async function askToLast(): Promise<boolean | null> {
  try {
    return (await globalThis.navigator?.storage?.persist?.()) ?? null
  } catch {
    return null
  }
}
