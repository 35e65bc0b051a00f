import {useState} from "react"
import type {Described} from "../../functions/define"
import {described} from "../../functions/described"
import {showPanel} from "../editor/selection"
import type {Store} from "../editor/store"
import {PanelFrame} from "./PanelFrame"
import {FunctionCard} from "./FunctionCard"

/** Help on every formula function by topic, and the way to the list of keys and to region and units. */
export function HelpPanel({store, onClose}: {store: Store; onClose: () => void}) {
  const [sought, setSought] = useState("")
  const [open, setOpen] = useState<string | null>(null)
  const found = described.filter(({name, summary}) =>
    `${name} ${summary}`.toLowerCase().includes(sought.trim().toLowerCase()),
  )
  const topics = [...new Set(found.map(topicOf))]
  return (
    <PanelFrame
      title="Help: formula functions"
      holds="help-panel"
      onClose={onClose}
      acts={
        <>
          <button className="plain" onClick={() => store.turn(showPanel("checks"))}>
            Checks
          </button>
          <button className="plain" onClick={() => store.turn(showPanel("keys"))}>
            Keys
          </button>
          <button className="plain" onClick={() => store.turn(showPanel("region"))}>
            Region and units
          </button>
        </>
      }
    >
      <label className="label">
        Look for a function{" "}
        <input type="search" value={sought} onChange={({target}) => setSought(target.value)} />
      </label>
      <p className="small q" aria-live="polite">
        {found.length} of {described.length} functions
      </p>
      {topics.map((topic) => (
        <div key={topic} className="topic">
          <h3>
            {topic} <span className="q">{topicWords[topic]}</span>
          </h3>
          <ul>
            {found
              .filter((one) => topicOf(one) === topic)
              .map(({name, summary}) => (
                <li key={name}>
                  <button
                    className="plain"
                    aria-expanded={open === name}
                    onClick={() => setOpen(open === name ? null : name)}
                  >
                    {name}
                  </button>
                  {open === name ? (
                    <FunctionCard store={store} name={name} />
                  ) : (
                    <span className="q">{summary}</span>
                  )}
                </li>
              ))}
          </ul>
        </div>
      ))}
      <p className="guide">
        A general guide only: on reserves, disease, labour and food safety ask the local extension office or a
        licensed adviser, and read the label; on loans ask the lender.
      </p>
    </PanelFrame>
  )
}

const topicOf = (one: Described) => (one.section === undefined ? one.name.split(".")[0]! : STANDARD)

const STANDARD = "STANDARD"

const topicWords: Record<string, string> = {
  ROOT: "the crown’s stored sugar",
  FERN: "summer growth that refills it",
  SPEAR: "growth, size and picking",
  SEASON: "limits, close and pace",
  CROP: "yield",
  STAND: "plants and age",
  CREW: "hands",
  PACK: "the shed",
  COOLER: "cold after cutting",
  DEBT: "loans and what pays them",
  [STANDARD]: "from the OpenFormula standard, listed because they were added or corrected here",
}
