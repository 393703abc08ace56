import { crc32 } from './crc32.ts'
import { type Got, packText, unpackText } from './packing.ts'

/** The version of what is sealed; a newer one is refused in words. Version 1, without a count, is read as well. */
const VERSION = 2
/** Letters that are looked at at all: a packed 2 MB is less. Ours. */
const MOST_LETTERS = 3_000_000

const toLetters = (bytes: Uint8Array): string => {
  let text = ''
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192))
  return btoa(text).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '')
}

const fromLetters = (letters: string): Uint8Array | null => {
  try {
    const bytes = Uint8Array.from(atob(letters.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0))
    // The last letter may hold bits that belong to no byte: they have to be 0, so that one text has one spelling.
    return toLetters(bytes) === letters ? bytes : null
  } catch {
    return null
  }
}

const hex = (n: number): string => n.toString(16).padStart(8, '0')

/**
 * A text as letters that a link can carry: version, check sum, how many letters follow, and the packed text in base64url
 * (RFC 4648, section 5), `2.0a1b2c3d.412.…`. Sum and count stand first, so that a link that lost its end is known by them.
 */
export const seal = async (text: string): Promise<Got<string>> => {
  const packed = await packText(text)
  if (!packed.ok) return packed
  const letters = toLetters(packed.value)
  return { ok: true, value: `${VERSION}.${hex(crc32(packed.value))}.${letters.length}.${letters}` }
}

interface Parts {
  version: number
  sum: string
  /** How many letters it was made with; links of version 1 don't say. */
  count: number | null
  letters: string
}

const partsOf = (code: string): Parts | null => {
  const bare = code.trim().replace(/[.,;:!?)\]}>"'”’»]+$/, '')
  const parts = /^(\d{1,4})\.([0-9a-f]{8})\.(?:(\d{1,7})\.)?([^.]*)$/.exec(bare)
  if (!parts) return null
  const [, version, sum, count, letters] = parts as unknown as [string, string, string, string | undefined, string]
  return { version: Number(version), sum, count: count === undefined ? null : Number(count), letters }
}

/** Letters that a code has lost at its end, 0 where it has lost none; null where it does not say how many it should have. */
export const lettersMissing = (code: string): number | null => {
  const parts = partsOf(code)
  return parts?.count == null ? null : Math.max(0, parts.count - parts.letters.length)
}

const figures = (n: number): string => n.toLocaleString('en')

/** In words what is wrong with letters whose sum does not fit, and where, as far as that can be known. */
const damage = ({ count, letters }: Parts): string => {
  const odd = /[^\w-]/.exec(letters)
  if (odd) return `letter ${figures(odd.index + 1)} of it is “${odd[0]}”, which none of ours is.`
  if (count === null) return 'something was lost or changed on the way.'
  if (letters.length < count)
    return `it ends after ${figures(letters.length)} of its ${figures(count)} letters. The end was cut off on the way.`
  if (letters.length > count) return `${figures(letters.length - count)} letters too many stand in it.`
  return `at least one of its ${figures(count)} letters was changed on the way.`
}

/**
 * The text of `seal` again, or in words why not: never a part of it, never another one. Marks that a message puts behind
 * a link (full stop, bracket, quote) are let pass.
 */
export const unseal = async (code: string): Promise<Got<string>> => {
  const no = (message: string): Got<string> => ({ ok: false, message })
  if (code.length > MOST_LETTERS) return no('It is far longer than anything that is made here.')
  const parts = partsOf(code)
  if (!parts) return no('It is not whole: its beginning or its end is missing.')
  if (parts.version > VERSION) return no('It was made by a newer Pedicel.')
  const { version, count, letters, sum } = parts
  const counted = version === VERSION ? count === letters.length : version === 1 && count === null
  const packed = counted ? fromLetters(letters) : null
  if (!packed || hex(crc32(packed)) !== sum) return no(`It is not whole: ${damage(parts)}`)
  return unpackText(packed)
}
