import type {Store} from "./store"

/** What a key event must have; a browser's KeyboardEvent has it. */
export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
}

/** A key and what it does; `With` is what its act needs besides the store. */
export interface Binding<With = never> {
  readonly group: "Move" | "Choose" | "Edit" | "Copy and fill" | "History" | "Show" | "While typing"
  /** "Ctrl" stands for Cmd too, on machines that have it. */
  readonly keys: readonly string[]
  readonly does: string
  /** Works wherever on the page the keyboard is, but for what is being written. */
  readonly isOfPage?: true
  /** Answers whether the key was used. */
  readonly act: (store: Store, needs: With) => boolean
}

/** What a pressed key is called in the tables: "Ctrl+Shift+ArrowLeft". */
export function nameOf({key, shiftKey, ctrlKey, metaKey, altKey}: KeyPress): string {
  const letter = key === " " ? "Space" : [...key].length === 1 ? key.toLowerCase() : key
  const control = ctrlKey || metaKey ? "Ctrl+" : ""
  const shift = shiftKey && (letter.length > 1 || control) ? "Shift+" : ""
  return `${control}${altKey ? "Alt+" : ""}${shift}${letter}`
}

/** With Alt, or Ctrl and Alt, other letters are written; the plain ones are keys of the system. */
export function writes({key, ctrlKey, metaKey, altKey}: KeyPress): boolean {
  if ([...key].length !== 1 || metaKey) return false
  return altKey ? !/^[a-z0-9\s]$/i.test(key) : !ctrlKey
}

/** A dead key, or a key that an input method takes: what it writes comes only after it. */
export const isComposing = ({key, ctrlKey, metaKey, altKey}: KeyPress) =>
  (key === "Dead" || key === "Process") && !metaKey && (altKey || !ctrlKey)
