import type { Point3 } from '../../arrangement/index.ts'
import { STANDIN_STRIDE } from '../types.ts'

let room = new Float32Array(STANDIN_STRIDE * 64)
let used = 0

const more = (): number => {
  if (used + STANDIN_STRIDE > room.length) {
    const wider = new Float32Array(2 * room.length)
    wider.set(room)
    room = wider
  }
  const at = used
  used += STANDIN_STRIDE
  return at
}

/** Begin packing; one stem after another, in room that is used again. */
export const beginPack = (): void => {
  used = 0
}

export const packEllipsoid = (kind: number, o: Point3, a: Point3, b: Point3, c: Point3): void => {
  const i = more()
  room[i] = 0
  room[i + 1] = kind
  for (let k = 0; k < 3; k++) {
    room[i + 2 + k] = o[k]!
    room[i + 5 + k] = a[k]!
    room[i + 8 + k] = b[k]!
    room[i + 11 + k] = c[k]!
  }
}

export const packCapsule = (kind: number, a: Point3, b: Point3, r: number): void => {
  const i = more()
  room.fill(0, i, i + STANDIN_STRIDE)
  room[i] = 1
  room[i + 1] = kind
  for (let k = 0; k < 3; k++) {
    room[i + 2 + k] = a[k]!
    room[i + 5 + k] = b[k]!
  }
  room[i + 8] = r
}

/** What was packed since the beginning, on its own. */
export const endPack = (): Float32Array => room.slice(0, used)
