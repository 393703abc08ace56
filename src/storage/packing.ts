import { LIMITS } from '../arrangement/index.ts'

/** What came of it; never an exception. `message` is a whole sentence for the person. */
export type Got<T> = { ok: true; value: T } | { ok: false; message: string }

/** First with `deflate-raw`, by MDN's browser-compat-data: Chrome 103, Firefox 113, Safari 16.4. */
const NOT_HERE =
  'This browser is too old for it. Chrome from 103 on, Firefox from 113 and Safari from 16.4 (iPhone: iOS 16.4) can do it.'

interface Pressing {
  readable: ReadableStream<Uint8Array>
  writable: WritableStream<BufferSource>
}

/** Null where the browser has none, or knows the stream and not this way of packing (Chrome 80 to 102). */
const streamOf = (kind: 'CompressionStream' | 'DecompressionStream'): Pressing | null => {
  try {
    return new globalThis[kind]('deflate-raw')
  } catch {
    return null
  }
}

/** Everything that a stream of bytes gives after `given` is put in; null as soon as it is more than `most`. */
const through = async (
  stream: Pressing,
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
  const stream = streamOf('CompressionStream')
  if (!stream) return { ok: false, message: NOT_HERE }
  const bytes = await through(stream, new TextEncoder().encode(text), Infinity)
  return { ok: true, value: bytes! }
}

/**
 * The text again. It is counted while it grows: more than `most` bytes are never made, whatever the packed ones say.
 * @param most bytes of UTF-8
 */
export const unpackText = async (packed: Uint8Array, most: number = LIMITS.file_bytes): Promise<Got<string>> => {
  const stream = streamOf('DecompressionStream')
  if (!stream) return { ok: false, message: NOT_HERE }
  try {
    const bytes = await through(stream, new Uint8Array(packed), most)
    if (!bytes) return { ok: false, message: `It holds more than the ${most / 1e6} MB that are let in.` }
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    return { ok: false, message: 'What it holds can’t be unpacked.' }
  }
}
