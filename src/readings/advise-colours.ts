import type { Edit } from '../arrangement/index.ts'
import { hexOf, type Lab, labOf } from '../colour/index.ts'
import type { Engine } from './engine.ts'
import { measureColours, stemsOfGroup } from './palette-harmony.ts'
import type { Topic } from './trial.ts'
import { listed, numbered } from './words.ts'

/** A pair under this is worth naming: the lowest quarter of pairs in human-made palettes (see colour's harmonyScale). */
const LOW_PAIR = -0.387

/** Gives stems a colour: through the palette where they follow one of its slots alone, else one by one. */
const recolour = (engine: Engine, ids: readonly string[], hex: string): Edit => {
  const { document, stems } = engine.resolved
  const named = new Set(ids)
  const first = stems.find((s) => named.has(s.id))?.stem.colour
  if (typeof first === 'object') {
    const same = stems.filter((s) => typeof s.stem.colour === 'object' && s.stem.colour.slot === first.slot)
    const slot = document.palette.slots[first.slot]
    if (slot && same.length === ids.length && same.every((s) => named.has(s.id)))
      return { do: 'set-slot', index: first.slot, slot: { ...slot, colour: hex } }
  }
  return { do: 'set-stems', ids: [...ids], set: { colour: hex } }
}

/** Advice on the pair of flower colours that agrees least; quiet is not better than vivid, so it only says how to go there. */
export const adviseColours = (engine: Engine): Topic[] => {
  const c = measureColours(engine)
  const worst = c?.flowers.worst
  if (!c?.flowers.mean || !worst || worst.harmony > LOW_PAIR) return []
  const before = c.flowers.mean.harmony
  const small = worst.first.share <= worst.second.share ? worst.first : worst.second
  const large = small === worst.first ? worst.second : worst.first
  const [ids, others] = [stemsOfGroup(engine, small.ids), stemsOfGroup(engine, large.ids)]
  const { stems } = engine.resolved
  const of = (id: string | undefined) => stems.find((s) => s.id === id)
  const [a, b] = [of(ids[0]), of(others[0])]
  if (!a || !b) return []
  const [from, to]: [Lab, Lab] = [labOf(a.colour), labOf(b.colour)]
  const more = ids.length > 1 ? ` (and ${ids.length - 1} more of its colour)` : ''
  const text = `The pair that agrees least is ${listed([numbered(a) + more, numbered(b)])}. For a quieter whole bring the first nearer the second; for a vivid one leave them`
  const stems_ = [...ids, ...others]
  return [
    {
      ideas: [0.35, 0.6].map((k) => {
        const mixed = from.map((v, i) => v + k * (to[i]! - v)) as Lab
        return {
          edit: recolour(engine, ids, hexOf(mixed)),
          stems: stems_,
          say: (v) => `${text}: harmony goes from ${before.toFixed(2)} to ${(v.harmonyFlowers as number).toFixed(2)}.`,
        }
      }),
      otherwise: { text: `${text}.`, stems: stems_ },
    },
  ]
}
