import { LIGHTS, type Light, type TableShape } from '../../arrangement/index.ts'
import { formatLength, type Units } from '../../units/index.ts'

const WORDS: Record<Light, string> = {
  daylight: 'daylight',
  overcast: 'overcast sky',
  'warm-lamp': 'warm lamps',
  candle: 'candles',
}
/** What each light is; the colours come from colour/light.ts. */
export const ABOUT_LIGHT: Record<Light, string> = {
  daylight: '6500 K, as the drawing shows it',
  overcast: '7500 K, a little bluer',
  'warm-lamp': 'about 2700 K',
  candle: '1900 K, and dim',
}
export const lightWords = (light: Light): string => WORDS[light]
export const LIGHT_OPTIONS = LIGHTS.map((value) => ({ value, words: WORDS[value] }))

/** `round, 152.4 cm` or `long, 183 × 76 cm`. */
export const tableWords = (table: TableShape, units: Units): string =>
  table.shape === 'round'
    ? `round, ${formatLength(table.diameter, units)}`
    : `long, ${formatLength(table.length, units)} × ${formatLength(table.width, units)}`
