import {chromium, type BrowserContextOptions, type Page} from "playwright-core"
import {afterAll, inject, onTestFinished} from "vitest"
import {startBrowser} from "../../src/command-line/common/browser"

export interface View {
  width?: number
  height?: number
  colorScheme?: "light" | "dark"
  /** What follows the planner's address: `?page=week`, `#long-acre`. */
  at?: string
  /** Anything else a test needs of its browser: touch, time zone, permissions for the clipboard. */
  browser?: BrowserContextOptions
}

export interface OpenPlanner {
  page: Page
  /**
   * What went wrong so far, one line each: a console error, an error that nobody caught, a request that failed,
   * a request to another host (which does not get there). A test ends with `expect(trouble).toEqual([])`.
   */
  trouble: readonly string[]
}

/** Opens the built planner as a person sees it for the first time: nothing is stored yet. Closed when the test ends. */
export async function openPlanner({
  width = 1440,
  height = 900,
  colorScheme = "light",
  at = "",
  browser,
}: View = {}) {
  const home = inject("planner")
  const context = await (
    await connection()
  ).newContext({
    viewport: {width, height},
    colorScheme,
    serviceWorkers: "block", // a test that keeps the program's files on the device says so
    ...browser,
  })
  onTestFinished(() => context.close())

  const trouble: string[] = []
  const isElsewhere = (address: URL | string) => {
    const {protocol, host} = new URL(address)
    return /^(http|ws)s?:$/.test(protocol) && host !== new URL(home).host
  }
  context.on("request", (request) => {
    if (isElsewhere(request.url())) trouble.push(`to another host: ${request.url()}`)
  })
  context.on("requestfailed", (request) => {
    if (!isElsewhere(request.url())) trouble.push(`failed: ${request.url()} ${request.failure()?.errorText}`)
  })
  context.on("response", (response) => {
    if (response.status() >= 400) trouble.push(`failed: ${response.url()} ${response.status()}`)
  })
  context.on("console", (message) => {
    if (message.type() === "error") trouble.push(`console: ${message.text()}`)
  })
  context.on("weberror", (fault) => trouble.push(`uncaught: ${fault.error().message}`))
  context.on("page", (page) =>
    page.on("websocket", (socket) => {
      if (isElsewhere(socket.url())) trouble.push(`to another host: ${socket.url()}`)
    }),
  )

  const page = await context.newPage()
  await page.goto(new URL(at, home).href)
  return {page, trouble} satisfies OpenPlanner as OpenPlanner
}

/** The browser of this file of tests, with a clipboard of its own. */
let started: ReturnType<typeof start> | undefined
const start = async () => {
  const server = await startBrowser()
  return {server, browser: await chromium.connect(server.wsEndpoint())}
}
const connection = async () => (await (started ??= start())).browser

afterAll(async () => (await started)?.server.close())
