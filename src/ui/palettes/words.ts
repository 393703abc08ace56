import type { Light } from '../../arrangement/index.ts'

/** How one sees in each light: `by candles`. */
export const BY_LIGHT: Record<Light, string> = {
  daylight: 'by daylight',
  overcast: 'under an overcast sky',
  'warm-lamp': 'by warm lamps',
  candle: 'by candles',
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven']
/** `once`, `twice`, `four times`. */
export const timesWords = (n: number): string => (n === 1 ? 'once' : n === 2 ? 'twice' : `${NUMBERS[n] ?? n} times`)

/** `21 %`; what is seen but rounds to nothing is under one. */
export const percent = (share: number): string =>
  share > 0 && share < 0.005 ? 'under 1 %' : `${Math.round(share * 100)} %`

/** A name that is not taken yet: `Of a photo`, `Of a photo 2`. */
export const freeName = (name: string, taken: readonly string[]): string => {
  for (let n = 1; ; n++) {
    const next = n === 1 ? name : `${name} ${n}`
    if (!taken.includes(next)) return next
  }
}
