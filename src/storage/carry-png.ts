import { LIMITS } from '../arrangement/index.ts'
import { crc32 } from './crc32.ts'
import { type Got, packText, unpackText } from './packing.ts'

/**
 * The chunk that holds a design, named by the rule of the PNG specification (3rd edition, 5.4): small p, what shows pictures may
 * pass it over; small e, it is nobody's standard; capital D, as the rule asks; small s, it may stay when the picture is changed.
 * In it: a byte for the version, then the text of the design file, packed.
 */
export const CHUNK = 'peDs'
const VERSION = 1
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
/** IEND, the last chunk, always looks like this. */
const END_LENGTH = 12

/** Bytes of a picture that are looked at at all: above what any browser paints as one sheet. Ours. */
export const PICTURE_BYTES = 100_000_000

/** Does it begin as a PNG does? */
export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.every((b, i) => bytes[i] === b)

const nameBytes = Array.from(CHUNK, (c) => c.charCodeAt(0))

interface Chunk {
  /** Where its length stands, and where the next one begins. */
  from: number
  to: number
  name: string
  data: Uint8Array
  /** Is it there to its end, and is its sum right? */
  whole: boolean
}

/**
 * The chunks of a PNG as far as they can be followed.
 * @param pixels are those (IDAT) added up too? They are no design, and many.
 */
function* chunksOf(png: Uint8Array, pixels = false): Generator<Chunk> {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength)
  let from = SIGNATURE.length
  while (from + 8 <= png.length) {
    const length = view.getUint32(from)
    const to = from + 12 + length
    const name = String.fromCharCode(...png.subarray(from + 4, from + 8))
    const here = to <= png.length
    const body = png.subarray(from + 4, here ? to - 4 : png.length)
    const whole = here && ((name === 'IDAT' && !pixels) || crc32(body) === view.getUint32(to - 4))
    yield { from, to: Math.min(to, png.length), name, data: body.subarray(4), whole }
    if (!here || name === 'IEND') return
    from = to
  }
}

/**
 * The picture, carrying the text of a design before its last chunk; one that it carried already is replaced.
 * @param png a whole PNG, as a canvas gives it; anything else is refused in words
 */
export const carryDesign = async (png: Uint8Array, text: string): Promise<Got<Uint8Array<ArrayBuffer>>> => {
  const packed = await packText(text)
  if (!packed.ok) return packed
  const chunks = isPng(png) ? [...chunksOf(png)] : []
  if (chunks.at(-1)?.name !== 'IEND') return { ok: false, message: 'The browser gave no whole picture.' }
  const others = chunks.filter((c) => c.name !== CHUNK && c.name !== 'IEND')
  const length = packed.value.length + 1
  const size = SIGNATURE.length + others.reduce((sum, c) => sum + c.to - c.from, 0) + 12 + length + END_LENGTH
  const out = new Uint8Array(size)
  out.set(SIGNATURE)
  let at = SIGNATURE.length
  for (const { from, to } of others) {
    out.set(png.subarray(from, to), at)
    at += to - from
  }
  const view = new DataView(out.buffer)
  view.setUint32(at, length)
  out.set(nameBytes, at + 4)
  out[at + 8] = VERSION
  out.set(packed.value, at + 9)
  view.setUint32(at + 8 + length, crc32(out.subarray(at + 4, at + 8 + length)))
  const { from, to } = chunks.at(-1)!
  out.set(png.subarray(from, to), size - END_LENGTH)
  return { ok: true, value: out }
}

const byte = (n: number): string => `byte ${(n + 1).toLocaleString('en')}`

/**
 * The text of the design that a picture carries; in words, to stand after the name of the file, where it carries none or one
 * that is not whole: as far as can be known, at which byte.
 */
export const designInPicture = async (png: Uint8Array): Promise<Got<string>> => {
  const no = (message: string): Got<string> => ({ ok: false, message })
  if (!isPng(png)) return no('expected a PNG that carries its design, got another kind of file')
  let changed: Chunk | null = null
  let ended = false
  for (const chunk of chunksOf(png)) {
    ended = chunk.whole && chunk.name === 'IEND'
    if (!chunk.whole) changed ??= chunk
    if (chunk.name !== CHUNK) continue
    if (!chunk.whole)
      return no(
        `is a picture whose design is not whole: something was lost or changed on the way, behind ${byte(chunk.from)}`,
      )
    if (chunk.data[0] !== VERSION) return no('is a picture whose design was written by a newer Pedicel')
    const text = await unpackText(chunk.data.subarray(1), LIMITS.file_bytes)
    return text.ok ? text : no(`is a picture whose design can’t be read. ${text.message}`)
  }
  changed ??= [...chunksOf(png, true)].find((c) => !c.whole) ?? null
  if (ended && !changed)
    return no(
      'is a picture that carries no design. An ordinary picture never does, and many messengers take it out of an editable one: ask for that as a file',
    )
  return no(
    `is a picture that is not whole, behind ${byte(changed?.from ?? png.length)}, and no design was found in what is there`,
  )
}
