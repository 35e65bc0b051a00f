import {version} from "../../package.json"
import {onEachPage} from "./onEachPage"
import {usePrinting} from "./usePrinting"

/** What stands at the foot of each printed page: of which plan it is, which program printed it when, and its number. */
export function EachPage({plan}: {plan: string}) {
  usePrinting() // a page that was opened yesterday is printed today
  return <style>{onEachPage(plan, `Fernledger ${version}`)}</style>
}
