import {runnerImport, type Plugin} from "vite"
import type * as look from "../demonstrationLook"

/** The plan of the demonstration farm, worked out at building: a first visit reads it before the engine is there. */
export function firstLook(): Plugin {
  const id = "virtual:first-look"
  return {
    name: "first-look",
    resolveId: (asked) => (asked === id ? `\0${id}` : null),
    async load(asked) {
      if (asked !== `\0${id}`) return null
      const {module} = await runnerImport<typeof look>(`${import.meta.dirname}/../demonstrationLook.ts`)
      return `export default ${JSON.stringify(module.demonstrationLook())}`
    },
  }
}
