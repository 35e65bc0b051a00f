import {choose} from "../../src/editor/selection"
import type {Store} from "../../src/editor/store"
import {farmStore, inPlan} from "./farm"

/** A key as a browser tells of it, from how the keys list writes it: "Ctrl+Shift+z". "Cmd" stands for Ctrl on some machines. */
export function pressOf(keys: string) {
  const parts = keys.split("+")
  const held = (name: string) => parts.slice(0, -1).includes(name)
  const key = parts.at(-1) === "Space" ? " " : parts.at(-1) || "+"
  const event = {shiftKey: held("Shift"), ctrlKey: held("Ctrl"), metaKey: held("Cmd"), altKey: held("Alt")}
  return {key: event.shiftKey && key.length === 1 ? key.toUpperCase() : key, ...event}
}

/** The farm with a cell of the plan chosen. */
export function on(address: string, store = farmStore()): Store {
  store.turn(choose(inPlan(address)))
  return store
}
