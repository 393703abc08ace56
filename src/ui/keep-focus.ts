/** What a keyboard can stand on. */
const STOPS =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]'
const TYPED_INTO = 'input:not([type="checkbox"], [type="radio"], [type="color"]), textarea'

const nameOf = (e: Element): string =>
  `${e.tagName} ${e.getAttribute('type') ?? ''} ${e.getAttribute('aria-label') ?? e.textContent ?? ''}`
const canStand = (e: HTMLElement): boolean => e.isConnected && e.tabIndex >= 0 && e.getClientRects().length > 0
const stopsIn = (within: ParentNode): HTMLElement[] => [...within.querySelectorAll<HTMLElement>(STOPS)].filter(canStand)

interface Stood {
  on: HTMLElement
  name: string
  within: HTMLElement[]
  /** All stops of the page at that time, in order. */
  stops: HTMLElement[]
}

const standOn = (on: HTMLElement): Stood => {
  const within: HTMLElement[] = []
  for (let e = on.parentElement; e && e !== document.body; e = e.parentElement) within.push(e)
  return { on, name: nameOf(on), within, stops: [...document.querySelectorAll<HTMLElement>(STOPS)] }
}

/**
 * Where the keyboard goes when what it stood on has gone: the same thing elsewhere (the way round, on another sheet);
 * what has come in its very place; the next thing that is still there, or the one before; else the main part of the page.
 */
const nextFor = ({ on, name, within, stops }: Stood): HTMLElement | null => {
  const now = stopsIn(document)
  const same = now.find((e) => nameOf(e) === name)
  if (same) return same
  const before = new Set(stops)
  const come = within[0]?.isConnected ? stopsIn(within[0]).find((e) => !before.has(e)) : undefined
  if (come) return come
  const home = within.find((e) => e.isConnected && e.id !== 'root' && !e.classList.contains('page'))
  const at = stops.indexOf(on)
  const near = [...stops.slice(at + 1), ...stops.slice(0, Math.max(0, at)).reverse()].filter(canStand)
  const kept = near.find((e) => home?.contains(e))
  if (kept) return kept
  const main = document.querySelector<HTMLElement>('main')
  if (main && main.tabIndex < 0) main.tabIndex = -1
  return main
}

/**
 * Keeps the keyboard from falling off the page: whenever the thing that has the focus goes away with what it did, the
 * focus goes on to the nearest sensible thing (WCAG 2.2, 2.4.3). After a touch or click no field for typing is chosen,
 * which would bring up a keyboard on the screen.
 * @returns a function that ends it
 */
export const keepFocus = (): (() => void) => {
  let stood: Stood | null = null
  let byKey = false
  const onFocus = (e: FocusEvent): void => {
    if (e.target instanceof HTMLElement && e.target !== document.body) stood = standOn(e.target)
  }
  const onKey = (): void => {
    byKey = true
  }
  const onPointer = (): void => {
    byKey = false
  }
  const watcher = new MutationObserver(() => {
    if (!stood || stood.on.isConnected || document.activeElement !== document.body) return
    const next = nextFor(stood)
    if (!next) return
    stood = null
    if (byKey || !next.matches(TYPED_INTO)) next.focus({ preventScroll: !byKey })
  })
  watcher.observe(document.body, { childList: true, subtree: true })
  document.addEventListener('focusin', onFocus)
  document.addEventListener('keydown', onKey, true)
  document.addEventListener('pointerdown', onPointer, true)
  return () => {
    watcher.disconnect()
    document.removeEventListener('focusin', onFocus)
    document.removeEventListener('keydown', onKey, true)
    document.removeEventListener('pointerdown', onPointer, true)
  }
}
