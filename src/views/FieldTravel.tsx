import {useState} from "react"
import {deviceName, nameDevice} from "../storage/ownDevice"
import {LONGEST_DEVICE} from "../workbook/document"
import type {Keeping} from "./keeping"

/** How what was entered here comes to another device. */
export function FieldTravel({rows, send}: {rows: number; send: Keeping["sendFieldRows"]}) {
  const [name, setName] = useState(deviceName)
  const [said, setSaid] = useState("")
  return (
    <details className="field-travel">
      <summary>To another device</summary>
      <label>
        This device is called
        <input
          value={name}
          maxLength={LONGEST_DEVICE}
          onChange={({currentTarget}) => setName(currentTarget.value)}
          onBlur={() => {
            nameDevice(name)
            setName(deviceName())
          }}
        />
      </label>
      <button disabled={rows === 0} onClick={() => void send().then((words) => setSaid(words ?? ""))}>
        {rows === 0 ? "Nothing to send yet" : "Send all that was entered"}
      </button>
      <p role="status">{said}</p>
      <p>On the other device “Bring in…” adds each row once, however often and in whatever order.</p>
    </details>
  )
}
