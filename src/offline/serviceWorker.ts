/** Put here when the planner is built: its files, relative to this one, and a mark that differs when one of them does. */
declare const BUILT: {readonly version: string; readonly files: readonly string[]}

// The compiler's list of the page's functions lacks those of a service worker (Service Workers, W3C).
interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void
}
interface Asked extends Event {
  readonly request: Request
  respondWith(answer: Promise<Response>): void
}
interface ServiceWorkerSelf {
  readonly registration: {readonly scope: string}
  readonly clients: {claim(): Promise<void>}
  addEventListener(name: "install" | "activate", act: (event: Extendable) => void): void
  addEventListener(name: "fetch", act: (event: Asked) => void): void
}

const worker = self as unknown as ServiceWorkerSelf
const {scope} = worker.registration
const ours = `fernledger ${scope} `
const kept = () => caches.open(ours + BUILT.version)

// A newer program waits until no tab shows the older one: then all files it reads are of one version.
worker.addEventListener("install", (event) => event.waitUntil(keepFiles()))
worker.addEventListener("activate", (event) =>
  event.waitUntil(dropOlder().then(() => worker.clients.claim())),
)
worker.addEventListener("fetch", (event) => {
  const {method, url} = event.request
  if (method === "GET" && url.startsWith(scope)) event.respondWith(answer(event.request))
})

/** All files or none: one that fails fails the installing. The planner as one file may be missing: not every server has it. */
async function keepFiles() {
  const asked = (file: string) => new Request(new URL(file, scope), {cache: "no-cache"})
  const cache = await kept()
  await cache.addAll(BUILT.files.map(asked))
  await cache.addAll([asked("fernledger.html")]).catch(() => {})
}

async function dropOlder() {
  const names = await caches.keys()
  const older = names.filter((name) => name.startsWith(ours) && name !== ours + BUILT.version)
  await Promise.all(older.map((name) => caches.delete(name)))
}

async function answer(request: Request): Promise<Response> {
  const {origin, pathname} = new URL(request.url)
  const address = (origin + pathname).replace(/\/index\.html$/, "/")
  const found = await (await kept()).match(address, {ignoreVary: true})
  return found ?? fetch(request)
}
