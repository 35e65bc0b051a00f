import {cp, mkdtemp, readFile, rm, writeFile} from "node:fs/promises"
import {createServer} from "node:http"
import type {AddressInfo} from "node:net"
import {tmpdir} from "node:os"
import {extname, join} from "node:path"
import type {Page} from "playwright-core"
import {expect, it, onTestFinished} from "vitest"
import {openPlanner} from "./page"
import {sheetOn} from "./sheet"

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
}

/** A copy of the built planner on a server of its own, which a test can change and stop. */
async function serveCopy() {
  const folder = await mkdtemp(join(tmpdir(), "fernledger-"))
  await cp(`${import.meta.dirname}/../../dist/planner`, folder, {recursive: true})
  const asked: string[] = []
  const server = createServer(async ({url = "/"}, response) => {
    const path = new URL(url, "http://localhost").pathname.replace(/\/$/, "/index.html")
    asked.push(path)
    try {
      const content = await readFile(join(folder, path))
      response.setHeader("Content-Type", TYPES[extname(path)] ?? "application/octet-stream").end(content)
    } catch {
      response.writeHead(404).end()
    }
  })
  await new Promise<void>((ready) => server.listen(0, "localhost", ready))
  const stop = () =>
    new Promise<void>((done) => {
      server.close(() => done())
      server.closeAllConnections()
    })
  onTestFinished(async () => {
    if (server.listening) await stop()
    await rm(folder, {recursive: true})
  })
  const change = async (file: string, from: RegExp, to: string) => {
    const text = await readFile(join(folder, file), "utf8")
    expect(text).toMatch(from)
    await writeFile(join(folder, file), text.replace(from, to))
  }
  return {at: `http://localhost:${(server.address() as AddressInfo).port}/`, asked, stop, change}
}

const isKept = (page: Page) =>
  page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated", null, {
    timeout: 30_000,
  })

it("starts cold without its server once it was opened, with all that it loads later", async () => {
  const {at, stop} = await serveCopy()
  const {page} = await openPlanner({at, browser: {serviceWorkers: "allow"}})
  await isKept(page)
  await page.getByText(/Works offline/).waitFor()
  const context = page.context()
  await page.close()
  await stop()

  const again = await context.newPage()
  const failed: string[] = []
  again.on("requestfailed", (request) => failed.push(request.url()))
  await again.goto(at)
  await again.locator(".ag-cell").first().waitFor()
  expect(await again.locator(".folio").innerText()).not.toContain("Works offline") // it is said once
  const sheet = sheetOn(again)
  await sheet.open("Reserve")
  await again.getByRole("button", {name: "Work out how sure"}).click() // a worker that was never loaded before
  await again.getByText("in 8 draws of 10").first().waitFor({timeout: 40_000})
  await again.getByRole("button", {name: "A blank workbook"}).click()
  await expect.poll(() => again.locator(".book").innerText()).not.toContain("Hollow Brook")
  expect(failed).toEqual([])
})

it("tells of a newer version, and takes it at the next start", async () => {
  const {at, change} = await serveCopy()
  const {page} = await openPlanner({at, browser: {serviceWorkers: "allow"}})
  await isKept(page)
  const context = page.context()
  await change("index.html", /<title>Fernledger/, "<title>Newer Fernledger")
  await change("service-worker.js", /"version": "/, '"version": "newer-')
  await page.reload()
  expect(await page.title()).toBe("Fernledger")
  await page.getByText(/A newer version of the planner is ready/).waitFor()
  await page.close()

  await expect
    .poll(
      async () => {
        const next = await context.newPage()
        await next.goto(at)
        const title = await next.title()
        await next.close()
        return title
      },
      {interval: 1000},
    ) // the newer one comes in once no page has the older one open
    .toBe("Newer Fernledger")
})

it("can be installed: its manifest names itself, its start and signs that are there", async () => {
  const {page, trouble} = await openPlanner()
  const manifest = await page.evaluate(async () => {
    const {href} = document.querySelector<HTMLLinkElement>("link[rel=manifest]")!
    const manifest = await (await fetch(href)).json()
    const sizes = await Promise.all(
      manifest.icons.map(async ({src}: {src: string}) => {
        const image = Object.assign(new Image(), {src: new URL(src, href).href})
        await image.decode()
        return image.naturalWidth
      }),
    )
    return {...manifest, sizes}
  })
  expect(manifest).toMatchObject({name: "Fernledger", start_url: "./", display: "standalone"})
  expect(manifest.sizes.slice(1)).toEqual([512, 192])
  expect(trouble).toEqual([])
})
