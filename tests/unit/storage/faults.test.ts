import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, writeArrangement } from '../../../src/arrangement/index.ts'
import { autosaver, type DesignStore, memoryRecords, memoryStore, type SaveState } from '../../../src/storage/index.ts'
import { emptyShelves } from '../../../src/storage/memory.ts'
import { promise } from '../../promise.ts'
import { grown, known, quota, titled } from './helpers.ts'

/** Ten scripts: e an edit, f a flush, r a reload of the page. */
const SCRIPTS = ['ef', 'efef', 'eef', 'efefef', 'efr', 'efref', 'efrefef', 'erefef', 'efrrefeef', 'eeefefrefef']

interface Run {
  /** Every state that the document had, oldest first. */
  states: Arrangement[]
  /** The newest that was said to be saved, as its place in `states`; -1 for none. */
  acknowledged: number
  seen: SaveState[]
  calls: number
  failures: number
  end: SaveState
  reload(): ReturnType<DesignStore['load']>
}

/** Plays a script while the calls for which `fails` holds fail. */
const play = async (script: string, fails: (n: number) => boolean): Promise<Run> => {
  const shelves = emptyShelves()
  let calls = 0
  let failures = 0
  let broken = true
  const page = (): DesignStore =>
    memoryStore({
      known,
      records: memoryRecords(shelves, () => {
        calls += 1
        if (broken && fails(calls)) {
          failures += 1
          throw calls % 2 ? quota() : new DOMException('Connection lost', 'UnknownError')
        }
      }),
    })
  const seen: SaveState[] = []
  const open = () => autosaver(page(), 'a', { onState: (s) => seen.push(s), delay: 1e6, retries: [] })
  const states = [titled('script')]
  let acknowledged = -1
  let saver = open()
  for (const step of script) {
    const now = states.at(-1) as Arrangement
    if (step === 'e') {
      states.push(grown(now))
      saver.changed(states.at(-1) as Arrangement)
    } else if (step === 'f') {
      const kept = await saver.flush()
      if (kept) acknowledged = states.length - 1
      expect(saver.state().state).toBe(kept ? 'saved' : 'failed')
    } else {
      // The page is gone, without a word.
      const old = await page().load('a')
      saver = open()
      await saver.loaded
      if (old.ok) states.push(old.document)
      else saver.changed(now)
    }
  }
  const end = saver.state()
  broken = false
  return { states, acknowledged, seen, calls, failures, end, reload: () => page().load('a') }
}

const check = async (run: Run): Promise<void> => {
  const left = await run.reload()
  // Whole: what is stored is exactly one of the states that there were, and never older than what was acknowledged.
  if (left.ok) {
    const texts = run.states.map((s) => writeArrangement(s))
    expect(texts.lastIndexOf(writeArrangement(left.document))).toBeGreaterThanOrEqual(run.acknowledged)
  } else {
    expect(left.why).toBe('missing')
    expect(run.acknowledged).toBe(-1)
  }
  if (run.end.state === 'failed') expect(run.end.why.length).toBeGreaterThan(10)
}

describe('when the store fails at any call', () => {
  it('what was said to be saved is there, whole, and a failure is seen', async () => {
    let runs = 0
    let felt = 0
    for (const script of SCRIPTS) {
      const { calls } = await play(script, () => false)
      expect(calls).toBeGreaterThan(3)
      for (let n = 1; n <= calls; n += 1)
        for (const fails of [(k: number) => k === n, (k: number) => k >= n]) {
          const run = await play(script, fails)
          expect(run.failures).toBeGreaterThan(0)
          await check(run)
          if (run.seen.some((s) => s.state === 'failed')) felt += 1
          runs += 1
        }
    }
    expect(felt).toBeGreaterThan(runs / 2)
    promise(
      `R1 nothing acknowledged as saved is lost: 10 scripts, every call, once and from then on: ${runs} runs, 0 failures`,
    )
    promise(`R2 a crash leaves the old or the new document, whole: ${runs} runs, 0 failures`)
  })

  it('a second failure while recovering from the first is no worse', async () => {
    const { calls } = await play('efefef', () => false)
    for (let a = 1; a <= calls; a += 1)
      for (let b = a + 1; b <= a + 4; b += 1) await check(await play('efefef', (k) => k === a || k === b))
  })

  it('a save whose answer got lost is no conflict with oneself', async () => {
    const shelves = emptyShelves()
    let lose = true
    const store = memoryStore({
      known,
      records: memoryRecords(shelves, (call) => {
        if (call === 'done' && lose) throw new Error('No answer')
      }),
    })
    expect(await store.save('a', titled('one'), 0)).toMatchObject({ ok: false, why: 'unavailable' })
    expect(shelves.designs.size).toBe(1)
    lose = false
    expect(await store.save('a', titled('two'), 0)).toMatchObject({ ok: true, revision: 2 })
  })

  it('but another page that went on from there is one', async () => {
    const shelves = emptyShelves()
    let lose = true
    const store = memoryStore({
      known,
      records: memoryRecords(shelves, (call) => {
        if (call === 'done' && lose) throw new Error('No answer')
      }),
    })
    await store.save('a', titled('one'), 0)
    lose = false
    await memoryStore({ known, records: memoryRecords(shelves) }).save('a', titled('theirs'), 1)
    expect(await store.save('a', titled('two'), 0)).toMatchObject({ ok: false, why: 'conflict' })
  })

  it('a full store keeps the last good copy, says so, and recovers when there is room', async () => {
    let full = false
    const store = memoryStore({
      known,
      records: memoryRecords(emptyShelves(), (call) => {
        if (full && call === 'put') throw quota()
      }),
    })
    const states: string[] = []
    const saver = autosaver(store, 'a', { onState: (s) => states.push(s.state), delay: 1e6, retries: [] })
    saver.changed(titled('one'))
    expect(await saver.flush()).toBe(true)
    full = true
    saver.changed(titled('two'))
    expect(await saver.flush()).toBe(false)
    expect(saver.state()).toMatchObject({ state: 'failed', why: expect.stringContaining('no room') })
    expect(await store.load('a')).toMatchObject({ document: { title: 'one' } })
    full = false
    expect(await saver.flush()).toBe(true)
    expect(states.at(-1)).toBe('saved')
    expect(await store.load('a')).toMatchObject({ document: { title: 'two' } })
  })

  it('a store that says yes and keeps something else is found out at the first save', async () => {
    const shelves = emptyShelves()
    const real = memoryRecords(shelves)
    const store = memoryStore({
      known,
      records: {
        transact: async (drawer, mode, work) => {
          const result = await real.transact(drawer, mode, work)
          if (mode === 'readwrite') shelves.designs.clear()
          return result
        },
      },
    })
    expect(await store.save('a', titled('one'), 0)).toMatchObject({ ok: false, why: 'unavailable' })
  })
})

describe('two tabs on one design', () => {
  it('can never overwrite one another without being told, whatever the order of their calls', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.scheduler(),
        fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: 2, maxLength: 10 }),
        async (s, script) => {
          const shelves = emptyShelves()
          const tabs = ['left', 'right'].map((name) => {
            const store = memoryStore({
              known,
              writer: name,
              records: memoryRecords(shelves, () => s.schedule(Promise.resolve(), name)),
            })
            return {
              name,
              saver: autosaver(store, 'a', { onState: () => {}, delay: 1e6, retries: [] }),
              told: 0,
              document: titled(name),
            }
          })
          const work = script.map(async ([left, flush], i) => {
            const tab = tabs[left ? 0 : 1]!
            tab.document = { ...tab.document, title: `${tab.name} ${i}` }
            tab.saver.changed(tab.document)
            if (flush && (await tab.saver.flush())) tab.told = i
          })
          await s.waitFor(Promise.all(work))
          await s.waitFor(Promise.all(tabs.map((t) => t.saver.flush())))
          const both = tabs.filter((t) => t.saver.state().state === 'saved')
          const writers = new Set(script.map(([left]) => left))
          // With two writers exactly one goes on; the other knows.
          expect(both).toHaveLength(1)
          if (writers.size === 2) expect(tabs.filter((t) => t.saver.state().state === 'elsewhere')).toHaveLength(1)
          const left = JSON.parse((shelves.designs.get('a') as { text: string }).text) as { title: string }
          expect(left.title).toBe(both[0]!.document.title)
        },
      ),
      { numRuns: 100 },
    )
    promise('R7 two tabs can not silently overwrite: 100 interleavings, 0 failures')
  })
})
