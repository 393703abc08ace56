/** The first 32 bits of what stands behind the point of each number: how FIPS 180-4 makes its constants (4.2.2, 5.3.3). */
const behindPoint = (x: number): number => ((x - Math.floor(x)) * 2 ** 32) | 0

const PRIMES = Array.from({ length: 312 }, (_, n) => n).filter((n) => {
  for (let d = 2; d * d <= n; d++) if (n % d === 0) return false
  return n > 1
})
const ROUND = PRIMES.map((p) => behindPoint(Math.cbrt(p)))
const START = PRIMES.slice(0, 8).map((p) => behindPoint(Math.sqrt(p)))

const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by))

/** Padded to whole blocks of 64 bytes: a bit 1, zeros, the length in bits (5.1.1). */
const padded = (bytes: Uint8Array): DataView => {
  const all = new Uint8Array(((bytes.length + 8) >> 6) * 64 + 64)
  all.set(bytes)
  all[bytes.length] = 0x80
  const view = new DataView(all.buffer)
  view.setUint32(all.length - 8, Math.floor(bytes.length / 2 ** 29))
  view.setUint32(all.length - 4, bytes.length * 8)
  return view
}

/**
 * SHA-256 as 64 hexadecimal letters (FIPS 180-4, 6.2.2). The browser's own one is not there on pages without a secure
 * connection, and not for files in every browser; the same design has to give the same letters everywhere.
 */
export const sha256 = (bytes: Uint8Array): string => {
  const view = padded(bytes)
  const state = Int32Array.from(START)
  const w = new Int32Array(64)
  for (let block = 0; block < view.byteLength; block += 64) {
    for (let t = 0; t < 16; t++) w[t] = view.getInt32(block + t * 4)
    for (let t = 16; t < 64; t++) {
      const [x, y] = [w[t - 15]!, w[t - 2]!]
      const low = turned(x, 7) ^ turned(x, 18) ^ (x >>> 3)
      const high = turned(y, 17) ^ turned(y, 19) ^ (y >>> 10)
      w[t] = w[t - 16]! + low + w[t - 7]! + high
    }
    let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number]
    for (let t = 0; t < 64; t++) {
      const choice = (e & f) ^ (~e & g)
      const first = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + ROUND[t]! + w[t]!) | 0
      const most = (a & b) ^ (a & c) ^ (b & c)
      const second = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + most) | 0
      h = g
      g = f
      f = e
      e = (d + first) | 0
      d = c
      c = b
      b = a
      a = (first + second) | 0
    }
    for (const [i, x] of [a, b, c, d, e, f, g, h].entries()) state[i]! += x
  }
  return Array.from(state, (x) => (x >>> 0).toString(16).padStart(8, '0')).join('')
}
