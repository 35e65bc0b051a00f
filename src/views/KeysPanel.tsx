import {useState} from "react"
import {lineBindings} from "../editor/lineKeys"
import {sheetBindings} from "../editor/sheetKeys"
import {PanelFrame} from "./PanelFrame"

interface Props {
  onClose: () => void
}

const all = [...sheetBindings, ...lineBindings]

/** All keys, by what they do; made from the table that binds them. */
export function KeysPanel({onClose}: Props) {
  const [sought, setSought] = useState("")
  const words = sought.trim().toLowerCase()
  const isSought = ({keys, does}: (typeof all)[number]) =>
    `${does} ${keys.map(keyText).join(" ")}`.toLowerCase().includes(words)
  const groups = [...new Set(all.map(({group}) => group))]
    .map((group) => ({group, found: all.filter((one) => one.group === group && isSought(one))}))
    .filter(({found}) => found.length > 0)
  return (
    <PanelFrame title="Keys" holds="keys-panel" onClose={onClose}>
      <label>
        Find a key{" "}
        <input value={sought} type="search" onChange={({currentTarget}) => setSought(currentTarget.value)} />
      </label>
      {groups.map(({group, found}) => (
        <table key={group}>
          <caption>{group}</caption>
          <tbody>
            {found.map(({keys, does}) => (
              <tr key={`${keys[0]} ${does}`}>
                <th scope="row">{does}</th>
                <td>
                  {keys.map((key) => (
                    <kbd key={key}>{keyText(key)}</kbd>
                  ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <p aria-live="polite" className="q">
        {groups.length === 0 && `No key does “${sought}”.`}
      </p>
      <p className="small q">
        A letter, a digit or a sign begins typing. Esc, then Tab, leaves the sheet. Cmd stands for Ctrl on
        machines that have it.
      </p>
    </PanelFrame>
  )
}

/** "Ctrl+ArrowLeft" as people write it: "Ctrl + ←". */
const keyText = (keys: string) =>
  keys
    .split("+")
    .map((key) => NAMES[key] ?? (key.length === 1 ? key.toUpperCase() : key))
    .join(" + ")

const NAMES: Readonly<Record<string, string>> = {
  ArrowLeft: "←",
  ArrowRight: "→",
  ArrowUp: "↑",
  ArrowDown: "↓",
  PageUp: "Page up",
  PageDown: "Page down",
  ContextMenu: "Menu key",
}
