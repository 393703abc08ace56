import type { Edit } from '../arrangement/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import type { Proportion } from './proportion.ts'
import type { Idea, Topic } from './trial.ts'
import { type Lengths, named } from './words.ts'

/** A stem is not cut back to less than this part of what stands over the rim. Ours, as where it hides a face. */
const SHORTEST = 0.35
const fives = (mm: number): number => 5 * Math.floor(mm / 5)

/** A low piece that ends higher over the table than low pieces do: what stands over that is cut. */
export const aboutCeiling = (engine: Engine, p: Proportion, lengths: Lengths): Topic[] => {
  const { vessel, stems, document } = engine.resolved
  const row = bandOf('proportion', 'topOverTable_mm', document)
  if (!row || p.top <= row.band[1]) return []
  const most = row.band[1]
  const text = `High for a low piece: it ends ${lengths(p.top)} over the table, wanted at most ${lengths(most)}. `
  const over = engine.ready
    .map(({ top }, i) => ({ top, stem: stems[i]! }))
    .filter(({ top }) => top + vessel.height > most)
    .sort((a, b) => b.top - a.top)
  const idea = (to: number): Idea[] => {
    const cut = over.flatMap(({ top, stem }) => {
      const z = stem.stem.tip[2]
      const factor = Math.floor((100 * (to - vessel.height - (top - z))) / z) / 100
      return z > 0 && factor >= SHORTEST && factor < 1 ? [{ stem, factor }] : []
    })
    if (cut.length === 0) return []
    const edits = cut.map(({ stem, factor }): Edit => ({ do: 'lengthen-stems', ids: [stem.id], factor }))
    return [
      {
        edit: edits.length === 1 ? edits[0]! : { do: 'many', label: 'shortened', edits },
        stems: cut.map(({ stem }) => stem.id),
        say: (v) =>
          `${text}Shorten ${named(cut.map(({ stem }) => stem))}, to end ${lengths(to)} over the table: the whole then ends ${lengths(v.topOverTable_mm as number)} over it.`,
      },
    ]
  }
  return [
    {
      ideas: [idea(fives(most)), idea(fives((most + p.top) / 2))].flat(),
      otherwise: {
        text: `${text}${named(over.slice(0, 3).map(({ stem }) => stem))}, stand${over.length > 1 ? '' : 's'} highest: shorter stems serve, or a lower vessel.`,
        stems: over.slice(0, 3).map(({ stem }) => stem.id),
      },
    },
  ]
}
