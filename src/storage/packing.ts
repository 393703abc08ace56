import { LIMITS } from '../arrangement/index.ts'

/** What came of it; never an exception. `message` is a whole sentence for the person. */
export type Got<T> = { ok: true; value: T } | { ok: false; message: string }

const NOT_HERE = 'This browser is too old for it: it can’t press text together. A design file works everywhere.'

/** Everything that a stream of bytes gives after `given` is put in; null as soon as it is more than `most`. */
const through = async (
  stream: { readable: ReadableStream<Uint8Array>; writable: WritableStream<BufferSource> },
  given: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> => {
  const writer = stream.writable.getWriter()
  // What goes wrong on the way in shows on the way out.
  writer.write(given).catch(() => undefined)
  writer.close().catch(() => undefined)
  const reader = stream.readable.getReader()
  const parts: Uint8Array[] = []
  let length = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    length += value.length
    if (length > most) {
      reader.cancel().catch(() => undefined)
      return null
    }
    parts.push(value)
  }
  const all = new Uint8Array(length)
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}

/** A text as UTF-8, pressed together by DEFLATE without wrapping (RFC 1951). */
export const packText = async (text: string): Promise<Got<Uint8Array<ArrayBuffer>>> => {
  if (typeof CompressionStream === 'undefined') return { ok: false, message: NOT_HERE }
  const bytes = await through(new CompressionStream('deflate-raw'), new TextEncoder().encode(text), Infinity)
  return { ok: true, value: bytes! }
}

/**
 * The text again. It is counted while it grows: more than `most` bytes are never made, whatever the packed ones say.
 * @param most bytes of UTF-8
 */
export const unpackText = async (packed: Uint8Array, most: number = LIMITS.file_bytes): Promise<Got<string>> => {
  if (typeof DecompressionStream === 'undefined') return { ok: false, message: NOT_HERE }
  try {
    const bytes = await through(new DecompressionStream('deflate-raw'), new Uint8Array(packed), most)
    if (!bytes) return { ok: false, message: `It holds more than the ${most / 1e6} MB that are let in.` }
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    return { ok: false, message: 'What it holds can’t be unpacked.' }
  }
}
