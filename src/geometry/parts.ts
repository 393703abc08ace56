import type { Point3 } from '../arrangement/index.ts'
import { STANDIN_STRIDE } from './types.ts'

/**
 * Stand-ins made ready for projecting, 11 numbers each, in the arrangement's axes:
 * shape, kind, then ellipsoid: centre xyz and its second moments xx, xy, xz, yy, yz, zz (sum of the half axes' outer
 * products: projecting an ellipsoid is projecting these); capsule: a xyz, b xyz, radius, 0, 0.
 */
export const PART_STRIDE = 11

export const preparedParts = (standins: Float32Array, tip: Point3): Float64Array => {
  const count = Math.floor(standins.length / STANDIN_STRIDE)
  const out = new Float64Array(count * PART_STRIDE)
  for (let i = 0; i < count; i++) {
    const s = i * STANDIN_STRIDE
    const o = i * PART_STRIDE
    out[o] = standins[s]!
    out[o + 1] = standins[s + 1]!
    for (let k = 0; k < 3; k++) out[o + 2 + k] = standins[s + 2 + k]! + tip[k]!
    if (standins[s] === 1) {
      for (let k = 0; k < 3; k++) out[o + 5 + k] = standins[s + 5 + k]! + tip[k]!
      out[o + 8] = standins[s + 8]!
      continue
    }
    let at = o + 5
    for (let a = 0; a < 3; a++)
      for (let b = a; b < 3; b++) {
        let sum = 0
        for (let k = 5; k < 14; k += 3) sum += standins[s + k + a]! * standins[s + k + b]!
        out[at++] = sum
      }
  }
  return out
}

/** Least and greatest of `x·d` over one part, added to [least, greatest]. */
export const reachAlong = (parts: Float64Array, at: number, d: ArrayLike<number>): [number, number] => {
  const x = d[0]!
  const y = d[1]!
  const z = d[2]!
  const a = parts[at + 2]! * x + parts[at + 3]! * y + parts[at + 4]! * z
  if (parts[at] === 1) {
    const b = parts[at + 5]! * x + parts[at + 6]! * y + parts[at + 7]! * z
    const r = parts[at + 8]!
    return [Math.min(a, b) - r, Math.max(a, b) + r]
  }
  const v =
    x * (parts[at + 5]! * x + 2 * parts[at + 6]! * y + 2 * parts[at + 7]! * z) +
    y * (parts[at + 8]! * y + 2 * parts[at + 9]! * z) +
    parts[at + 10]! * z * z
  const half = Math.sqrt(Math.max(0, v))
  return [a - half, a + half]
}
