import { type Known, problemLine, readArrangement, writeArrangement } from '../arrangement/index.ts'
import { attempt, failure } from './failure.ts'
import { guardedWriter, isTextRecord, type TextRecord } from './guarded.ts'
import { newName } from './names.ts'
import type { Records } from './records.ts'
import type { DesignStore, StoredDesign } from './types.ts'

/** A design as it is stored, with what a list shows of it. */
interface DesignRecord extends TextRecord {
  title: string
  stems: number
}

const isRecord = (x: unknown): x is DesignRecord => isTextRecord(x)

export interface StoreOptions {
  known: Known
  /** The clock, milliseconds since 1970. It only dates; what is newer is told by revisions. */
  now?: () => number
  /** A name for this page, unlike that of any other. */
  writer?: string
}

/** The one set of rules for storing designs, whatever the records lie in. */
export const designStore = (
  records: Records,
  { known, now = Date.now, writer = newName() }: StoreOptions,
): DesignStore => {
  const write = guardedWriter(records, 'designs', writer)

  return {
    list: () =>
      attempt(async () => {
        const rows = await records.transact('designs', 'readonly', (table) => table.all())
        const designs = rows.map(([id, row]): StoredDesign => {
          if (!isRecord(row)) return { id, title: '', savedAt: 0, revision: 0, stems: 0, readable: false }
          const { title, savedAt, revision, stems } = row
          return {
            id,
            title: String(title ?? ''),
            savedAt,
            revision,
            stems: Number.isInteger(stems) ? stems : 0,
            readable: true,
          }
        })
        return { ok: true as const, designs: designs.sort((a, b) => b.savedAt - a.savedAt) }
      }),

    load: (id) =>
      attempt(async () => {
        const row = await records.transact('designs', 'readonly', (table) => table.get(id))
        if (row === undefined) return failure('missing')
        if (!isRecord(row)) return { ...failure('unreadable'), why: 'unreadable' as const, problems: [], good: null }
        const read = readArrangement(row.text, known)
        if (read.kind === 'ok')
          return { ok: true as const, document: read.document, revision: row.revision, savedAt: row.savedAt }
        const first = read.problems[0] ? problemLine(read.problems[0]) : ''
        const good = read.kind === 'partly' ? read.good : null
        return { ...failure('unreadable', first), why: 'unreadable' as const, problems: read.problems, good }
      }),

    save: (id, document, revision) =>
      attempt(async () => {
        const savedAt = now()
        const { title, stems } = document
        const row = { text: writeArrangement(document), title, stems: stems.length, savedAt }
        const next = await write(id, row, revision)
        return typeof next === 'number' ? { ok: true as const, revision: next, savedAt } : next
      }),

    remove: (id) =>
      attempt(async () => {
        await records.transact('designs', 'readwrite', (table) => table.remove(id))
        return { ok: true as const }
      }),

    raw: (id) =>
      attempt(async () => {
        const row = await records.transact('designs', 'readonly', (table) => table.get(id))
        if (row === undefined) return failure('missing')
        return { ok: true as const, text: isRecord(row) ? row.text : (JSON.stringify(row) ?? String(row)) }
      }),

    setting: (key) =>
      attempt(async () => ({
        ok: true as const,
        value: await records.transact('settings', 'readonly', (table) => table.get(key)),
      })),

    changeSetting: (key, change) =>
      attempt(async () => {
        await records.transact('settings', 'readwrite', async (table) => table.put(key, change(await table.get(key))))
        return { ok: true as const }
      }),

    putSetting: (key, value) =>
      attempt(async () => {
        await records.transact('settings', 'readwrite', (table) => table.put(key, value))
        return { ok: true as const }
      }),
  }
}
