import type { Photo } from '../../../src/geometry/index.ts'
import { type Drawn, drawVessel } from './drawn.ts'

/** A bowl on a kitchen table, held a little askew, with a soft shadow, in light that falls off to the right. */
export const KITCHEN: Drawn = {
  width: 900,
  height: 675,
  foot: [440, 520],
  tall: 300,
  half: 205,
  profile: (h) => 0.55 + 0.45 * Math.sqrt(1 - (1 - h) ** 2),
  roll: 1.5,
  wall: [206, 200, 188],
  glaze: [62, 92, 112],
  table: [146, 112, 82],
  falloff: 0.2,
  shadow: 0.55,
}

const randomBy = (seed: number) => () => {
  seed = (seed * 1103515245 + 12345) % 2147483648
  return seed / 2147483648
}

/** What lies about on the table, as ellipses: middle and half axes as shares of the photo, and a colour. */
const CLUTTER = [
  [0.1, 0.93, 0.09, 0.03, [196, 62, 48]],
  [0.9, 0.95, 0.12, 0.028, [238, 236, 226]],
  [0.74, 0.97, 0.05, 0.02, [60, 96, 52]],
  [0.33, 0.975, 0.04, 0.016, [236, 208, 90]],
] as const

/** The lens darkens toward the corners: cos⁴ of the angle, here 30° at the corner; on sRGB bytes, which go about as light^(1/2.2). */
const vignette = (x: number, y: number): number => (1 + (x * x + y * y) * Math.tan(Math.PI / 6) ** 2) ** (-2 / 2.2)

interface Thrown {
  width: number
  height: number
  /** sRGB bytes with fractions: r, g, b. */
  rgb: Float64Array
}

/** What a phone's lens throws of a drawn vessel: things on the table, vignetting, not quite sharp. Code of the tests alone. */
export const throughLens = (drawn: Drawn): Thrown => {
  const { rgba, width, height } = drawVessel(drawn)
  for (const [cx, cy, rx, ry, colour] of CLUTTER)
    for (let y = Math.floor((cy - ry) * height); y < Math.min(height, (cy + ry) * height); y++)
      for (let x = Math.max(0, Math.floor((cx - rx) * width)); x < Math.min(width, (cx + rx) * width); x++)
        if (((x / width - cx) / rx) ** 2 + ((y / height - cy) / ry) ** 2 < 1)
          rgba.set(
            colour.map((v) => v * (0.9 + 0.1 * Math.sin(x / 5))),
            (y * width + x) * 4,
          )
  const rgb = new Float64Array(width * height * 3)
  const half = Math.hypot(width, height) / 2
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const light = vignette((x - width / 2) / half, (y - height / 2) / half)
      for (let c = 0; c < 3; c++) {
        let sum = 0
        for (let dy = -1; dy <= 1; dy++)
          for (let dx = -1; dx <= 1; dx++) {
            const [u, v] = [Math.min(width - 1, Math.max(0, x + dx)), Math.min(height - 1, Math.max(0, y + dy))]
            sum += rgba[(v * width + u) * 4 + c]! * (dx === 0 ? 2 : 1) * (dy === 0 ? 2 : 1)
          }
        rgb[(y * width + x) * 3 + c] = (sum / 16) * light
      }
    }
  return { width, height, rgb }
}

/** As the sensor takes it: noise that grows with the light and has a floor; `times` as much of it in the evening. */
export const withNoise = ({ width, height, rgb }: Thrown, seed: number, times = 1): Photo => {
  const random = randomBy(seed)
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255)
  rgb.forEach((value, i) => {
    // The sum of three even ones is near enough to a bell.
    const bell = random() + random() + random() - 1.5
    rgba[Math.floor(i / 3) * 4 + (i % 3)] = value + times * bell * (3 + 0.35 * Math.sqrt(value))
  })
  return { rgba, width, height }
}

/** A drawn vessel as a phone would show it. Seeded. */
export const asPhoto = (drawn: Drawn, seed = 7): Photo => withNoise(throughLens(drawn), seed)
