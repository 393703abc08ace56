import { LIMITS } from './limits.ts'
import { type Fault, shown, wanted } from './words.ts'

/** Whether a text has more bytes in UTF-8, counted only as far as needed. */
const tooLong = (text: string, most: number): boolean =>
  text.length > most || (text.length * 3 > most && new TextEncoder().encode(text).length > most)

/** How deep braces and brackets stand in one another, without parsing and without recursion. */
export const nestingOf = (text: string): number => {
  let depth = 0
  let deepest = 0
  let quoted = false
  for (let i = 0; i < text.length; i += 1) {
    const c = text[i]
    if (quoted) {
      if (c === '\\') i += 1
      else if (c === '"') quoted = false
    } else if (c === '"') quoted = true
    else if (c === '{' || c === '[') {
      depth += 1
      if (depth > deepest) deepest = depth
    } else if (c === '}' || c === ']') depth -= 1
  }
  return deepest
}

/**
 * JSON text to plain data, or why not. A byte order mark is let pass. Never throws.
 * @param limits the most bytes of UTF-8, and the most levels of nesting
 */
export const parseText = (
  given: string,
  limits: { file_bytes: number; nesting: number } = LIMITS,
): { raw: unknown } | { fault: Fault } => {
  const text = given.startsWith('\uFEFF') ? given.slice(1) : given
  const no = (message: string) => ({ fault: { path: [], message } })
  if (tooLong(text, limits.file_bytes)) return no(`expected a file of at most ${limits.file_bytes / 1e6} MB, got more`)
  const nesting = nestingOf(text)
  if (nesting > limits.nesting) return no(`expected at most ${limits.nesting} levels of nesting, got ${nesting}`)
  try {
    return { raw: JSON.parse(text) as unknown }
  } catch {
    return no(
      `expected JSON, got ${text.trim() === '' ? 'an empty file' : `something else: ${shown(text.trim().slice(0, 60))}`}`,
    )
  }
}

/** Numbers that are not finite (1e999 reads as infinite), wherever they stand. Data from JSON at most LIMITS.nesting deep. */
export const notFinite = (value: unknown, path: (string | number)[] = []): Fault[] => {
  if (typeof value === 'number')
    return Number.isFinite(value) ? [] : [{ path, message: wanted('a finite number', value) }]
  if (typeof value !== 'object' || value === null) return []
  if (Array.isArray(value)) return value.flatMap((item, i) => notFinite(item, [...path, i]))
  return Object.entries(value).flatMap(([key, item]) => notFinite(item, [...path, key]))
}

/** The same data with 0 for −0, which JSON can hold but no reader expects. */
export const withoutMinusZero = (value: unknown): unknown => {
  if (value === 0) return 0
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(withoutMinusZero)
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, withoutMinusZero(item)]))
}
