import 'fake-indexeddb/auto'
import { openDB } from 'idb'
import { describe, expect, it } from 'vitest'
import { databaseRecords } from '../../../src/storage/database.ts'
import { browserStore, type DesignStore, memoryRecords, memoryStore } from '../../../src/storage/index.ts'
import { emptyShelves } from '../../../src/storage/memory.ts'
import { grown, known, titled } from './helpers.ts'

let number = 0

/** A place that outlives a page: pages are stores over it, and `spoil` puts anything into a record. */
interface Place {
  page(): DesignStore
  spoil(id: string, value: unknown): Promise<void>
}

const inMemory = (): Place => {
  const shelves = emptyShelves()
  return {
    page: () => memoryStore({ known, records: memoryRecords(shelves) }),
    spoil: async (id, value) => void shelves.designs.set(id, value),
  }
}

const inDatabase = (): Place => {
  number += 1
  const name = `contract-${number}`
  return {
    page: () => browserStore({ known, name }),
    spoil: async (id, value) => {
      await databaseRecords(name).transact('designs', 'readwrite', (table) => table.put(id, value))
    },
  }
}

describe.each([
  ['memory', inMemory],
  ['the browser’s database', inDatabase],
] as const)('a store in %s', (_, place) => {
  it('gives back after a reload what was saved', async () => {
    const { page } = place()
    const document = grown(titled('Bowl'))
    expect(await page().save('a', document, 0)).toMatchObject({ ok: true, revision: 1 })
    expect(await page().load('a')).toMatchObject({ ok: true, document, revision: 1 })
  })

  it('says that nothing is there where nothing is', async () => {
    const store = place().page()
    expect(await store.load('a')).toMatchObject({ ok: false, why: 'missing' })
    expect(await store.raw('a')).toMatchObject({ ok: false, why: 'missing' })
    expect(await store.list()).toEqual({ ok: true, designs: [] })
  })

  it('lists designs, the newest first, without their stems', async () => {
    const { page } = place()
    const store = (time: number) => ({ ...page(), time })
    await store(1).save('a', grown(titled('Bowl')), 0)
    await new Promise((r) => setTimeout(r, 5))
    await store(2).save('b', titled('Jug'), 0)
    const list = await page().list()
    expect(list.ok && list.designs).toMatchObject([
      { id: 'b', title: 'Jug', stems: 0, revision: 1, readable: true },
      { id: 'a', title: 'Bowl', stems: 1, revision: 1, readable: true },
    ])
  })

  it('counts each state, and refuses to write over one that it has not seen', async () => {
    const { page } = place()
    const [here, there] = [page(), page()]
    await here.save('a', titled('one'), 0)
    expect(await there.save('a', titled('two'), 1)).toMatchObject({ ok: true, revision: 2 })
    expect(await here.save('a', titled('late'), 1)).toMatchObject({ ok: false, why: 'conflict' })
    expect(await here.save('a', titled('as if new'), 0)).toMatchObject({ ok: false, why: 'conflict' })
    expect(await page().load('a')).toMatchObject({ document: { title: 'two' }, revision: 2 })
  })

  it('of two pages that save at the same time, one is told', async () => {
    const { page } = place()
    const both = await Promise.all([page().save('a', titled('one'), 0), page().save('a', titled('two'), 0)])
    expect(both.map((r) => r.ok).sort()).toEqual([false, true])
  })

  it('writes a design anew that the browser has cleared away', async () => {
    const { page } = place()
    const store = page()
    await store.save('a', titled('one'), 0)
    await page().remove('a')
    expect(await store.save('a', titled('still here'), 1)).toMatchObject({ ok: true, revision: 2 })
    expect(await page().load('a')).toMatchObject({ document: { title: 'still here' } })
  })

  it('takes a design out', async () => {
    const { page } = place()
    await page().save('a', titled('one'), 0)
    expect(await page().remove('a')).toEqual({ ok: true })
    expect(await page().load('a')).toMatchObject({ why: 'missing' })
  })

  it.each<unknown>([
    null,
    7,
    'text',
    [],
    {},
    { text: 3, revision: 1, savedAt: 1 },
    { text: 'x', revision: 'one', savedAt: 1 },
  ])('never writes over a record that is broken (%j), and hands it out as it is', async (value) => {
    const { page, spoil } = place()
    await spoil('a', value)
    expect(await page().load('a')).toMatchObject({ ok: false, why: 'unreadable', good: null })
    for (const revision of [0, 1])
      expect(await page().save('a', titled('new'), revision)).toMatchObject({ why: 'unreadable' })
    expect(await page().raw('a')).toEqual({ ok: true, text: JSON.stringify(value) })
    const list = await page().list()
    expect(list.ok && list.designs).toMatchObject([{ id: 'a', readable: false }])
  })

  it('hands out the bytes of a design that can’t be read, and what is good of it', async () => {
    const { page, spoil } = place()
    await page().save('a', grown(titled('Bowl')), 0)
    const raw = await page().raw('a')
    const text = raw.ok ? raw.text.replace('"openness": 0.5', '"openness": "half"') : ''
    await spoil('a', { text, revision: 1, savedAt: 1, title: 'Bowl', stems: 1 })
    const result = await page().load('a')
    expect(result).toMatchObject({
      why: 'unreadable',
      problems: [{ path: 'stems[0].openness' }],
      good: { title: 'Bowl' },
    })
    expect(await page().raw('a')).toEqual({ ok: true, text })
    await spoil('a', { text: text.slice(0, 40), revision: 1, savedAt: 1 })
    expect(await page().load('a')).toMatchObject({ why: 'unreadable', good: null })
    expect(await page().raw('a')).toEqual({ ok: true, text: text.slice(0, 40) })
  })

  it('keeps settings', async () => {
    const { page } = place()
    expect(await page().setting('units')).toEqual({ ok: true, value: undefined })
    await page().putSetting('prices', { currency: 'EUR', perBunch: { 'rose-garden': 1250 } })
    expect(await page().setting('prices')).toEqual({
      ok: true,
      value: { currency: 'EUR', perBunch: { 'rose-garden': 1250 } },
    })
  })
})

describe('the browser’s database', () => {
  it('opens a connection anew that the browser has closed', async () => {
    const name = 'dropped'
    const store = browserStore({ known, name })
    await store.save('a', titled('one'), 0)
    const real = IDBDatabase.prototype.transaction
    let dead = 1
    IDBDatabase.prototype.transaction = function (...args) {
      if (dead-- > 0) throw new DOMException('The database connection is closing', 'InvalidStateError')
      return real.apply(this, args)
    }
    try {
      expect(await store.save('a', titled('two'), 1)).toMatchObject({ ok: true, revision: 2 })
      dead = 1e9
      expect(await store.save('a', titled('three'), 2)).toMatchObject({ ok: false, why: 'unavailable' })
    } finally {
      IDBDatabase.prototype.transaction = real
    }
    expect(await store.load('a')).toMatchObject({ document: { title: 'two' } })
  })

  it('reports no success for a transaction that is given up at the end', async () => {
    const store = browserStore({ known, name: 'given-up' })
    await store.save('a', titled('one'), 0)
    const real = IDBObjectStore.prototype.put
    IDBObjectStore.prototype.put = function (...args) {
      const request = real.apply(this, args)
      request.addEventListener('success', () => this.transaction.abort())
      return request
    }
    try {
      expect(await store.save('a', titled('two'), 1)).toMatchObject({ ok: false })
    } finally {
      IDBObjectStore.prototype.put = real
    }
    expect(await store.load('a')).toMatchObject({ document: { title: 'one' }, revision: 1 })
  })

  it('makes way for a newer version in another tab, and says that it can’t be reached then', async () => {
    const store = browserStore({ known, name: 'newer' })
    await store.save('a', titled('one'), 0)
    const newer = await openDB('newer', 2)
    expect(await store.load('a')).toMatchObject({ ok: false, why: 'unavailable' })
    newer.close()
  })

  it('is said to be out of reach where there is none', async () => {
    const real = globalThis.indexedDB
    Reflect.deleteProperty(globalThis, 'indexedDB')
    try {
      const store = browserStore({ known, name: 'none' })
      expect(await store.list()).toMatchObject({ ok: false, why: 'unavailable' })
      expect(await store.save('a', titled('one'), 0)).toMatchObject({ ok: false, why: 'unavailable' })
    } finally {
      globalThis.indexedDB = real
    }
  })
})
