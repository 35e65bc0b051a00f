import type {Root} from "react-dom/client"
import demonstration from "../workbooks/hollow-brook-farm.json?raw"
import {yearOf} from "./editor/editing"
import {fieldCsv, fieldFileIn} from "./editor/fieldFile"
import {showPanel} from "./editor/selection"
import {createStore} from "./editor/store"
import {handedIn, pageWith, type Handed} from "./handed"
import {keepLook} from "./lastLook"
import {oneFilePage} from "./storage/oneFilePage"
import {createAtWork, wasCutOff} from "./storage/atWork"
import {createAutosave, isLastingNow} from "./storage/autosave"
import {isRefused, openDevice} from "./storage/deviceStore"
import {
  copyName,
  keepFileCopy,
  keepPage,
  openFileCopy,
  openForeign,
  openTable,
  sendFile,
  shareTable,
} from "./storage/fileCopy"
import {markAt} from "./storage/ownDevice"
import {openVersions} from "./storage/versions"
import {keepingWords, type KeepingState} from "./storage/keepingWords"
import {keepProgram} from "./storage/keptProgram"
import {createLead, savedByLeader} from "./storage/lead"
import {App} from "./views/App"
import {copyOut, leftOutOf} from "./views/copyOut"
import type {KeptVersion, Keeping, Replaced} from "./views/keeping"
import {onceDrawn} from "./views/onceDrawn"
import {shortDigest} from "./views/readingWords"
import {isoDate} from "./workbook/clock"
import {compare} from "./workbook/compare"
import type {Document} from "./workbook/document"
import {markedCopy} from "./workbook/copies"
import {newId} from "./workbook/fieldActs"
import {readFile, writeFile} from "./workbook/file"
import {cellsIn} from "./workbook/size"
import {planOf} from "./workbook/plan"

/** The program's files are kept, and the last file copy looked for, once the sheet has come, ms; chosen. */
const AFTER_THE_SHEET = 2000

/**
 * Up to so many cells an act is kept before it is drawn, which takes some 5 ms: what comes between is not lost. More are kept
 * after the drawing, since to keep them takes as long as to draw them. Chosen.
 */
const KEPT_AT_ONCE = 50_000

/** Steps that follow each other have ended once none comes for this long, ms; chosen. */
const STEPS_REST = 200

const samples = {
  demonstration: async () => demonstration, // at hand at once, since a first visit begins with it
  blank: async () => (await import("../workbooks/blank.json?raw")).default,
}

/** Reads a file copy, or the workbook inside a reading copy that is a page. */
const readCopy = (text: string) => readFile(handedIn(text)?.workbook ?? text)

/** A workbook that comes with the program. */
async function sample(name: keyof typeof samples): Promise<Document> {
  const reading = readFile(await samples[name]())
  if ("refused" in reading) throw new Error(reading.refused)
  return reading.document
}

/**
 * Opens the workbook that came inside the page, else the one kept on this device, else the demonstration, and puts the planner
 * in place of the first look.
 */
export async function startPlanner(root: Root, inside: Handed | null, isFirstVisit: boolean) {
  const device = await openDevice()
  const came = inside && readFile(inside.workbook)
  const keptThen = device.earlier() // before the newest is read: what another tab saves meanwhile is newer
  const found = came ? null : await device.latest()
  const document =
    came && "document" in came
      ? came.document
      : found && !isRefused(found)
        ? found.document
        : await sample("demonstration")
  const later = (act: () => void, isStep: boolean) => (isStep ? setTimeout(act, STEPS_REST) : onceDrawn(act))
  const store = createStore(document, later, () => markAt(new Date()))

  // All through a first visit: were it to go with the first act, the sheet would move under the hand.
  let greets = isFirstVisit && !found ? document.name : null
  let state: KeepingState = {
    found,
    wasCutOff: false,
    saving: null,
    place: "leads",
    isLasting: undefined,
    copies: null,
    isKeptFirst: false,
    hasNewer: false,
  }
  let words = keepingWords(state, new Date())
  const listeners = new Set<() => void>()
  const say = (told: Partial<KeepingState>) => {
    state = {...state, ...told}
    words = keepingWords(state, new Date())
    for (const listener of listeners) listener()
  }
  const tell = (sentence: string) => store.turn(() => ({said: sentence}))

  const lead = createLead(device, (place) => {
    say({place})
    if (place === "leads") void autosave.flush() // what was refused meanwhile
  })
  const autosave = createAutosave(
    savedByLeader(device, lead),
    (saving) => say({saving}),
    (isLasting) => say({isLasting}),
  )
  const look = () => {
    const {document} = store.getState()
    const plan = planOf(store.workbook)
    return plan && {name: document.name, season: document.season, plan}
  }
  let replaced: Replaced | null = null
  const versions = openVersions()
  const atWork = createAtWork()
  let kept = store.getState().document
  const keep = () => {
    const {document} = store.getState()
    if (document === kept) return
    if (document.name !== kept.name) {
      void lead.take(document.name, device.earlier())
      void sayCopies()
    }
    kept = document
    autosave.changed(document)
    if (lead.place() === "leads") atWork.begin(document.name)
    onceDrawn(keepWhatIsShown)
  }
  let looked: Document | null = null
  const keepWhatIsShown = () => {
    if (looked === kept || lead.place() !== "leads") return
    const isWaiting = store.workbook.isOwing && window.document.visibilityState !== "hidden"
    if (isWaiting) return void setTimeout(keepWhatIsShown, STEPS_REST)
    looked = kept
    keepLook(look())
  }
  /** Says when a file copy of what is open was last kept. */
  const sayCopies = async () => {
    const {name} = store.getState().document
    const last = await versions.lastCopy(name)
    const states = await device.earlier()
    const first = isRefused(states) ? undefined : states.findLast((state) => state.name === name)
    say({copies: last ? {last} : first ? {noneSince: first.savedAt} : null})
  }
  await lead.take(document.name, keptThen)
  if (lead.place() === "leads" && wasCutOff(document.name)) {
    say({wasCutOff: true})
    atWork.begin(document.name) // said once, since this page ends it
  }
  if (!came) keepWhatIsShown() // what came inside the page is not this device's own
  if (state.found && !isRefused(state.found)) void isLastingNow().then((isLasting) => say({isLasting}))
  store.subscribe(() => {
    const {document} = store.getState()
    if (document === kept) return
    if (cellsIn(document) <= KEPT_AT_ONCE) keep()
    else onceDrawn(keep)
  })
  window.document.addEventListener("visibilitychange", () => {
    if (window.document.visibilityState !== "hidden") return
    keep()
    keepWhatIsShown()
    void autosave.flush()
    atWork.end()
  })

  /** Opens another workbook; where the engine cannot, what was open stays. */
  const openOther = (workbook: Document) => {
    try {
      store.open(workbook)
    } catch {
      tell(`${workbook.name} was not opened: it cannot be worked out here. What was open is as it was.`)
    }
  }

  /**
   * Keeps a file copy that was written or opened as a version too: from it another copy may have gone on. Gives what is to be
   * said of it.
   */
  const keepCopy = async (document: Document, name: string) => {
    const id = document.copy?.id
    if (id === undefined || (await versions.of(document.name)).some(({copy}) => copy === id)) return ""
    const by = document.copy?.by ?? ""
    const version: Omit<KeptVersion, "id"> = {
      workbook: document.name,
      name,
      by,
      reason: "kept by itself",
      byItself: true,
      at: new Date(),
      copy: id,
    }
    const refused = await versions.keep(version, document)
    void sayCopies()
    return refused ? ` ${refused.refused}, so another copy cannot be compared with this one.` : ""
  }

  /** What of the device's own a copy that is opened takes the place of, where that differs. */
  const replacedBy = (opened: Document, file: string): Replaced | null => {
    const {document} = store.getState()
    const {saving, found} = state
    const kept = found && !isRefused(found) ? found.savedAt : null
    const changed = saving?.kind === "saved" ? saving.at : saving ? new Date() : kept // being saved, or refused: just now
    const isOwn = changed !== null && document.name === opened.name && !document.reading && !opened.reading
    const differs = () => Object.values(compare(document, opened)).some(({length}) => length > 0)
    return isOwn && differs() ? {file, opened, document, changed} : null
  }

  const keepReplaced = async ({file, document, changed}: Replaced) => {
    const version: Omit<KeptVersion, "id"> = {
      workbook: document.name,
      name: `before opening ${file}`,
      by: "",
      reason: "kept by itself",
      byItself: true,
      at: changed,
    }
    const refused = await versions.keep(version, document)
    const kept = refused
      ? `${refused.refused}.`
      : "What was open here differs from it, and is kept as a version."
    store.turn((shown) => ({...showPanel("versions")(shown), said: `${shown.said} ${kept}`}))
    say({})
  }

  const keeping: Keeping = {
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    words: () => words,
    async keepFileCopy() {
      const {document} = store.getState()
      const [earlier, now] = [await versions.of(document.name), new Date()] // the latest first
      const by = earlier.find((version) => version.by !== "")?.by
      const known = earlier.flatMap((version) => version.copy ?? []).toReversed()
      const id = newId()
      const copy = markedCopy(document, known, {id, kept: now.toISOString(), ...(by ? {by} : {})})
      const kept = await keepFileCopy(copy, copyName(document.name, now))
      if (!kept) return
      if (isRefused(kept)) return tell(`${kept.refused}.`)
      tell(`A copy is kept as ${kept.name}.${await keepCopy(copy, `file copy ${kept.name}`)}`)
    },
    async keepReadingCopy(madeBy) {
      const {readingCopy} = await import("./workbook/reading")
      const copy = await readingCopy(store.workbook, madeBy, isoDate(new Date()))
      if (!copy) return tell("No reading copy was made: this browser makes no digests on this page.")
      const name = `${copy.name} reading copy`
      const page = await oneFilePage()
      const kept = page
        ? await keepPage(
            pageWith(page, {look: look(), workbook: writeFile(copy)}),
            copyName(name, new Date(), "html"),
          )
        : await keepFileCopy(copy, copyName(name, new Date()))
      if (!kept) return
      if (isRefused(kept)) return tell(`${kept.refused}.`)
      const opens = page
        ? ""
        : " It is the workbook alone, since the planner as one file is not at hand here: who reads it needs the planner."
      tell(
        `A reading copy is kept as ${kept.name}. Its digest is ${shortDigest(copy.reading!.digest)}.${opens}`,
      )
    },
    async openFileCopy() {
      const chosen = await openFileCopy()
      if (!chosen) return
      if (isRefused(chosen)) return tell(`${chosen.refused}.`)
      const reading = readCopy(chosen.text)
      if ("refused" in reading)
        tell(`${chosen.name} was not opened. ${reading.refused}. What was open is as it was.`)
      else {
        const was = replacedBy(reading.document, chosen.name)
        tell(`Opening ${reading.document.name}: working out its sheets.`) // of a large farm that takes its time
        await new Promise<void>(onceDrawn)
        openOther(reading.document)
        replaced = store.getState().document === reading.document ? was : null
        const said = await keepCopy(reading.document, `opened ${chosen.name}`)
        if (said) tell(`${store.getState().said}${said}`)
        if (replaced) await keepReplaced(replaced)
      }
    },
    replaced: () => replaced,
    settleReplaced() {
      replaced = null
      say({})
    },
    async readFileCopy() {
      const chosen = await openFileCopy()
      if (!chosen) return null
      if (isRefused(chosen)) return chosen
      const reading = readCopy(chosen.text)
      if ("refused" in reading) return {refused: `${chosen.name} cannot be read. ${reading.refused}`}
      return {name: chosen.name, document: reading.document}
    },
    versions,
    leftOut: (copy) => leftOutOf(store, copy, store.getState().cell.sheet),
    async sendOut(copy) {
      const {document, cell} = store.getState()
      const on = new Date()
      const made = await copyOut(store, copy, cell.sheet, on)
      const sent = await sendFile(made.data, copyName(made.name, on, made.ending))
      if (sent) tell(isRefused(sent) ? `${sent.refused}.` : `${document.name} is sent out as ${sent.name}.`)
    },
    async sendFieldRows() {
      const {document} = store.getState()
      const name = copyName(`${document.name} field rows`, new Date(), "csv")
      const sent = await shareTable(fieldCsv(document), name)
      if (!sent) return null
      return isRefused(sent) ? `${sent.refused}.` : `Sent as ${sent.name}.`
    },
    async readForeign() {
      const {LIMITS} = await import("./storage/book/limits")
      const chosen = await openForeign(LIMITS.file)
      if (!chosen) return null
      if (isRefused(chosen)) return {name: "The file", ...chosen}
      const {bytes, name} = chosen
      const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b
      if (!isZip && !/\.(xlsx|ods|xls)$/i.test(name)) {
        const read = (await import("./editor/csvIn")).readCsv(bytes)
        if (isRefused(read)) return {name, ...read}
        const field = fieldFileIn(read)
        return field ? {name, field} : {name, table: read}
      }
      const {readBook} = await import("./storage/book/bookFile")
      const {standardFunctions: functions} = store.workbook
      const normalized = (formula: string) => store.workbook.normalized(formula)
      const read = readBook(bytes, name, {functions, normalized})
      return isRefused(read) ? {name, ...read} : {name, workbook: read}
    },
    openRead: openOther,
    async bringInWeather() {
      const chosen = await openTable()
      if (!chosen) return
      if (isRefused(chosen)) return tell(`${chosen.refused}.`)
      const {document} = store.getState()
      const {readWeather} = await import("./editor/weatherFile")
      const read = readWeather(chosen.text, document, yearOf(document))
      if ("refused" in read)
        tell(`${chosen.name} was not brought in. ${read.refused}. The sheet is as it was.`)
      else
        store.turn(() => ({
          question: {asks: read.asks, yes: "Bring them in", edit: read.edit},
          said: read.asks,
        }))
    },
    async openSample(name) {
      const workbook = await sample(name)
      if (name === "demonstration") greets = workbook.name
      store.open(workbook)
    },
    greets: (document) => document.name === greets,
  }

  // An address that ends in #field opens the page for the field, so that a tablet can keep it on its first screen, and comes
  // back to it where the browser had put it aside while the screen was locked.
  if (location.hash === "#field") store.turn(() => ({page: "field"}))
  store.subscribe(() => {
    const isField = store.getState().page === "field"
    if (isField !== (location.hash === "#field"))
      history.replaceState(null, "", isField ? "#field" : location.pathname + location.search)
  })
  if (found && !isRefused(found) && found.notice) tell(`${found.notice}.`)
  if (came && "refused" in came) tell(`The workbook inside this page was not opened. ${came.refused}.`)
  root.render(<App store={store} keeping={keeping} />)
  setTimeout(() => void sayCopies(), AFTER_THE_SHEET)
  if (import.meta.env.PROD && location.protocol !== "file:") setTimeout(keepForOffline, AFTER_THE_SHEET)

  function keepForOffline() {
    const address = new URL("service-worker.js", window.document.baseURI)
    const told = {onKept: () => say({isKeptFirst: true}), onNewer: () => say({hasNewer: true})}
    void keepProgram(address, told, navigator.serviceWorker)
  }
}
