import { type Arrangement, applyEdit, newArrangement } from '../../../src/arrangement/index.ts'

export const known = { plants: new Set(['rose-garden']) }

export const titled = (title: string): Arrangement => ({ ...newArrangement(), title })

/** A design with one more stem for each step, so that each state can be told from the others. */
export const grown = (document: Arrangement): Arrangement =>
  applyEdit(document, {
    do: 'add-stems',
    stems: [
      {
        id: '',
        plant: 'rose-garden',
        role: 'focal',
        colour: { slot: 0 },
        openness: 0.5,
        mouth: [0, 0],
        tip: [0, 0, 90],
        bend: 0,
        piece: 'whole',
      },
    ],
  })

export const quota = (): Error => new DOMException('No room', 'QuotaExceededError')
