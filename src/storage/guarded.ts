import { failure } from './failure.ts'
import type { Drawer, Records } from './records.ts'
import type { Failure } from './types.ts'

/** What every kept text has: the text of its file, so that what is stored can always be handed out as a file. */
export interface TextRecord {
  text: string
  revision: number
  savedAt: number
  /** Who wrote it: one name for each page that is open. */
  writer: string
}

export const isTextRecord = (x: unknown): x is TextRecord => {
  if (typeof x !== 'object' || x === null) return false
  const { text, revision, savedAt } = x as Partial<TextRecord>
  return (
    typeof text === 'string' && Number.isInteger(revision) && typeof savedAt === 'number' && Number.isFinite(savedAt)
  )
}

/**
 * Writes records that are only replaced by who has seen them. Success means that the transaction has completed; the first
 * write is also read back and compared.
 * @param writer a name for this page, unlike that of any other
 * @returns writes a record under `key` if the store still holds `revision` (0: nothing yet), and gives the new revision
 */
export const guardedWriter = (records: Records, drawer: Drawer, writer: string) => {
  /** Revisions that were sent but never acknowledged: if one did arrive, it is ours and no conflict. */
  const unanswered = new Map<string, Set<number>>()
  let compared = false

  const arrived = async (key: string, text: string): Promise<boolean> => {
    const row = await records.transact(drawer, 'readonly', (table) => table.get(key))
    return isTextRecord(row) && row.text === text
  }

  return async <Row extends { text: string; savedAt: number }>(
    key: string,
    row: Row,
    revision: number,
  ): Promise<number | Failure> => {
    const next = await records.transact(drawer, 'readwrite', async (table) => {
      const there = await table.get(key)
      if (there !== undefined && !isTextRecord(there)) return failure('unreadable')
      const ours = there?.writer === writer && unanswered.get(key)?.has(there.revision)
      if (there && there.revision !== revision && !ours) return failure('conflict')
      const record: Row & TextRecord = { ...row, revision: (there?.revision ?? revision) + 1, writer }
      unanswered.set(key, (unanswered.get(key) ?? new Set()).add(record.revision))
      await table.put(key, record)
      return record.revision
    })
    if (typeof next !== 'number') return next
    if (!compared && !(await arrived(key, row.text)))
      return failure('unavailable', 'it gave back something else than was saved')
    compared = true
    unanswered.delete(key)
    return next
  }
}
