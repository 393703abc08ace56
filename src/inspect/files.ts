import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { EVENT_LIMITS } from '../event/index.ts'

const reason = (error: unknown): string => {
  const { code } = error as { code?: string }
  if (code === 'ENOENT') return 'there is no such file'
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be read'
  return error instanceof Error ? error.message : String(error)
}

export type FileText = { file: string; text: string } | { file: string; error: string }

/** The text of a design's or an event's file, or why there is none. A file far beyond the limit is not read at all. */
export const fileText = (file: string): FileText => {
  try {
    const stat = statSync(file)
    if (!stat.isFile()) return { file, error: 'it is not a file' }
    if (stat.size > EVENT_LIMITS.file_bytes + 3)
      return {
        file,
        error: `expected a file of at most ${EVENT_LIMITS.file_bytes / 1e6} MB, got ${(stat.size / 1e6).toFixed(1)} MB`,
      }
    return { file, text: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file)) }
  } catch (error) {
    return { file, error: error instanceof TypeError ? 'expected UTF-8, got other bytes' : reason(error) }
  }
}

/** Every file that is meant: a folder stands for the .json files right in it, in the order of their names. */
export const filesOf = (path: string): FileText[] => {
  try {
    if (!statSync(path).isDirectory()) return [fileText(path)]
    const names = readdirSync(path).filter((name) => name.toLowerCase().endsWith('.json'))
    if (names.length === 0) return [{ file: path, error: 'there is no .json file in this folder' }]
    return names.sort((a, b) => (a < b ? -1 : 1)).map((name) => fileText(join(path, name)))
  } catch (error) {
    return [{ file: path, error: reason(error) }]
  }
}
