import "@fontsource-variable/literata"
import "@fontsource-variable/source-sans-3"
import {createRoot} from "react-dom/client"
import demonstration from "virtual:first-look"
import {handed} from "./handed"
import {lastLook} from "./lastLook"
import {FirstLook} from "./views/FirstLook"

const root = createRoot(window.document.getElementById("planner")!)
const inside = handed()
const look = inside ? inside.look : lastLook()
const isFirstVisit = !inside && !look
root.render(<FirstLook look={look ?? demonstration} isFirstVisit={isFirstVisit} />)

// The engine is large: it is loaded once the plan stands there to be read.
requestAnimationFrame(() =>
  setTimeout(() =>
    import("./planner")
      .then(({startPlanner}) => startPlanner(root, inside, isFirstVisit))
      .catch(couldNotStart),
  ),
)

function couldNotStart(fault: unknown) {
  const reason = fault instanceof Error ? fault.message : String(fault)
  root.render(<p role="alert">The planner could not be started: {reason}. Load this page again.</p>)
  throw fault
}
