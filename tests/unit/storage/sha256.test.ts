import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sha256 } from '../../../src/storage/sha256.ts'

const of = (text: string): string => sha256(new TextEncoder().encode(text))

describe('SHA-256', () => {
  it.each([
    // FIPS 180-2, annex B.1 to B.3, and the empty text of NIST's SHA256ShortMsg.rsp.
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('has the published values', (text, hex) => {
    expect(of(text)).toBe(hex)
  })
  it('is that of Node for any bytes, at every length about a block', () => {
    for (let n = 0; n < 200; n++) {
      const bytes = Uint8Array.from({ length: n }, (_, i) => (i * 37 + n) & 255)
      expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
    }
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 500 }), (bytes) => {
        expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
      }),
    )
  })
})
