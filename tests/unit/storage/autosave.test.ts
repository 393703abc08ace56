import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import {
  type Autosaver,
  autosaver,
  claimDesign,
  type DesignStore,
  fileName,
  memoryRecords,
  memoryStore,
  type SaveState,
} from '../../../src/storage/index.ts'
import { emptyShelves } from '../../../src/storage/memory.ts'
import { known, titled } from './helpers.ts'

describe('saving by itself', () => {
  beforeEach(() => void vi.useFakeTimers())
  afterEach(() => void vi.useRealTimers())

  const set = (options: { hold?: Promise<void>; fails?: () => boolean; readOnly?: boolean } = {}) => {
    const calls: string[] = []
    const shelves = emptyShelves()
    const store: DesignStore = memoryStore({
      known,
      records: memoryRecords(shelves, async (call) => {
        if (call === 'open') await options.hold
        calls.push(call)
        if (options.fails?.()) throw new Error('No')
      }),
    })
    const seen: SaveState['state'][] = []
    const open = (): Autosaver =>
      autosaver(store, 'a', { onState: (s) => seen.push(s.state), readOnly: options.readOnly ?? false })
    const puts = (): number => calls.filter((c) => c === 'put').length
    return { store, shelves, seen, open, puts }
  }

  it('waits until the hand rests, then writes once', async () => {
    const { open, puts, seen, store } = set()
    const saver = open()
    await saver.loaded
    for (let i = 0; i < 20; i += 1) {
      saver.changed(titled(`${i}`))
      await vi.advanceTimersByTimeAsync(100)
    }
    expect(puts()).toBe(0)
    expect(seen).toEqual(['saving'])
    await vi.advanceTimersByTimeAsync(400)
    expect(puts()).toBe(1)
    expect(seen).toEqual(['saving', 'saved'])
    expect(await store.load('a')).toMatchObject({ document: { title: '19' } })
  })

  it('writes nothing before the first load has finished, and what came meanwhile after it', async () => {
    let finish = (): void => {}
    const { open, puts, store } = set({ hold: new Promise<void>((r) => (finish = r)) })
    const saver = open()
    saver.changed(titled('early'))
    await vi.advanceTimersByTimeAsync(60_000)
    expect(puts()).toBe(0)
    expect(saver.state()).toEqual({ state: 'loading' })
    finish()
    await saver.loaded
    await vi.advanceTimersByTimeAsync(400)
    expect(await store.load('a')).toMatchObject({ document: { title: 'early' }, revision: 1 })
  })

  it('closing at once after an edit loses nothing', async () => {
    const { open, store } = set()
    const saver = open()
    saver.changed(titled('last word'))
    expect(await saver.stop()).toBe(true)
    expect(await store.load('a')).toMatchObject({ document: { title: 'last word' } })
    saver.changed(titled('after the end'))
    await vi.advanceTimersByTimeAsync(60_000)
    expect(await store.load('a')).toMatchObject({ document: { title: 'last word' } })
  })

  it('a design that is only looked at is not written', async () => {
    const { open, puts, store } = set()
    await store.save('a', titled('there'), 0)
    const before = puts()
    const saver = open()
    const loaded = await saver.loaded
    if (loaded.ok) saver.changed(loaded.document)
    await vi.advanceTimersByTimeAsync(60_000)
    await saver.stop()
    expect(puts()).toBe(before)
    expect(saver.state().state).toBe('saved')
  })

  it('an edit during a write is written after it', async () => {
    let during = (): void => {}
    const { open, store, puts } = set({
      fails: () => {
        during()
        return false
      },
    })
    const saver = open()
    await saver.loaded
    saver.changed(titled('one'))
    during = () => {
      during = () => {}
      saver.changed(titled('two'))
    }
    expect(await saver.flush()).toBe(true)
    expect(puts()).toBe(2)
    expect(await store.load('a')).toMatchObject({ document: { title: 'two' }, revision: 2 })
  })

  it('a failure stays to be seen until a save succeeds, and is tried again by itself', async () => {
    let down = false
    const { open, seen } = set({ fails: () => down })
    const saver = open()
    await saver.loaded
    down = true
    saver.changed(titled('one'))
    await vi.advanceTimersByTimeAsync(400)
    expect(saver.state().state).toBe('failed')
    saver.changed(titled('two'))
    expect(saver.state().state).toBe('failed')
    await vi.advanceTimersByTimeAsync(400)
    down = false
    await vi.advanceTimersByTimeAsync(10_000)
    expect(seen.at(-1)).toBe('saved')
    expect(saver.state().state).toBe('saved')
  })

  it('does not knock on a dead store for ever', async () => {
    let tries = 0
    const { open } = set({
      fails: () => {
        tries += 1
        return true
      },
    })
    const saver = open()
    await saver.loaded
    await vi.advanceTimersByTimeAsync(3_600_000)
    expect(saver.state().state).toBe('failed')
    expect(tries).toBeLessThan(10)
  })

  it('after a first load that failed, nothing is written before one has succeeded', async () => {
    let down = true
    const { open, store } = set({ fails: () => down })
    down = false
    await store.save('a', titled('theirs'), 0)
    down = true
    const saver = open()
    await saver.loaded
    saver.changed(titled('mine'))
    down = false
    expect(await saver.flush()).toBe(true)
    expect(await store.load('a')).toMatchObject({ document: { title: 'mine' }, revision: 2 })
  })

  it('never writes over a stored design that can’t be read', async () => {
    const { open, puts, shelves } = set()
    shelves.designs.set('a', { text: 'half a fi', revision: 4, savedAt: 1 })
    const saver = open()
    expect(await saver.loaded).toMatchObject({ why: 'unreadable' })
    saver.changed(titled('new'))
    expect(await saver.stop()).toBe(false)
    expect(puts()).toBe(0)
    expect(saver.state().state).toBe('failed')
  })

  it('where another tab writes, it looks and does not write', async () => {
    const { open, puts } = set({ readOnly: true })
    const saver = open()
    await saver.loaded
    saver.changed(titled('new'))
    await vi.advanceTimersByTimeAsync(60_000)
    expect(puts()).toBe(0)
    expect(saver.state()).toEqual({ state: 'elsewhere' })
  })

  it('stops writing when another tab has gone on with the design', async () => {
    const { open, store } = set()
    const saver = open()
    saver.changed(titled('mine'))
    await saver.flush()
    await store.save('a', titled('theirs'), 1)
    saver.changed(titled('mine again'))
    expect(await saver.flush()).toBe(false)
    expect(saver.state()).toEqual({ state: 'elsewhere' })
    expect(await store.load('a')).toMatchObject({ document: { title: 'theirs' } })
  })
})

describe('one writer for each design', () => {
  /** As much of a lock manager as is used. */
  const manager = (): LockManager => {
    const held = new Set<string>()
    const request = async (name: string, _: LockOptions, work: (lock: Lock | null) => unknown): Promise<void> => {
      if (held.has(name)) return void (await work(null))
      held.add(name)
      await work({ name, mode: 'exclusive' })
      held.delete(name)
    }
    return { request } as unknown as LockManager
  }

  it('the second tab is told, and gets it when the first lets go', async () => {
    const locks = manager()
    const first = await claimDesign('a', locks)
    expect(first).not.toBeNull()
    expect(await claimDesign('a', locks)).toBeNull()
    expect(await claimDesign('b', locks)).not.toBeNull()
    first?.()
    await new Promise((r) => setTimeout(r))
    expect(await claimDesign('a', locks)).not.toBeNull()
  })

  it('works where there are no locks, or they are refused', async () => {
    expect(await claimDesign('a', undefined)).not.toBeNull()
    const refusing = { request: () => Promise.reject(new Error('not allowed')) } as unknown as LockManager
    expect(await claimDesign('a', refusing)).not.toBeNull()
  })
})

describe('names of files', () => {
  it.each([
    ['Window-sill bowl', 'Window-sill bowl.json'],
    ['  ../..//etc/passwd ', 'etc passwd.json'],
    ['Table 1: “Rose” / sage?', 'Table 1 “Rose” sage.json'],
    ['Пион и эвкалипт', 'Пион и эвкалипт.json'],
    ['', 'arrangement.json'],
    ['...', 'arrangement.json'],
    ['con', 'design con.json'],
    ['NUL.txt', 'design NUL.txt.json'],
    ['a\u0000b\u202Ec', 'a b c.json'],
    ['🌹'.repeat(200), `${'🌹'.repeat(80)}.json`],
  ])('%j becomes %j', (title, name) => {
    expect(fileName(title)).toBe(name)
  })
})
