declare module "virtual:first-look" {
  import type {Look} from "./views/FirstLook"

  /** The demonstration farm's plan, worked out when the planner is built (src/vite.config.ts). */
  const look: Look
  export default look
}
