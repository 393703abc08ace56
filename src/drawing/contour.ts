import type { Sprite } from './types.ts'

type Loop = [x: number, y: number][]

/** Loops shorter than this many steps are specks. Ours. */
const LEAST_STEPS = 12
/** Corners cut off twice leave a smooth line (G. Chaikin, An algorithm for high speed curve generation, 1974). */
const ROUNDS = 2

/** The edges of a mask as closed loops of cell corners, what is inside on the right. Holes are loops too. */
const loopsOf = (inside: Uint8Array, width: number, height: number): Loop[] => {
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? 0 : inside[y * width + x]!
  const walked = new Uint8Array((width + 1) * (height + 1))
  const loops: Loop[] = []
  const DX = [1, 0, -1, 0]
  const DY = [0, 1, 0, -1]
  for (let y = 0; y <= height; y++)
    for (let x = 0; x < width; x++) {
      if (!at(x, y) || at(x, y - 1) || walked[y * (width + 1) + x]) continue
      const loop: Loop = []
      let [cx, cy, d] = [x, y, 0]
      do {
        if (d === 0) walked[cy * (width + 1) + cx] = 1
        loop.push([cx, cy])
        cx += DX[d]!
        cy += DY[d]!
        // The two cells ahead of this corner, to the left and to the right of the way.
        const ahead = [
          [at(cx, cy - 1), at(cx, cy)],
          [at(cx, cy), at(cx - 1, cy)],
          [at(cx - 1, cy), at(cx - 1, cy - 1)],
          [at(cx - 1, cy - 1), at(cx, cy - 1)],
        ][d]!
        if (ahead[0]) d = (d + 3) % 4
        else if (!ahead[1]) d = (d + 1) % 4
      } while (!(cx === x && cy === y && d === 0))
      if (loop.length >= LEAST_STEPS) loops.push(loop)
    }
  return loops
}

const cutCorners = (loop: Loop): Loop => {
  const out: Loop = []
  for (let i = 0; i < loop.length; i++) {
    const [ax, ay] = loop[i]!
    const [bx, by] = loop[(i + 1) % loop.length]!
    out.push([0.75 * ax + 0.25 * bx, 0.75 * ay + 0.25 * by], [0.25 * ax + 0.75 * bx, 0.25 * ay + 0.75 * by])
  }
  return out
}

/** Leaves out points nearer than `least` to the line through their neighbours. */
const simplified = (loop: Loop, least: number): Loop => {
  const out: Loop = []
  for (let i = 0; i < loop.length; i++) {
    const [ax, ay] = out[out.length - 1] ?? loop[loop.length - 1]!
    const [bx, by] = loop[i]!
    const [cx, cy] = loop[(i + 1) % loop.length]!
    const long = Math.hypot(cx - ax, cy - ay)
    const off = long > 0 ? Math.abs((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / long : least
    if (off >= least) out.push([bx, by])
  }
  return out.length >= 3 ? out : loop
}

/**
 * The whole outline of a stem, hidden parts too, as closed smooth lines.
 * @param scale pixels per mm that the sprite was painted at
 * @returns lines of x, y pairs one after the other, mm relative to the tip as seen, up positive; not closed by a repeat
 */
export const contourOf = (sprite: Sprite, scale: number): number[][] => {
  const { width, height, rgba } = sprite
  const inside = new Uint8Array(width * height)
  for (let i = 0; i < inside.length; i++) inside[i] = rgba[4 * i + 3]! >= 128 ? 1 : 0
  return loopsOf(inside, width, height).map((loop) => {
    let line = loop.filter((_, i) => i % 2 === 0)
    for (let round = 0; round < ROUNDS; round++) line = cutCorners(line)
    return simplified(line, 0.12).flatMap(([x, y]) => [(x + sprite.left) / scale, -(y + sprite.top) / scale])
  })
}
