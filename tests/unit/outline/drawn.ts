import type { Marks, Photo } from '../../../src/geometry/index.ts'

type Rgb = readonly [number, number, number]

export interface Drawn {
  width: number
  height: number
  /** Middle of the base, pixels. */
  foot: [number, number]
  /** Base to rim and half of the mouth, pixels. */
  tall: number
  half: number
  /** Half-width over the mouth's by height (0 base … 1 rim). */
  profile: (h: number) => number
  /** Roll of the camera, degrees. */
  roll?: number
  wall?: Rgb
  glaze?: Rgb
  /** A table below the base. */
  table?: Rgb
  /** Light falls off across the wall by this factor from left to right. */
  falloff?: number
  /** Grain of the camera, bytes either way. */
  grain?: number
  /** Light left in the shadow that it casts to the right of its base; 1 is none. */
  shadow?: number
}

/** Draws a vessel as a photo would show it, four samples a pixel, round in its shading. Code of the tests alone. */
export const drawVessel = (d: Drawn): Photo => {
  const rgba = new Uint8ClampedArray(d.width * d.height * 4)
  const roll = ((d.roll ?? 0) * Math.PI) / 180
  const [cos, sin] = [Math.cos(roll), Math.sin(roll)]
  const wall = d.wall ?? [222, 219, 212]
  const glaze = d.glaze ?? [70, 96, 120]
  let seed = 11
  const grain = () => {
    seed = (seed * 1103515245 + 12345) % 2147483648
    return (seed / 2147483648 - 0.5) * 2 * (d.grain ?? 0)
  }
  const colourAt = (px: number, py: number): number[] => {
    const [dx, dy] = [px - d.foot[0], py - d.foot[1]]
    const [x, y] = [dx * cos + dy * sin, dx * sin - dy * cos]
    const h = y / d.tall
    const w = h >= 0 && h <= 1 ? d.half * d.profile(h) : 0
    if (Math.abs(x) < w) {
      const shade = 0.55 + 0.45 * Math.sqrt(1 - (x / w) ** 2) - 0.12 * (x / w)
      return glaze.map((v) => v * shade)
    }
    const ground = y < 0 && d.table ? d.table : wall
    const light = 1 - (d.falloff ?? 0) * (px / d.width)
    // Deepest where it touches, soft toward its end.
    const [sx, sy] = [(x - d.half * 0.5) / (d.half * 1.5), y / (d.tall * 0.22)]
    const deep = Math.max(0, 1 - Math.hypot(sx, sy))
    const smooth = deep * deep * (3 - 2 * deep)
    return ground.map((v) => v * light * (1 - (1 - (d.shadow ?? 1)) * smooth))
  }
  for (let y = 0; y < d.height; y++)
    for (let x = 0; x < d.width; x++) {
      const sum = [0, 0, 0]
      for (let k = 0; k < 4; k++) {
        const [r, g, b] = colourAt(x + (k & 1 ? 0.75 : 0.25), y + (k & 2 ? 0.75 : 0.25)) as [number, number, number]
        sum[0]! += r / 4
        sum[1]! += g / 4
        sum[2]! += b / 4
      }
      rgba.set([...sum.map((v) => v + grain()), 255], (y * d.width + x) * 4)
    }
  return { rgba, width: d.width, height: d.height }
}

/** The marks that an exact hand would set. */
export const marksOf = ({ foot: [fx, fy], tall, half, roll = 0 }: Drawn): Marks => {
  const a = (roll * Math.PI) / 180
  const at = (x: number, y: number): [number, number] => [
    fx + x * Math.cos(a) + y * Math.sin(a),
    fy + x * Math.sin(a) - y * Math.cos(a),
  ]
  return { left: at(-half, tall), right: at(half, tall), foot: [fx, fy] }
}

/** The same photo with left and right changed. */
export const mirrored = ({ rgba, width, height }: Photo): Photo => {
  const out = new Uint8ClampedArray(rgba.length)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const from = (y * width + width - 1 - x) * 4
      out.set(rgba.subarray(from, from + 4), (y * width + x) * 4)
    }
  return { rgba: out, width, height }
}
