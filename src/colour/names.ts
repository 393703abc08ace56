import { deltaE2000 } from './difference.ts'
import { ISCC_NBS } from './iscc-nbs.ts'
import { type Lab, labOf } from './lab.ts'

const ROWS: { name: string; lab: Lab }[] = ISCC_NBS.trim()
  .split('\n')
  .map((line) => ({ name: line.slice(7), lab: labOf(`#${line.slice(0, 6)}`) }))

const known = new Map<string, string>()

/**
 * A colour #rrggbb in words, lower case: the nearest of the 267 ISCC–NBS colours by ΔE00, `moderate purplish pink`.
 * Throws a RangeError for anything else than #rrggbb.
 */
export const colourName = (hex: string): string => {
  const key = hex.toLowerCase()
  let name = known.get(key)
  if (name === undefined) {
    const lab = labOf(key)
    let least = Number.POSITIVE_INFINITY
    for (const row of ROWS) {
      const distance = deltaE2000(lab, row.lab)
      if (distance < least) {
        least = distance
        name = row.name
      }
    }
    // Enough for any design; a colour being dragged must not fill the memory.
    if (known.size > 4096) known.clear()
    known.set(key, name as string)
  }
  return name as string
}
