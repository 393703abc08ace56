import { type LightName, lightMatrix } from '../colour/index.ts'
import type { Picture } from './types.ts'

/** Steps of the way back from linear light to a byte: fine enough that no byte is missed (IEC 61966-2-1). */
const STEPS = 4096

const LINEAR = Float32Array.from({ length: 256 }, (_, i) => {
  const c = i / 255
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
})
const BYTE = Uint8Array.from({ length: STEPS + 1 }, (_, i) => {
  const c = i / STEPS
  return Math.round(255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055))
})
const toByte = (linear: number): number => BYTE[linear <= 0 ? 0 : linear >= 1 ? STEPS : Math.round(linear * STEPS)]!

/**
 * Turns a picture that is painted in daylight into what an eye sees of it in another light (`underLight` of the colour room),
 * pixel by pixel and in place. Daylight changes nothing.
 */
export const showInLight = ({ rgba }: Picture, light: LightName): void => {
  if (light === 'daylight') return
  const m = lightMatrix(light)
  for (let i = 0; i < rgba.length; i += 4) {
    if (rgba[i + 3] === 0) continue
    const r = LINEAR[rgba[i]!]!
    const g = LINEAR[rgba[i + 1]!]!
    const b = LINEAR[rgba[i + 2]!]!
    rgba[i] = toByte(m[0] * r + m[1] * g + m[2] * b)
    rgba[i + 1] = toByte(m[3] * r + m[4] * g + m[5] * b)
    rgba[i + 2] = toByte(m[6] * r + m[7] * g + m[8] * b)
  }
}
