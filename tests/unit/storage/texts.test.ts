import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { databaseRecords } from '../../../src/storage/database.ts'
import { memoryRecords, type StorageCall } from '../../../src/storage/index.ts'
import { emptyShelves } from '../../../src/storage/memory.ts'
import type { Records } from '../../../src/storage/records.ts'
import { textStore } from '../../../src/storage/texts.ts'

let number = 0
const inMemory = (): (() => Records) => {
  const shelves = emptyShelves()
  return () => memoryRecords(shelves)
}
const inDatabase = (): (() => Records) => {
  number += 1
  const name = `texts-${number}`
  return () => databaseRecords(name)
}
const spoil = (records: Records, key: string, value: unknown) =>
  records.transact('settings', 'readwrite', (table) => table.put(key, value))

describe.each([
  ['memory', inMemory],
  ['the browser’s database', inDatabase],
] as const)('texts in %s', (_, place) => {
  const page = (records: () => Records, now?: () => number) => textStore(records(), 'event:', now ? { now } : {})

  it('come back after a reload, the newest first, and nothing else of the drawer among them', async () => {
    const records = place()
    let time = 0
    const store = page(records, () => ++time)
    await store.save('a', 'one', 0)
    await store.save('b', 'two', 0)
    await store.save('a', 'one, later', 1)
    await spoil(records(), 'units', 'in')
    const list = await page(records).list()
    expect(list.ok && list.texts).toEqual([
      { id: 'a', text: 'one, later', revision: 2, savedAt: 3, thrown: false },
      { id: 'b', text: 'two', revision: 1, savedAt: 2, thrown: false },
    ])
    expect(await page(records).load('a')).toMatchObject({ ok: true, document: 'one, later', revision: 2 })
    expect(await page(records).load('c')).toMatchObject({ ok: false, why: 'missing' })
  })

  it('of two pages the later one is told, and nothing is overwritten', async () => {
    const records = place()
    const [here, there] = [page(records), page(records)]
    await here.save('a', 'one', 0)
    expect(await there.save('a', 'two', 1)).toMatchObject({ ok: true, revision: 2 })
    expect(await here.save('a', 'late', 1)).toMatchObject({ ok: false, why: 'conflict' })
    expect(await here.save('a', 'as if new', 0)).toMatchObject({ ok: false, why: 'conflict' })
    expect(await here.raw('a')).toEqual({ ok: true, text: 'two' })
  })

  it('are thrown away and put back without a new revision; a page that goes on takes its own back', async () => {
    const records = place()
    const store = page(records)
    await store.save('a', 'one', 0)
    await page(records).mark('a', true)
    const thrown = await store.list()
    expect(thrown.ok && thrown.texts).toMatchObject([{ id: 'a', revision: 1, thrown: true }])
    expect(await store.save('a', 'one, further', 1)).toMatchObject({ ok: true, revision: 2 })
    const back = await store.list()
    expect(back.ok && back.texts).toMatchObject([{ id: 'a', text: 'one, further', thrown: false }])
    expect(await store.mark('b', true)).toMatchObject({ ok: false, why: 'missing' })
    await store.remove('a')
    expect(await store.load('a')).toMatchObject({ why: 'missing' })
  })

  it('a record that is broken is listed, handed out, and never written over', async () => {
    const records = place()
    await spoil(records(), 'event:odd', { text: 7 })
    const store = page(records)
    const list = await store.list()
    expect(list.ok && list.texts).toMatchObject([{ id: 'odd', text: '{"text":7}', revision: 0 }])
    for (const revision of [0, 1]) expect(await store.save('odd', 'new', revision)).toMatchObject({ why: 'unreadable' })
    expect(await store.mark('odd', true)).toMatchObject({ why: 'unreadable' })
    expect(await store.raw('odd')).toEqual({ ok: true, text: '{"text":7}' })
  })

  it('take over what lay under an old key exactly once, also when two pages try', async () => {
    const records = place()
    await spoil(records(), 'event', { revision: 4, value: 'from before' })
    const both = await Promise.all([page(records).adopt('event', 'a'), page(records).adopt('event', 'b')])
    expect(both.map((r) => r.ok && r.adopted).sort()).toEqual([false, true])
    const list = await page(records).list()
    expect(list.ok && list.texts.map((t) => t.text)).toEqual(['from before'])
    expect(await page(records).adopt('event', 'c')).toEqual({ ok: true, adopted: false })
  })
})

describe('texts in a store with faults', () => {
  it('at any call: what was said to be saved is there, what was not is the state before, and the old event is in one place', async () => {
    for (let at = 0; at < 24; at++) {
      const shelves = emptyShelves()
      await textStore(memoryRecords(shelves), 'event:').save('a', 'before', 0)
      await spoil(memoryRecords(shelves), 'event', { revision: 1, value: 'old' })
      let calls = 0
      const touch = (_: StorageCall): void => {
        if (calls++ === at) throw new DOMException('No room', 'QuotaExceededError')
      }
      const store = textStore(memoryRecords(shelves, touch), 'event:')
      const [saved, adopted] = [await store.save('a', 'after', 1), await store.adopt('event', 'b')]
      const sound = textStore(memoryRecords(shelves), 'event:')
      const there = await sound.raw('a')
      if (saved.ok) expect(there).toEqual({ ok: true, text: 'after' })
      else expect(['before', 'after']).toContain(there.ok && there.text)
      // A write whose answer was lost is one's own, not another tab's.
      const again = await store.save('a', 'again', saved.ok ? saved.revision : 1)
      expect(again.ok ? '' : again.why, `fault at ${at}`).not.toBe('conflict')
      if (!adopted.ok) await sound.adopt('event', 'b')
      const list = await sound.list()
      expect(list.ok && list.texts.filter((t) => t.text === 'old').map((t) => t.id)).toEqual(['b'])
      expect(shelves.settings.has('event')).toBe(false)
    }
  })
})
