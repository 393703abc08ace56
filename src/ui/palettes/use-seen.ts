import { useEffect, useState } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import type { ReadingResult } from '../../readings/index.ts'
import { readApart, type SeenColours } from '../../state/index.ts'

export interface Seen {
  /** What it is of. */
  document: Arrangement
  harmony: ReadingResult | undefined
  colours: SeenColours
}

/** Harmony and seen colours of a document that need not be on the sheet; the last ones stay until the new ones are there. */
export const useSeen = (document: Arrangement): Seen | null => {
  const [seen, setSeen] = useState<Seen | null>(null)
  useEffect(() => {
    let live = true
    readApart(document).then(({ readings, colours }) => {
      if (live) setSeen({ document, colours, harmony: readings.find((r) => r.id === 'palette-harmony') })
    })
    return () => {
      live = false
    }
  }, [document])
  return seen
}
