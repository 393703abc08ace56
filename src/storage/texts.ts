import { attempt, failure } from './failure.ts'
import { guardedWriter, isTextRecord } from './guarded.ts'
import { newName } from './names.ts'
import type { Records } from './records.ts'
import type { KeptText, TextStore } from './types.ts'

const isThrown = (row: object): boolean => (row as { thrown?: unknown }).thrown === true

/** What an older version kept under one key: a text and its revision. */
const isOldText = (x: unknown): x is { value: string } =>
  typeof x === 'object' && x !== null && typeof (x as { value?: unknown }).value === 'string'

/**
 * Texts of one kind, by the rules that hold for designs. They lie among the settings, each key behind the prefix: a drawer of
 * their own would shut out pages of an older version that are still open.
 */
export const textStore = (
  records: Records,
  prefix: string,
  { now = Date.now, writer = newName() }: { now?: () => number; writer?: string } = {},
): TextStore => {
  const write = guardedWriter(records, 'settings', writer)
  const rowOf = (id: string): Promise<unknown> =>
    records.transact('settings', 'readonly', (table) => table.get(prefix + id))

  return {
    list: () =>
      attempt(async () => {
        const rows = await records.transact('settings', 'readonly', (table) => table.all())
        const texts = rows
          .filter(([key]) => key.startsWith(prefix))
          .map(([key, row]): KeptText => {
            const id = key.slice(prefix.length)
            if (!isTextRecord(row))
              return { id, text: JSON.stringify(row) ?? '', revision: 0, savedAt: 0, thrown: false }
            const { text, revision, savedAt } = row
            return { id, text, revision, savedAt, thrown: isThrown(row) }
          })
        return { ok: true as const, texts: texts.sort((a, b) => b.savedAt - a.savedAt) }
      }),

    load: (id) =>
      attempt(async () => {
        const row = await rowOf(id)
        if (row === undefined) return failure('missing')
        if (!isTextRecord(row)) return failure('unreadable')
        return { ok: true as const, document: row.text, revision: row.revision, savedAt: row.savedAt }
      }),

    raw: (id) =>
      attempt(async () => {
        const row = await rowOf(id)
        if (row === undefined) return failure('missing')
        return { ok: true as const, text: isTextRecord(row) ? row.text : (JSON.stringify(row) ?? String(row)) }
      }),

    save: (id, text, revision) =>
      attempt(async () => {
        const savedAt = now()
        const next = await write(prefix + id, { text, savedAt }, revision)
        return typeof next === 'number' ? { ok: true as const, revision: next, savedAt } : next
      }),

    mark: (id, thrown) =>
      attempt(async () => {
        const done = await records.transact('settings', 'readwrite', async (table) => {
          const row = await table.get(prefix + id)
          if (row === undefined) return failure('missing')
          if (!isTextRecord(row)) return failure('unreadable')
          await table.put(prefix + id, { ...row, thrown })
          return { ok: true as const }
        })
        return done
      }),

    remove: (id) =>
      attempt(async () => {
        await records.transact('settings', 'readwrite', (table) => table.remove(prefix + id))
        return { ok: true as const }
      }),

    adopt: (key, id) =>
      attempt(async () => {
        const adopted = await records.transact('settings', 'readwrite', async (table) => {
          const old = await table.get(key)
          if (!isOldText(old)) return false
          await table.put(prefix + id, { text: old.value, revision: 1, savedAt: now(), writer })
          await table.remove(key)
          return true
        })
        return { ok: true as const, adopted }
      }),
  }
}
