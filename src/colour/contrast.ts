import chroma from 'chroma-js'
import { isHex } from './srgb.ts'

/** Contrast ratio 1–21 of two colours #rrggbb. WCAG 2.2; text asks for 4.5 (3 if large), parts of controls for 3. */
export const contrastRatio = (first: string, second: string): number => {
  for (const hex of [first, second]) if (!isHex(hex)) throw new RangeError(`expected a colour as #rrggbb, got "${hex}"`)
  return chroma.contrast(first, second)
}
