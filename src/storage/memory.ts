import type { Drawer, Records } from './records.ts'

/** Each touch of the store, in order; `done` is after the commit, before the answer. */
export type StorageCall = 'open' | 'get' | 'put' | 'remove' | 'all' | 'commit' | 'done'

/** What outlives a reload: plain maps, which a test may also reach into. */
export type Shelves = Record<Drawer, Map<string, unknown>>
export const emptyShelves = (): Shelves => ({ designs: new Map(), settings: new Map() })

/**
 * Records in memory, for tests and for where the browser has no store. One transaction at a time, as in a database.
 * @param touch runs before each call (after it for `done`); what it throws or rejects with, the call fails with
 */
export const memoryRecords = (
  shelves: Shelves = emptyShelves(),
  touch: (call: StorageCall) => void | Promise<void> = () => {},
): Records => {
  return {
    transact: (drawer, mode, work) => {
      const run = async () => {
        await touch('open')
        // Values are copied on the way in and out, as a database does.
        const rows = new Map(shelves[drawer])
        const result = await work({
          get: async (key) => {
            await touch('get')
            return structuredClone(rows.get(key))
          },
          put: async (key, value) => {
            await touch('put')
            rows.set(key, structuredClone(value))
          },
          remove: async (key) => {
            await touch('remove')
            rows.delete(key)
          },
          all: async () => {
            await touch('all')
            return structuredClone([...rows])
          },
        })
        if (mode === 'readwrite') {
          await touch('commit')
          shelves[drawer] = rows
          await touch('done')
        }
        return result
      }
      const turn = (queues.get(shelves) ?? Promise.resolve()).then(run, run)
      queues.set(shelves, turn)
      return turn
    },
  }
}

/** The last transaction on each set of shelves, whoever opened them. */
const queues = new WeakMap<Shelves, Promise<unknown>>()
