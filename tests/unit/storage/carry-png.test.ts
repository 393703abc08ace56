import { deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readArrangement, writeArrangement } from '../../../src/arrangement/index.ts'
import { CHUNK, carryDesign, crc32, designInPicture } from '../../../src/storage/index.ts'
import { promise } from '../../promise.ts'
import { bowl, known } from '../arrangement/helpers.ts'

const chunk = (name: string, data: Uint8Array): Uint8Array => {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(data.length)
  sum.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, sum])
}
/** A grey picture of 2 × 2 (PNG specification, 3rd edition, 11.2). */
const picture = (): Uint8Array =>
  Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', Buffer.from([0, 0, 0, 2, 0, 0, 0, 2, 8, 0, 0, 0, 0])),
    chunk('tEXt', Buffer.from('Title\0grey')),
    chunk('IDAT', deflateSync(Buffer.from([0, 200, 200, 0, 200, 200]))),
    chunk('IEND', Buffer.alloc(0)),
  ])
const carrying = async (png: Uint8Array, text: string): Promise<Uint8Array> => {
  const made = await carryDesign(png, text)
  if (!made.ok) throw new Error(made.message)
  return made.value
}
/** The names of its chunks, each with its sum looked at. */
const names = (png: Uint8Array): string[] => {
  const view = Buffer.from(png)
  const found: string[] = []
  for (let at = 8; at < png.length; ) {
    const length = view.readUInt32BE(at)
    expect(view.readUInt32BE(at + 8 + length)).toBe(crc32(view.subarray(at + 4, at + 8 + length)))
    found.push(view.toString('latin1', at + 4, at + 8))
    at += 12 + length
  }
  return found
}

describe('an editable picture', () => {
  it('carries its design and gives it back, unknown keys and all', async () => {
    const png = await carrying(picture(), writeArrangement(bowl()))
    const text = await designInPicture(png)
    expect(text.ok && readArrangement(text.value, known)).toEqual({ kind: 'ok', document: bowl() })
  })
  it('stays a right PNG: every sum holds, and its own chunk stands before the end', async () => {
    const png = await carrying(picture(), 'x')
    expect(names(png)).toEqual(['IHDR', 'tEXt', 'IDAT', CHUNK, 'IEND'])
    // Ancillary, private, reserved, safe to copy: bit 5 of each letter (PNG specification, 5.4).
    expect([...CHUNK].map((c) => (c.charCodeAt(0) >> 5) & 1)).toEqual([1, 1, 0, 1])
  })
  it('carries one design at most', async () => {
    const png = await carrying(await carrying(picture(), 'first'), 'second')
    expect(names(png).filter((n) => n === CHUNK)).toEqual([CHUNK])
    expect(await designInPicture(png)).toEqual({ ok: true, value: 'second' })
  })
  it('that a messenger has stripped says plainly that it carries none', async () => {
    expect(await designInPicture(picture())).toMatchObject({ ok: false, message: /carries no design/ })
  })
  it('of another kind, or none at all, is refused', async () => {
    for (const bytes of ['', 'GIF89a', '\x89PNG', '{"format": 1}'])
      expect(await designInPicture(Buffer.from(bytes, 'latin1'))).toMatchObject({
        ok: false,
        message: /expected a PNG/,
      })
    expect(await carryDesign(Buffer.from('no picture'), 'x')).toMatchObject({ ok: false })
    expect(await carryDesign(picture().subarray(0, -5), 'x')).toMatchObject({ ok: false })
  })
  it('cut anywhere, or with any byte of the design flipped, gives the whole design or none', async () => {
    const text = writeArrangement(bowl())
    const png = await carrying(picture(), text)
    const from = names(png).indexOf(CHUNK) >= 0 ? Buffer.from(png).indexOf(CHUNK) - 4 : 0
    let refused = 0
    const judge = async (bytes: Uint8Array): Promise<void> => {
      const read = await designInPicture(bytes)
      if (read.ok) expect(read.value).toBe(text)
      else {
        expect(read.message).toMatch(/^(is a picture |expected a PNG )/)
        refused += 1
      }
    }
    await fc.assert(
      fc.asyncProperty(fc.nat(png.length - 1), (n) => judge(png.subarray(0, n))),
      { numRuns: 200 },
    )
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: from, max: png.length - 13 }), fc.nat(7), async (at, bit) => {
        const bytes = Uint8Array.from(png)
        bytes[at]! ^= 1 << bit
        expect((await designInPicture(bytes)).ok).toBe(false)
        await judge(bytes)
      }),
      { numRuns: 300 },
    )
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), (junk) =>
        judge(Buffer.concat([picture().subarray(0, 8), junk])),
      ),
      { numRuns: 200 },
    )
    promise(`a cut or flipped editable picture gives the whole design or none: ${refused} refused in words`)
  })
  it('every byte of a small one, flipped in every bit, and every cut: the same design, or words that name the place', async () => {
    const text = '{"title": "Bowl"}'
    const png = await carrying(picture(), text)
    const at = Buffer.from(png).indexOf(CHUNK) - 4
    const cuts = Array.from({ length: png.length }, (_, n) => png.subarray(0, n))
    const flips = Array.from({ length: png.length * 8 }, (_, n) => {
      const bytes = Uint8Array.from(png)
      bytes[n >> 3]! ^= 1 << (n & 7)
      return bytes
    })
    const counts = { same: 0, refused: 0 }
    for (const bytes of [...cuts, ...flips]) {
      const read = await designInPicture(bytes)
      if (read.ok) expect(read.value).toBe(text)
      else expect(read.message).toMatch(/behind byte \d+|expected a PNG/)
      counts[read.ok ? 'same' : 'refused'] += 1
    }
    for (let n = 8; n < png.length; n++)
      expect(await designInPicture(png.subarray(0, n)), `cut at ${n}`).toMatchObject({ ok: n >= png.length - 12 })
    // Nothing of the design itself can be changed unseen: its length, its name, its letters, its sum.
    for (const bytes of flips.slice(at * 8, (png.length - 12) * 8))
      expect(await designInPicture(bytes)).toMatchObject({ ok: false })
    promise(
      `every cut and every flipped bit of a small editable picture: ${counts.same} times the same design, ${counts.refused} refused by the place, 0 others`,
    )
  })
})
