/** Gives a claim back. */
export type Release = () => void

/**
 * One writer for each design, over all tabs: claims the right to write, or null where another tab has it. It ends with
 * the page. Where the browser has no locks everyone gets the claim, and the revision check of the store is the guard.
 * @param locks the browser's lock manager
 */
export const claimDesign = (
  id: string,
  locks: LockManager | undefined = globalThis.navigator?.locks,
): Promise<Release | null> => {
  if (!locks) return Promise.resolve(() => {})
  return new Promise((resolve) => {
    const held = (lock: Lock | null): Promise<void> | undefined => {
      if (lock) return new Promise<void>((end) => resolve(() => end()))
      resolve(null)
      return undefined
    }
    // Refused by the browser's settings: as if it had none.
    locks.request(`pedicel-design-${id}`, { ifAvailable: true }, held).catch(() => resolve(() => {}))
  })
}
