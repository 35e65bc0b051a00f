import {isRefused, type Device, type KeptState, type Refused} from "./deviceStore"

/**
 * What this tab may do with its workbook: `leads` saves it; `follows` does not, since another tab that shows it
 * leads; `behind` does not either, since another tab has saved it meanwhile and is gone.
 */
export type Place = "leads" | "follows" | "behind"

export interface Lead {
  place(): Place
  /** The place once what was asked last is answered. */
  settled(): Promise<Place>
  /** Asks for the lead in the workbook of this name, of which this tab knows what was kept then; lets go of another. */
  take(name: string, kept: Promise<Kept> | Kept): Promise<void>
}

/** What the device keeps, the newest first, or why that cannot be told. */
type Kept = readonly KeptState[] | Refused

/**
 * Of the tabs that show a workbook one leads (Web Locks, W3C); when it goes, the next in line leads if the newest state is
 * still the one it knows, whatever the clock says. Where the browser has no such locks, every tab leads.
 */
export function createLead(
  device: Pick<Device, "earlier">,
  onPlace: (place: Place) => void,
  locks: Pick<LockManager, "request"> | undefined = globalThis.navigator?.locks,
): Lead {
  let place: Place = "leads"
  let letGo = () => {}
  let answered: Promise<unknown> = Promise.resolve()
  const tell = (next: Place) => {
    place = next
    onPlace(next)
  }
  /** Whether nobody else has the lock; then it is held until `done`. */
  const isFree = (locks: Pick<LockManager, "request">, lock: string, done: Promise<void>) =>
    new Promise<boolean>((answer) => {
      const asked = locks.request(lock, {ifAvailable: true}, (got) => {
        answer(got !== null)
        return got ? done : undefined
      })
      asked.catch(() => answer(true)) // a page that may not ask leads, as without locks
    })

  async function ask(locks: Pick<LockManager, "request">, name: string, kept: Promise<Kept> | Kept) {
    const gone = new AbortController()
    const {signal} = gone
    const done = new Promise<void>((free) => signal.addEventListener("abort", () => free()))
    letGo = () => gone.abort()
    const lock = `fernledger workbook ${name}`
    const leads = await isFree(locks, lock, done)
    if (signal.aborted) return
    tell(leads ? "leads" : "follows")
    if (leads) return
    const inLine = locks.request(lock, {signal}, async () => {
      const [known, newest] = [newestOf(await kept, name), newestOf(await device.earlier(), name)]
      if (!signal.aborted) tell(newest === null || newest === known ? "leads" : "behind")
      await done
    })
    inLine.catch(() => {}) // it was let go of while it waited
  }

  return {
    place: () => place,
    settled: async () => {
      await answered
      return place
    },
    async take(name, kept) {
      letGo()
      if (locks) await (answered = ask(locks, name, kept))
    },
  }
}

/** Which state of a workbook is the newest; null where none is kept or that cannot be told. */
const newestOf = (kept: Kept, name: string) =>
  isRefused(kept) ? null : (kept.find((state) => state.name === name)?.id ?? null)

/** Saves only what the tab that leads has to save; to the others it says why it does not. */
export const savedByLeader = (
  device: Pick<Device, "save">,
  lead: Pick<Lead, "settled">,
): Pick<Device, "save"> => ({
  async save(document, at) {
    const place = await lead.settled()
    return place === "leads" ? device.save(document, at) : {refused: WHY_NOT[place]}
  },
})

/** Why a tab that does not lead does not save. */
export const WHY_NOT: Readonly<Record<Exclude<Place, "leads">, string>> = {
  follows: "Another tab shows this workbook and saves it: go on there, or close it",
  behind: "Another tab has changed this workbook: load this page again, or keep a file copy of what is here",
}
