import { shorten } from './limits.ts'
import type { Problem } from './types.ts'

export type Path = readonly (string | number)[]

/** A problem before it is put into words for the outside. */
export interface Fault {
  path: Path
  message: string
}

/** A path as written in code: `stems[3].tip[2]`, `vessel["odd key"]`; '' for the file itself. */
export const writtenPath = (path: Path): string =>
  path.reduce<string>((before, key) => {
    if (typeof key === 'number') return `${before}[${key}]`
    if (!/^[A-Za-z_$][\w$]*$/.test(key)) return `${before}[${JSON.stringify(shorten(key, 40))}]`
    return before ? `${before}.${key}` : key
  }, '')

/** What was there, in at most about 40 characters. */
export const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  if (typeof value === 'string')
    return value.length > 40 ? `${JSON.stringify(shorten(value, 37))}…` : JSON.stringify(value)
  if (Array.isArray(value)) return value.length > 0 ? `a list of ${value.length}` : 'an empty list'
  return typeof value === 'object' && value !== null ? 'an object' : String(value)
}

export const wanted = (words: string, got: unknown): string => `expected ${words}, got ${shown(got)}`

export const asProblem = ({ path, message }: Fault): Problem => ({ path: writtenPath(path), message })

/** One problem as a line: the path, a colon, the sentence. */
export const problemLine = ({ path, message }: Problem): string => (path ? `${path}: ${message}` : message)
