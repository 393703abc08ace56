import { type Known, problemLine, readArrangement, writeArrangement } from '../arrangement/index.ts'
import { newName } from './names.ts'
import type { Records } from './records.ts'
import type { DesignStore, Failure, StoredDesign, Why } from './types.ts'

/** A design as it is stored: the text of its file, so that what is stored can always be handed out as a file. */
interface DesignRecord {
  text: string
  title: string
  stems: number
  revision: number
  savedAt: number
  /** Who wrote it: one name for each page that is open. */
  writer: string
}

const isRecord = (x: unknown): x is DesignRecord => {
  if (typeof x !== 'object' || x === null) return false
  const { text, revision, savedAt } = x as Partial<DesignRecord>
  return (
    typeof text === 'string' && Number.isInteger(revision) && typeof savedAt === 'number' && Number.isFinite(savedAt)
  )
}

const isRevised = (x: unknown): x is { revision: number; value: unknown } =>
  typeof x === 'object' && x !== null && Number.isInteger((x as { revision?: unknown }).revision)

const SENTENCES: Record<Why, string> = {
  conflict: 'Another tab has saved a newer state; nothing was overwritten.',
  full: 'The browser has no room left for this site.',
  unavailable: 'The browser’s store could not be reached.',
  unreadable: 'The stored design can’t be read; it was left as it is.',
  missing: 'Nothing is stored under this name.',
}

const failure = (why: Why, detail = ''): Failure => ({
  ok: false,
  why,
  message: detail ? `${SENTENCES[why]} (${detail})` : SENTENCES[why],
})

/** A thrown error as a result, so that a lost write is never taken for a success and never tears the page down. */
const caught = (error: unknown): Failure => {
  const name = error instanceof Error ? error.name : ''
  return failure(
    name === 'QuotaExceededError' ? 'full' : 'unavailable',
    error instanceof Error ? error.message : String(error),
  )
}

const attempt = async <T>(work: () => Promise<T | Failure>): Promise<T | Failure> => {
  try {
    return await work()
  } catch (error) {
    return caught(error)
  }
}

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
  /** Revisions that were sent but never acknowledged: if one did arrive, it is ours and no conflict. */
  const unanswered = new Map<string, Set<number>>()
  let compared = false

  /** Reads back what was just saved. */
  const arrived = async (id: string, text: string): Promise<boolean> => {
    const row = await records.transact('designs', 'readonly', (table) => table.get(id))
    return isRecord(row) && row.text === text
  }

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
        const text = writeArrangement(document)
        const savedAt = now()
        const next = await records.transact('designs', 'readwrite', async (table) => {
          const row = await table.get(id)
          if (row !== undefined && !isRecord(row)) return failure('unreadable')
          const ours = row?.writer === writer && unanswered.get(id)?.has(row.revision)
          if (row && row.revision !== revision && !ours) return failure('conflict')
          const record: DesignRecord = {
            text,
            title: document.title,
            stems: document.stems.length,
            revision: (row?.revision ?? revision) + 1,
            savedAt,
            writer,
          }
          unanswered.set(id, (unanswered.get(id) ?? new Set()).add(record.revision))
          await table.put(id, record)
          return record.revision
        })
        if (typeof next !== 'number') return next
        if (!compared && !(await arrived(id, text)))
          return failure('unavailable', 'it gave back something else than was saved')
        compared = true
        unanswered.delete(id)
        return { ok: true as const, revision: next, savedAt }
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

    revision: (key) =>
      attempt(async () => {
        const row = await records.transact('settings', 'readonly', (table) => table.get(key))
        return isRevised(row)
          ? { ok: true as const, value: row.value, revision: row.revision }
          : { ok: true as const, value: undefined, revision: 0 }
      }),

    putRevision: (key, value, revision) =>
      attempt(async () => {
        const next = await records.transact('settings', 'readwrite', async (table) => {
          const row = await table.get(key)
          const there = isRevised(row) ? row.revision : 0
          if (there !== revision) return failure('conflict')
          await table.put(key, { revision: revision + 1, value })
          return revision + 1
        })
        return typeof next === 'number' ? { ok: true as const, revision: next } : next
      }),

    putSetting: (key, value) =>
      attempt(async () => {
        await records.transact('settings', 'readwrite', (table) => table.put(key, value))
        return { ok: true as const }
      }),
  }
}
