import {afterEach, beforeEach, expect, it, vi} from "vitest"

const scope = "https://farm.example/planner/"

/** The browser's side: what is kept by the name of each store, and the acts that the worker asked to be called for. */
function browserWith(stores: Map<string, Map<string, string>>, missing: readonly string[] = []) {
  const acts = new Map<string, (event: object) => void>()
  vi.stubGlobal("BUILT", {version: "2", files: ["./", "assets/a.js"]})
  vi.stubGlobal("self", {
    registration: {scope},
    clients: {claim: async () => {}},
    addEventListener: (name: string, act: (event: object) => void) => acts.set(name, act),
  })
  vi.stubGlobal("caches", {
    open: async (name: string) => {
      if (!stores.has(name)) stores.set(name, new Map())
      const store = stores.get(name)!
      return {
        addAll: async (asked: Request[]) => {
          if (asked.some(({url}) => missing.includes(url))) throw new TypeError("one is missing")
          asked.forEach(({url}) => store.set(url, `kept ${url}`))
        },
        match: async (url: string) => (store.has(url) ? new Response(store.get(url)) : undefined),
      }
    },
    keys: async () => [...stores.keys()],
    delete: async (name: string) => stores.delete(name),
  })
  vi.stubGlobal("fetch", async ({url}: Request) => new Response(`loaded ${url}`))
  const done = (name: "install" | "activate") =>
    new Promise<unknown>((waitUntil) => acts.get(name)!({waitUntil}))
  const answer = async (url: string, method = "GET") => {
    const answers: Promise<Response>[] = []
    acts.get("fetch")!({
      request: new Request(url, {method}),
      respondWith: (one: Promise<Response>) => answers.push(one),
    })
    return answers[0] ? (await answers[0]).text() : null
  }
  return {done, answer}
}

beforeEach(() => vi.resetModules())
afterEach(() => vi.unstubAllGlobals())

it("keeps every file when it is installed, and answers with them", async () => {
  const stores = new Map<string, Map<string, string>>()
  const {done, answer} = browserWith(stores)
  await import("../../src/offline/serviceWorker")
  await done("install")
  expect(await answer(`${scope}assets/a.js`)).toBe(`kept ${scope}assets/a.js`)
  for (const page of ["", "index.html", "?on=2026-05-25"])
    expect(await answer(scope + page), page).toBe(`kept ${scope}`)
})

it("keeps the planner as one file where the server has it, and is installed where it has not", async () => {
  const oneFile = `${scope}fernledger.html`
  for (const missing of [[], [oneFile]]) {
    vi.resetModules()
    const {done, answer} = browserWith(new Map(), missing)
    await import("../../src/offline/serviceWorker")
    await done("install")
    expect(await answer(oneFile)).toBe(missing.length ? `loaded ${oneFile}` : `kept ${oneFile}`)
    expect(await answer(scope)).toBe(`kept ${scope}`)
  }
})

it("leaves to the network what it does not keep, and to the browser what is not the planner's", async () => {
  const {done, answer} = browserWith(new Map())
  await import("../../src/offline/serviceWorker")
  await done("install")
  expect(await answer(`${scope}missing.json`)).toBe(`loaded ${scope}missing.json`)
  expect(await answer("https://farm.example/other/")).toBeNull()
  expect(await answer(scope, "POST")).toBeNull()
})

it("drops the older files of its own when it takes over, and nobody else's", async () => {
  const others = ["something else", "fernledger https://farm.example/second-planner/ 1"]
  const stores = new Map(
    [...others, `fernledger ${scope} 1`].map((name) => [name, new Map<string, string>()]),
  )
  const {done} = browserWith(stores)
  await import("../../src/offline/serviceWorker")
  await done("install")
  await done("activate")
  expect([...stores.keys()]).toEqual([...others, `fernledger ${scope} 2`])
})
