import type { Edit } from '../arrangement/index.ts'
import type { Engine } from './engine.ts'
import { type Mechanical, stemsWhere } from './measure-mechanics.ts'
import type { Topic } from './trial.ts'
import { throughTable } from './under-table.ts'
import { type Lengths, leftOf, named } from './words.ts'

/** Steps of a lift, mm: so that what is said is what is done. */
const STEP = 5
const stepsUp = (mm: number): number => STEP * Math.ceil(mm / STEP)

/** Stems drawn through the table on which the vessel stands: raised until they lie on it, or another vessel. */
export const aboutTable = (engine: Engine, m: Mechanical, lengths: Lengths): Topic => {
  const { vessel, stems: all } = engine.resolved
  const stems = stemsWhere(engine, (i) => throughTable(m.below_mm[i]!) > 0)
  const ids = stems.map((s) => s.id)
  const deepest = Math.max(...m.below_mm)
  const one = stems.length === 1
  const text = `${named(stems)}, run${one ? 's' : ''} through the table, by up to ${lengths(deepest)}. `
  const edits = stems.map((s): Edit => {
    const [x, y, z] = s.stem.tip
    return { do: 'set-stems', ids: [s.id], set: { tip: [x, y, z + stepsUp(m.below_mm[all.indexOf(s)]!)] } }
  })
  const height = vessel.height + stepsUp(deepest)
  return {
    ideas: [
      {
        edit: one ? edits[0]! : { do: 'many', label: 'Stems raised onto the table', edits },
        stems: ids,
        say: (v) =>
          `${text}Raise ${one ? 'it' : 'them'} until ${one ? 'it lies' : 'they lie'} on it${leftOf(v.throughTable)}.`,
      },
      {
        edit: { do: 'set-vessel', set: { height } },
        stems: ids,
        say: (v) =>
          `${text}Set it in a vessel ${lengths(height)} high instead of ${lengths(vessel.height)}${leftOf(v.throughTable)}.`,
      },
    ],
    otherwise: { text: `${text}Let ${one ? 'it' : 'them'} lie on it, or choose a taller vessel.`, stems: ids },
  }
}
