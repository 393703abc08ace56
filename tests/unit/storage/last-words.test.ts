import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  autosaver,
  carryLastWords,
  type DesignStore,
  forgetLastWords,
  leaveLastWords,
  memoryRecords,
  memoryStore,
  type SmallStore,
} from '../../../src/storage/index.ts'
import { emptyShelves } from '../../../src/storage/memory.ts'
import { grown, known, quota, titled } from './helpers.ts'

const small = (): SmallStore & { rows: Map<string, string> } => {
  const rows = new Map<string, string>()
  return {
    rows,
    getItem: (key) => rows.get(key) ?? null,
    setItem: (key, value) => void rows.set(key, value),
    removeItem: (key) => void rows.delete(key),
    key: (i) => [...rows.keys()][i] ?? null,
    get length() {
      return rows.size
    },
  }
}
const free = async () => () => {}
const carryAll = (store: SmallStore, designs: DesignStore) => carryLastWords(store, designs, known, free)

const page = (shelves = emptyShelves(), holds: () => Promise<void> | void = () => {}) => ({
  shelves,
  designs: memoryStore({ known, records: memoryRecords(shelves, (call) => (call === 'get' ? holds() : undefined)) }),
})

describe('last words of a page that goes', () => {
  it('a change that the database never heard of is there when the site is next opened', async () => {
    const { designs } = page()
    const store = small()
    await designs.save('a', titled('before'), 0)
    const saver = autosaver(designs, 'a', { onState: () => {}, delay: 1e6 })
    await saver.loaded
    saver.changed(titled('last'))
    leaveLastWords(store, 'a', saver.unwritten()!)
    expect(await carryAll(store, designs)).toBe(1)
    expect(await designs.load('a')).toMatchObject({ document: { title: 'last' }, revision: 2 })
    expect(store.length).toBe(0)
  })

  it('a page with nothing unwritten has no last words, nor has one that only looks on', async () => {
    const { designs } = page()
    const saver = autosaver(designs, 'a', { onState: () => {}, delay: 1e6 })
    await saver.loaded
    expect(saver.unwritten()).toBeNull()
    saver.changed(titled('kept'))
    await saver.flush()
    expect(saver.unwritten()).toBeNull()
    const looker = autosaver(designs, 'a', { onState: () => {}, readOnly: true })
    await looker.loaded
    looker.changed(titled('not its own'))
    expect(looker.unwritten()).toBeNull()
  })

  it('what was being written when the page went is told apart from what came after it', async () => {
    let answer = (): void => {}
    let hold: Promise<void> | undefined
    const { designs } = page(undefined, () => hold)
    await designs.save('a', titled('before'), 0)
    const saver = autosaver(designs, 'a', { onState: () => {}, delay: 1e6 })
    await saver.loaded
    hold = new Promise((r) => (answer = r))
    saver.changed(titled('under way'))
    const flushed = saver.flush()
    await new Promise((r) => setTimeout(r))
    expect(saver.unwritten()).toMatchObject({ document: { title: 'under way' }, revision: 1, underWay: null })
    saver.changed(titled('after it'))
    expect(saver.unwritten()).toMatchObject({
      document: { title: 'after it' },
      revision: 1,
      underWay: { title: 'under way' },
    })
    answer()
    await flushed
    expect(saver.unwritten()).toBeNull()
  })

  it.each([true, false])(
    'the newest is carried over once, whether the write under way arrived or not: %s',
    async (arrived) => {
      const { designs } = page()
      const store = small()
      const [before, underWay, after] = [titled('before'), titled('under way'), titled('after it')]
      await designs.save('a', before, 0)
      if (arrived) await designs.save('a', underWay, 1)
      leaveLastWords(store, 'a', { document: after, revision: 1, underWay })
      expect(await carryAll(store, designs)).toBe(1)
      const list = await designs.list()
      expect(list.ok && list.designs.map((d) => d.title)).toEqual(['after it'])
    },
  )

  it('what another page wrote since stays, and the words become a design of their own', async () => {
    const { designs } = page()
    const store = small()
    await designs.save('a', titled('before'), 0)
    leaveLastWords(store, 'a', { document: titled('mine'), revision: 1, underWay: null })
    await designs.save('a', titled('theirs'), 1)
    expect(await carryAll(store, designs)).toBe(1)
    const list = await designs.list()
    expect(list.ok && list.designs.map((d) => d.title).sort()).toEqual(['mine', 'theirs'])
    expect(await designs.load('a')).toMatchObject({ document: { title: 'theirs' } })
  })

  it('words of a design that another page has open are left to that page', async () => {
    const { designs } = page()
    const store = small()
    leaveLastWords(store, 'a', { document: titled('mine'), revision: 0, underWay: null })
    expect(await carryLastWords(store, designs, known, async () => null)).toBe(0)
    expect(store.length).toBe(1)
    expect(await designs.load('a')).toMatchObject({ ok: false, why: 'missing' })
  })

  it('a broken record in the database is not written over by them', async () => {
    const { designs, shelves } = page()
    const store = small()
    shelves.designs.set('a', { nonsense: true })
    leaveLastWords(store, 'a', { document: titled('mine'), revision: 1, underWay: null })
    expect(await carryAll(store, designs)).toBe(1)
    expect(shelves.designs.get('a')).toEqual({ nonsense: true })
    const list = await designs.list()
    expect(list.ok && list.designs.map((d) => d.title)).toContain('mine')
  })

  it('where there is no room or no small store it says so and throws nothing', () => {
    const full: SmallStore = {
      ...small(),
      setItem: () => {
        throw quota()
      },
    }
    const words = { document: titled('x'), revision: 0, underWay: null }
    expect(leaveLastWords(full, 'a', words)).toBe(false)
    expect(leaveLastWords(null, 'a', words)).toBe(false)
    forgetLastWords(null, 'a')
  })

  it('nonsense in the small store throws nothing and stays', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string(), fc.json()), async (text) => {
        const { designs } = page()
        const store = small()
        store.setItem('pedicel-unwritten-a', text)
        store.setItem('of-another-site', text)
        expect(await carryAll(store, designs)).toBe(0)
        expect(store.length).toBe(2)
      }),
    )
  })

  it('whatever was written before the page went, the newest state is there and nothing twice', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.boolean(), { minLength: 1, maxLength: 8 }), async (flushes) => {
        const { designs, shelves } = page()
        const store = small()
        const saver = autosaver(designs, 'a', { onState: () => {}, delay: 1e6 })
        await saver.loaded
        let now = titled('script')
        for (const flush of flushes) {
          now = grown(now)
          saver.changed(now)
          if (flush) await saver.flush()
        }
        const words = saver.unwritten()
        if (words) leaveLastWords(store, 'a', words)
        const next = page(shelves).designs
        await carryAll(store, next)
        await carryAll(store, next)
        const list = await next.list()
        expect(list.ok && list.designs.map((d) => d.stems)).toEqual([now.stems.length])
      }),
    )
  })
})
