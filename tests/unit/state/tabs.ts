import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { vi } from 'vitest'
import { type Arrangement, newArrangement, type Stem } from '../../../src/arrangement/index.ts'
import { newEvent, type WholeEvent } from '../../../src/event/index.ts'
import type { Records } from '../../../src/storage/records.ts'

type State = typeof import('../../../src/state/index.ts')

/** The claims of one browser: each is held until its page is gone. */
interface Browser {
  claims: Map<string, Tab>
  small: Map<string, string>
}

/** What a page's database does: answers, refuses what is written, or never hears of anything again. */
type Database = 'answers' | 'refuses' | 'deaf'

/** A page of its own over the same browser: all modules anew, and events of its own. */
export interface Tab extends State {
  database(does: Database): void
  /** The page is left: `pagehide` is heard, and the database hears nothing of it any more. */
  leave(): void
  design(title: string, stems?: Stem[]): Promise<string>
  saver: typeof import('../../../src/state/event-saver.ts')
  store: typeof import('../../../src/state/kept-store.ts').store
  keepDesign(): Promise<boolean>
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
  let does: Database = 'answers'
  vi.doMock('../../../src/storage/database.ts', async (original) => {
    const { databaseRecords } = await original<typeof import('../../../src/storage/database.ts')>()
    return {
      databaseRecords: (named?: string): Records => {
        const real = databaseRecords(named)
        return {
          transact: (drawer, mode, work) => {
            if (does === 'deaf') return new Promise(() => {})
            if (does === 'refuses' && mode === 'readwrite')
              return Promise.reject(new DOMException('No room', 'QuotaExceededError'))
            return real.transact(drawer, mode, work)
          },
        }
      },
    }
  })
  const state: State = await import('../../../src/state/index.ts')
  const { keepAside } = await import('../../../src/state/design-opening.ts')
  const { keepDesign } = await import('../../../src/state/design-saver.ts')
  const { store } = await import('../../../src/state/kept-store.ts')
  const saver = await import('../../../src/state/event-saver.ts')
  const page: Tab = {
    ...state,
    saver,
    store,
    keepDesign,
    database: (now) => {
      does = now
    },
    leave: () => {
      does = 'deaf'
      heard.get('pagehide')?.()
      for (const name of held) of.claims.delete(name)
    },
    design: async (title, stems = []) => {
      const document: Arrangement = { ...newArrangement(), title, stems }
      const id = await keepAside(document)
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

export const saveOf = (page: Tab): string => page.useEvent.getState().save.state
export const titleOf = (page: Tab): string => page.useEvent.getState().event.title
export const name = (page: Tab, title: string): void => page.changeEvent({ title }, `called ${title}`)
/** Which ticks stand in any of the browser's events, thrown away or not. */
export const ticksKept = async (page: Tab): Promise<Set<string>> => {
  const list = await page.saver.texts.list()
  if (!list.ok) throw new Error(list.message)
  return new Set(list.texts.flatMap((t) => (JSON.parse(t.text) as { done: string[] }).done))
}
export const titles = async (page: Tab, thrown = false): Promise<string[]> => {
  await page.refreshEvents()
  return page.useEvent
    .getState()
    .kept.filter((e) => e.thrown === thrown)
    .map((e) => e.title)
    .sort()
}

/** The next answer of a store to this call is late: it comes when it is let go. */
export const late = <K extends string>(
  store: Record<K, (...args: never[]) => Promise<unknown>>,
  call: K,
): (() => void) => {
  let letGo = (): void => {}
  const gate = new Promise<void>((go) => {
    letGo = go
  })
  const real = store[call]
  store[call] = async (...args) => {
    store[call] = real
    const answer = await real(...args)
    await gate
    return answer
  }
  return letGo
}

/** Of the design that is open. */
export const shown = (page: Tab): string => page.useStudio.getState().document.title
export const rename = (page: Tab, title: string): void => page.perform({ do: 'set-title', title })
/** What this browser keeps of a design. */
export const keptTitle = async (page: Tab, id: string): Promise<string> => {
  const result = await page.store.load(id)
  return result.ok ? result.document.title : `(${result.why})`
}
export const designTitles = async (page: Tab): Promise<string[]> => {
  const list = await page.store.list()
  return list.ok ? list.designs.map((d) => d.title).sort() : []
}

/** A page with the first of two designs open. */
export const withTwo = async () => {
  const place = browser()
  const page = await tab(place, false)
  await page.startKeeping()
  const [bowl, cup] = [await page.design('Bowl'), await page.design('Cup')]
  await page.openKept(bowl)
  return { place, page, bowl, cup }
}

/** An event of a file: one design, twelve times. */
export const supper = (over: Partial<WholeEvent> = {}): WholeEvent => ({
  ...newEvent('Europe/Lisbon'),
  id: 'supper',
  title: 'Supper',
  parts: [{ design: 'bowl', copies: 12, place: 'tables' }],
  designs: { bowl: { ...newArrangement(), title: 'Bowl' } },
  ...over,
})
