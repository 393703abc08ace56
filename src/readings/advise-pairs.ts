import type { Engine } from './engine.ts'
import { READING_NAMES } from './names.ts'
import { handledBy, takesOut } from './touched.ts'
import { type Harmful, type Idea, resolveAfter, type Topic } from './trial.ts'
import type { ReadingId } from './types.ts'
import type { Lengths } from './words.ts'

export type Advisers = Record<ReadingId, (engine: Engine, lengths: Lengths) => Topic[]>

/** Second steps that are tried after one first step. Ours. */
const SECONDS = 3

/**
 * Two steps as one: where an idea helps its own reading but harms another, what that other one's adviser would do then is
 * done along with it. Looks at the design after the first step, where the engine is left.
 */
export const pairsFor = (
  engine: Engine,
  before: Engine['resolved'],
  first: Idea,
  { harmed }: Harmful,
  advisers: Advisers,
  lengths: Lengths,
): Idea[] => {
  engine.update(resolveAfter(before, first.edit))
  const known = new Set(before.stems.map((s) => s.id))
  const topics = advisers[harmed](engine, lengths)
  const each = Math.ceil(SECONDS / Math.max(1, topics.length))
  return (
    topics
      .flatMap(({ ideas }) => ideas.slice(0, each))
      .slice(0, SECONDS)
      // Stems are called by their places, which change where some are taken out: then only what names none serves.
      .filter((second) => !takesOut(first.edit) || second.stems.length === 0)
      // What one step lengthens the other is not to shorten again.
      .filter((second) => {
        const done = handledBy(first.edit)
        return !handledBy(second.edit).some((x) => done.includes(x))
      })
      .map(
        (second): Idea => ({
          edit: { do: 'many', label: 'two steps of advice', edits: [first.edit, second.edit] },
          stems: [...new Set([...first.stems, ...second.stems])].filter((id) => known.has(id)),
          say: (after, of) =>
            `${first.say(after, of)} That alone would harm “${READING_NAMES[harmed]}”, so at once: ${second.say(of(harmed), of)}`,
        }),
      )
  )
}
