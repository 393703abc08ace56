import { formatNumber, parseNumber } from '../parts/format.ts'

export type Ends = [least: number | null, most: number | null]

interface Asked {
  /** What one of the value is on screen: 100 of a share in hundredths. */
  per: number
  unit: string
  /** In the value's own unit. */
  range: readonly [least: number, most: number]
}

/**
 * Two ends as a person typed them, in the value's own unit; '' is no end on that side. What can't be is said in a sentence.
 */
export const readEnds = (
  texts: readonly [string, string],
  { per, unit, range }: Asked,
): { ends: Ends } | { problem: string } => {
  const ends: Ends = [null, null]
  for (const i of [0, 1] as const) {
    if (texts[i].trim() === '') continue
    const number = parseNumber(texts[i])
    if (number === null) return { problem: 'A number, or nothing where there is no end.' }
    ends[i] = number / per
    if (ends[i] < range[0] || ends[i] > range[1]) {
      const [from, to] = range.map((x) => formatNumber(x * per, 3))
      return { problem: `From ${from} to ${to}${unit ? ` ${unit}` : ''}.` }
    }
  }
  const [least, most] = ends
  if (least === null && most === null) return { problem: 'One of the two, at least.' }
  if (least !== null && most !== null && least > most) return { problem: 'The least is more than the most.' }
  return { ends }
}
