import type { Light } from '../../arrangement/index.ts'

const WORDS: Record<Light, string> = {
  daylight: 'daylight',
  overcast: 'the light of an overcast sky',
  'warm-lamp': 'the light of warm lamps',
  candle: 'candlelight',
}
/** `colours shown in …`. */
export const lightWords = (light: Light): string => WORDS[light]
