import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { vi } from 'vitest'
import { type Arrangement, newArrangement } from '../../../src/arrangement/index.ts'

type State = typeof import('../../../src/state/index.ts')

/** The claims of one browser: each is held until its page is gone. */
interface Browser {
  claims: Map<string, Tab>
  small: Map<string, string>
}

/** A page of its own over the same browser: all modules anew, and events of its own. */
export interface Tab extends State {
  /** As when the page is left: `pagehide` is heard, then nothing more. */
  leave(): void
  design(title: string): Promise<string>
}

const smallStore = (rows: Map<string, string>) => ({
  getItem: (key: string) => rows.get(key) ?? null,
  setItem: (key: string, value: string) => void rows.set(key, value),
  removeItem: (key: string) => void rows.delete(key),
  key: (i: number) => [...rows.keys()][i] ?? null,
  get length() {
    return rows.size
  },
})

/** A browser with nothing in it. */
export const browser = (): Browser => {
  globalThis.indexedDB = new IDBFactory()
  return { claims: new Map(), small: new Map() }
}

/** Opens a page; its event is started unless told otherwise. */
export const tab = async (of: Browser, start = true): Promise<Tab> => {
  vi.resetModules()
  const heard = new Map<string, () => void>()
  vi.stubGlobal('localStorage', smallStore(of.small))
  vi.stubGlobal('BroadcastChannel', undefined)
  vi.stubGlobal('addEventListener', (name: string, then: () => void) => heard.set(name, then))
  const self: { tab: Tab | null } = { tab: null }
  const held = new Set<string>()
  vi.stubGlobal('navigator', {
    locks: {
      request: async (name: string, _: object, then: (lock: object | null) => Promise<void> | undefined) => {
        if (of.claims.has(name)) return then(null)
        of.claims.set(name, self.tab!)
        held.add(name)
        await then({})
        of.claims.delete(name)
      },
    },
  })
  const state: State = await import('../../../src/state/index.ts')
  const keeping = await import('../../../src/state/keeping.ts')
  const page: Tab = {
    ...state,
    leave: () => {
      heard.get('pagehide')?.()
      for (const name of held) of.claims.delete(name)
    },
    design: async (title) => {
      const document: Arrangement = { ...newArrangement(), title }
      const id = await keeping.keepAside(document)
      if (id === null) throw new Error('could not be kept')
      return id
    },
  }
  self.tab = page
  if (start) {
    await page.startEvent()
    await page.fetchDesigns()
  }
  return page
}

export const titleOf = (page: Tab): string => page.useEvent.getState().event.title
export const name = (page: Tab, title: string): void => page.changeEvent({ title }, `called ${title}`)
export const titles = async (page: Tab, thrown = false): Promise<string[]> => {
  await page.refreshEvents()
  return page.useEvent
    .getState()
    .kept.filter((e) => e.thrown === thrown)
    .map((e) => e.title)
    .sort()
}
