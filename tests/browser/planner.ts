import {build, preview} from "vite"
import type {TestProject} from "vitest/node"
import {startBrowser} from "../../src/command-line/common/browser"

declare module "vitest" {
  interface ProvidedContext {
    /** Where the planner is served. */
    planner: string
  }
}

/** Builds the planner in both forms and serves it on a free port, for all browser tests of a run, once a browser is there. */
export default async function start(project: TestProject) {
  await startBrowser().then((browser) => browser.close(), tellAndExit)
  const configFile = `${import.meta.dirname}/../../src/vite.config.ts`
  const oneFile = `${import.meta.dirname}/../../src/oneFile.vite.config.ts`
  // The test runner sets NODE_ENV to "test", for which React would be built in its slower form for developers.
  const {NODE_ENV} = process.env
  process.env["NODE_ENV"] = "production"
  await build({configFile, logLevel: "error"})
  await build({configFile: oneFile, logLevel: "error"})
  process.env["NODE_ENV"] = NODE_ENV
  const server = await preview({configFile, preview: {port: 0, open: false}})
  project.provide("planner", server.resolvedUrls!.local[0]!)
  return () => server.close()
}

/** One sentence says what to do; the trace of a thrown error would bury it. */
function tellAndExit(fault: Error): never {
  console.error(fault.message)
  process.exit(1)
}
