import { crc32 } from './crc32.ts'
import { type Got, packText, unpackText } from './packing.ts'

/** The version of what is sealed; a newer one is refused in words. */
const VERSION = 1
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
 * A text as letters that a link can carry: version, check sum and the packed text in base64url (RFC 4648, section 5),
 * `1.0a1b2c3d.…`. The sum stands first, so that a link that lost its end is known by it.
 */
export const seal = async (text: string): Promise<Got<string>> => {
  const packed = await packText(text)
  if (!packed.ok) return packed
  return { ok: true, value: `${VERSION}.${hex(crc32(packed.value))}.${toLetters(packed.value)}` }
}

/**
 * The text of `seal` again, or in words why not: never a part of it, never another one. Marks that a message puts behind
 * a link (full stop, bracket, quote) are let pass.
 */
export const unseal = async (code: string): Promise<Got<string>> => {
  const no = (message: string): Got<string> => ({ ok: false, message })
  if (code.length > MOST_LETTERS) return no('It is far longer than anything that is made here.')
  const parts = /^(\d{1,4})\.([0-9a-f]{8})\.([\w-]*)$/.exec(code.trim().replace(/[.,;:!?)\]}>"'”’»]+$/, ''))
  if (!parts) return no('It is not whole: its beginning or its end is missing.')
  const [, version, sum, letters] = parts as unknown as [string, string, string, string]
  if (Number(version) > VERSION) return no('It was made by a newer Pedicel.')
  const packed = Number(version) === VERSION ? fromLetters(letters) : null
  if (!packed || hex(crc32(packed)) !== sum) return no('It is not whole: something was lost or changed on the way.')
  return unpackText(packed)
}
