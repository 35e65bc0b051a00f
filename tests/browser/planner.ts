import {chromium} from "playwright-core"
import {build, preview} from "vite"
import type {TestProject} from "vitest/node"
import {browserOptions} from "./browser"

declare module "vitest" {
  interface ProvidedContext {
    /** Where the planner is served. */
    planner: string
    /** Where the one browser of this run listens. */
    browser: string
  }
}

/** Builds the planner, serves it on a free port and starts one browser, for all browser tests of a run. */
export default async function start(project: TestProject) {
  const options = optionsOrExit()
  const configFile = `${import.meta.dirname}/../../src/vite.config.ts`
  await build({configFile, logLevel: "error"})
  const server = await preview({configFile, preview: {port: 0, open: false}})
  const browser = await chromium.launchServer(options)
  project.provide("planner", server.resolvedUrls!.local[0]!)
  project.provide("browser", browser.wsEndpoint())
  return async () => {
    await browser.close()
    await server.close()
  }
}

/** One sentence tells what to do; the trace of a thrown error would bury it. */
function optionsOrExit() {
  try {
    return browserOptions()
  } catch (fault) {
    console.error((fault as Error).message)
    process.exit(1)
  }
}
