import { type LightName, lightMatrix, linearToSrgb8, srgb8ToLinear } from '../colour/index.ts'
import type { Picture } from './types.ts'

/**
 * Turns a picture that is painted in daylight into what an eye sees of it in another light (`underLight` of the colour room),
 * pixel by pixel and in place. Daylight changes nothing.
 */
export const showInLight = ({ rgba }: Pick<Picture, 'rgba'>, light: LightName): void => {
  if (light === 'daylight') return
  const m = lightMatrix(light)
  for (let i = 0; i < rgba.length; i += 4) {
    if (rgba[i + 3] === 0) continue
    const r = srgb8ToLinear(rgba[i]!)
    const g = srgb8ToLinear(rgba[i + 1]!)
    const b = srgb8ToLinear(rgba[i + 2]!)
    rgba[i] = linearToSrgb8(m[0] * r + m[1] * g + m[2] * b)
    rgba[i + 1] = linearToSrgb8(m[3] * r + m[4] * g + m[5] * b)
    rgba[i + 2] = linearToSrgb8(m[6] * r + m[7] * g + m[8] * b)
  }
}
