import {guardedWords} from "./clipboard"
import {clearCells} from "./commands/cells"
import {guardedCount} from "./commands/fill"
import type {Command, Store} from "./store"

/** Empties what is chosen; says so when there is nothing to empty, and how many worked-out cells stay. */
export function emptied(store: Store) {
  const guarded = guardedCount(store.getState())
  if (!store.run(clearCells, guarded ? guardedWords(guarded) : ""))
    store.turn(() => ({said: "Nothing to empty here: what is chosen is blank or worked out."}))
}

/** Fills and says how many worked-out cells stay. */
export function filled(store: Store, command: Command) {
  const guarded = guardedCount(store.getState())
  if (!store.run(command, guarded ? guardedWords(guarded) : ""))
    store.turn(() => ({
      said: guarded
        ? `Nothing was filled: ${guardedWords(guarded)}`
        : "Nothing was filled: it stands there already, or cannot stand there.",
    }))
}
