type Container = Pick<ServiceWorkerContainer, "register" | "getRegistration" | "controller" | "ready">

interface Told {
  /** The program is kept for the first time: it starts without a network from now on. */
  onKept(): void
  /** A newer program was kept: it is taken at the next start, once no tab shows this one. */
  onNewer(): void
}

/**
 * Keeps the program's own files on this device, so that it starts without a network. Where the browser cannot or will
 * not keep them, nothing happens: the planner works as it does without.
 */
export async function keepProgram(address: URL, {onKept, onNewer}: Told, container?: Container) {
  try {
    if (container && !container.controller) void container.ready.then(onKept)
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
