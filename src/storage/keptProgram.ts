type Container = Pick<
  ServiceWorkerContainer,
  "register" | "getRegistration" | "controller" | "addEventListener"
>

/**
 * Keeps the program's own files on this device, so that it starts without a network. `onNewer` is told when a newer
 * program was kept: it is taken at the next start, once no tab shows this one. Where the browser cannot or will
 * not keep them, nothing happens: the planner works as it does without.
 */
export async function keepProgram(address: URL, onNewer: () => void, container?: Container) {
  try {
    await container?.register(address)
    const registration = await container?.getRegistration(address)
    if (!registration) return
    if (registration.waiting) onNewer()
    registration.addEventListener("updatefound", () => {
      const coming = registration.installing
      coming?.addEventListener("statechange", () => {
        // The first program that is kept is the one on screen.
        if (coming.state === "installed" && container?.controller) onNewer()
      })
    })
  } catch {
    // Private windows and strict settings refuse.
  }
}
