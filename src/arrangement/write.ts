import { LIMITS } from './limits.ts'
import type { Arrangement } from './types.ts'

/** Keys in the order in which they are written; others follow in their own order. */
const KEYS = [
  'format', 'version', 'title', 'form', 'vessel', 'palette', 'stems', 'setting', 'bands',
  'plan', 'width', 'depth', 'height', 'profile', 'wall', 'material', 'colour', 'mechanics', 'waterFill',
  'name', 'slots', 'part',
] // biome-ignore format: one line a level
const STEM_KEYS = ['id', 'plant', 'role', 'colour', 'openness', 'mouth', 'tip', 'bend', 'head', 'piece']
const SETTING_KEYS = ['copies', 'date', 'light', 'linen', 'table', 'shape', 'diameter', 'length', 'width']

const ordered = (thing: object, order: readonly string[]): [string, unknown][] => {
  const place = (key: string): number => (order.includes(key) ? order.indexOf(key) : order.length)
  return Object.entries(thing)
    .filter(([, value]) => value !== undefined)
    .sort(([a], [b]) => place(a) - place(b))
}

const orderIn = (key: string, order: readonly string[]): readonly string[] =>
  key === 'stems' ? STEM_KEYS : key === 'setting' ? SETTING_KEYS : order

/** Longest thing that is put on one line, characters. */
const LINE = 100

const write = (value: unknown, order: readonly string[], indent: string): string => {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const inner = `${indent}  `
  const list = Array.isArray(value)
  const parts = list
    ? value.map((item) => write(item, order, inner))
    : ordered(value, order).map(([key, item]) => `${JSON.stringify(key)}: ${write(item, orderIn(key, order), inner)}`)
  const [open, close] = list ? ['[', ']'] : ['{', '}']
  if (parts.length === 0) return open + close
  const short =
    parts.reduce((sum, part) => sum + part.length + 2, 0) <= LINE && !parts.some((part) => part.includes('\n'))
  if (short) return list ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`
  return `${open}\n${parts.map((part) => inner + part).join(',\n')}\n${indent}${close}`
}

/**
 * The text of a design file: JSON with keys in a fixed order, short lists on one line, unknown keys kept. What is read
 * back equals the document. Should the indenting take it over the limit for a file, it is written without.
 */
export const writeArrangement = (document: Arrangement): string => {
  const text = `${write(document, KEYS, '')}\n`
  return new TextEncoder().encode(text).length > LIMITS.file_bytes ? JSON.stringify(document) : text
}
