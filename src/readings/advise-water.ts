import type { Engine } from './engine.ts'
import { type Mechanical, stemsWhere } from './measure-mechanics.ts'
import { steeper } from './mend-stems.ts'
import type { Idea, Topic } from './trial.ts'
import { leftOf, named, percent } from './words.ts'

/** Cut ends that stand out of the water. */
export const aboutDry = (engine: Engine, m: Mechanical): Topic => {
  const { vessel } = engine.resolved
  const dry = stemsWhere(engine, (i) => m.holds[i]!.dry)
  const ids = dry.map((s) => s.id)
  const text = `Out of the water: the cut ${dry.length === 1 ? 'end' : 'ends'} of ${named(dry)}. `
  const fills = [0.8, 0.9].filter((fill) => fill > vessel.waterFill)
  return {
    ideas: [
      ...fills.map(
        (waterFill): Idea => ({
          edit: { do: 'set-vessel', set: { waterFill } },
          stems: ids,
          say: (v) => `${text}Fill it to ${percent(waterFill)}${leftOf(v.dryEnds)}.`,
        }),
      ),
      ...[0.3, 0.6].map(
        (share): Idea => ({
          edit: steeper(dry, share),
          stems: ids,
          say: (v) => `${text}Set steeper they reach deeper${leftOf(v.dryEnds)}.`,
        }),
      ),
    ],
    otherwise: { text: `${text}Give each a water tube, or set it steeper; keep it topped up.`, stems: ids },
  }
}

/** Bloom or leaf that lies in it. */
export const aboutUnder = (engine: Engine, m: Mechanical): Topic => {
  const { vessel } = engine.resolved
  const under = stemsWhere(engine, (i) => m.under[i]!)
  const ids = under.map((s) => s.id)
  const text = `Leaf or bloom of ${named(under)} lies under the waterline, where it rots. `
  const less = Math.round(75 * vessel.waterFill) / 100
  return {
    ideas: [
      ...[0.15, 0.3].map(
        (share): Idea => ({
          edit: { do: 'shift-stems', ids, by: [0, 0, Math.round(share * vessel.height)] },
          stems: ids,
          say: (v) => `${text}Raise it over the water${leftOf(v.underWater)}.`,
        }),
      ),
      {
        edit: { do: 'set-vessel', set: { waterFill: less } },
        stems: ids,
        say: (v) => `${text}Fill it to ${percent(less)} only${leftOf(v.underWater)}; top up on the table.`,
      },
    ],
    otherwise: { text: `${text}Strip what is below the rim, or fill it less.`, stems: ids },
  }
}
