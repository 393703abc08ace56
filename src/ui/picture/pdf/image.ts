import type { Pixels } from '../rasters.ts'
import { type Objects, packedStream } from './objects.ts'

/**
 * Rows as differences from the row above, filter 2 of PNG, which flat parts pack best with (ISO 32000-1, 7.4.4.4).
 * @param channels of each pixel, from which byte of four they are taken
 */
const rows = ({ width, height, rgba }: Pixels, channels: readonly number[]): Uint8Array<ArrayBuffer> => {
  const n = channels.length
  const out = new Uint8Array(height * (1 + width * n))
  let at = 0
  for (let y = 0; y < height; y++) {
    out[at++] = 2
    const row = 4 * y * width
    for (let x = 0; x < width; x++)
      for (let c = 0; c < n; c++) {
        const i = row + 4 * x + channels[c]!
        out[at++] = rgba[i]! - (y > 0 ? rgba[i - 4 * width]! : 0)
      }
  }
  return out
}

const dictionary = ({ width, height }: Pixels, space: string, colours: number): string =>
  `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} /BitsPerComponent 8 /ColorSpace /${space} /DecodeParms << /Predictor 12 /Colors ${colours} /BitsPerComponent 8 /Columns ${width} >>`

/** An image with its alpha as a soft mask (8.9.5, 11.6.5.3). @returns its number */
export const addImage = async (objects: Objects, pixels: Pixels): Promise<number> => {
  const [colour, alpha] = await Promise.all([
    packedStream(dictionary(pixels, 'DeviceRGB', 3), rows(pixels, [0, 1, 2])),
    packedStream(dictionary(pixels, 'DeviceGray', 1), rows(pixels, [3])),
  ])
  const mask = objects.add(alpha)
  return objects.add({ ...colour, dictionary: `${colour.dictionary} /SMask ${mask} 0 R` })
}
