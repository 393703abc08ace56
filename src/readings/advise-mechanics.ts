import type { Edit, Mechanics } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { aboutNeck } from './advise-neck.ts'
import { aboutTable } from './advise-table.ts'
import { aboutDry, aboutUnder } from './advise-water.ts'
import { bandOf } from './bands.ts'
import { openingFor, thicknessOf } from './crowding.ts'
import type { Engine } from './engine.ts'
import { reasonsOf, WHY } from './loose-words.ts'
import { type Mechanical, measureMechanics, stemsWhere } from './measure-mechanics.ts'
import { ontoPins, steeper, toRim } from './mend-stems.ts'
import type { Idea, Topic } from './trial.ts'
import { throughTable } from './under-table.ts'
import { type Lengths, leftOf, named, percent } from './words.ts'

const FILL: Partial<Record<Mechanics, string>> = {
  netting: 'Fill the mouth with crumpled netting (gloves and eye protection while cutting it)',
  'tape-grid': 'Tape a grid over the dry rim',
}
/** A narrower neck takes no netting, mm. Ours. */
const WIDE = 50

/** What holds better than what is there. Netting shows through glass, a grid does not (common practice). */
const betterIn = (engine: Engine, m: Mechanical): Mechanics[] => {
  const { mechanics, material } = engine.resolved.vessel
  if (m.opening_mm < WIDE || !(mechanics === 'none' || mechanics === 'tape-grid')) return []
  return mechanics === 'none' && material === 'glass' ? ['tape-grid', 'netting'] : ['netting']
}

const aboutLoose = (engine: Engine, m: Mechanical): Topic => {
  const { vessel, stems } = engine.resolved
  // What does not go in is told apart (advise-neck.ts).
  const loose = stemsWhere(engine, (i) => m.holds[i]!.loose !== null && m.holds[i]!.loose !== 'neck')
  const ids = loose.map((s) => s.id)
  const why = reasonsOf(m.holds).find(([reason]) => reason !== 'neck')![0]
  const text =
    loose.length === 1
      ? `${named(loose)}, would not stay as drawn: it ${WHY[why][0]}. `
      : `${loose.length} of ${stems.length} stems would not stay as drawn: most ${WHY[why][1]}. `
  const idea = (edit: Edit, words: string): Idea => ({
    edit,
    stems: ids,
    say: (v) => `${text}${words}${leftOf(v.unsupported)}.`,
  })
  const they = named(loose)
  const better = betterIn(engine, m)
  const rim = idea(toRim(vessel, loose), `Let ${they}, cross at the rim`)
  const steep = [0.3, 0.6].map((share) =>
    idea(
      steeper(loose, share),
      `Set ${they}, steeper, ${loose.length === 1 ? 'its head' : 'their heads'} ${percent(share)} nearer over where ${loose.length === 1 ? 'it crosses' : 'they cross'}`,
    ),
  )
  const short = [0.85, 0.7].map((factor) =>
    idea({ do: 'lengthen-stems', ids, factor }, `Recut ${they}, ${percent(1 - factor)} shorter over the rim`),
  )
  const swaps = better.map((mechanics) => idea({ do: 'set-vessel', set: { mechanics } }, FILL[mechanics]!))
  const pins = why === 'pins' ? [idea(ontoPins(vessel, loose), `Move ${they}, inward, onto the pins`)] : []
  // What has no neighbour that stands must be held by the others that fall, or by another vessel.
  const all = loose.length === stems.length
  const brace = !all
    ? `brace ${they}, on neighbours`
    : stems.length > 2
      ? 'tie them as a posy, which holds itself, and set it in as one'
      : 'choose a vessel with a narrower mouth'
  const hangs = why === 'far' || why === 'lifts'
  return {
    ideas: [...pins, ...swaps, rim, ...(hangs ? [...short, ...steep] : [...steep, ...short])],
    otherwise: {
      text: `${text}${better.length > 0 ? `${FILL[better[0]!]}, and greens over it; or ` : ''}${brace}.`.replace(
        /\. [a-z]/,
        (c) => c.toUpperCase(),
      ),
      stems: ids,
    },
  }
}

/** Fewest stems to take out, least seen first, until the neck is as full as wanted. */
const spare = (engine: Engine, m: Mechanical, most: number): ResolvedStem[] => {
  const { stems } = engine.resolved
  const { pixels } = engine.seen()
  const seen = (i: number): number => pixels[i * 4 + 1]! + pixels[i * 4 + 2]!
  const order = stems.map((_, i) => i).filter((i) => stems[i]!.role !== 'focal')
  order.sort((a, b) => seen(a) - seen(b) || a - b)
  const gone = new Set<number>()
  const full = (): number =>
    (openingFor(stems.flatMap((s, i) => (gone.has(i) ? [] : [thicknessOf(s)]))) / m.opening_mm) ** 2
  for (const i of order) {
    if (full() <= most) break
    gone.add(i)
  }
  return stems.filter((_, i) => gone.has(i))
}

const aboutCrowding = (engine: Engine, m: Mechanical, most: number): Topic => {
  const text = `The neck is ${percent(m.crowding)} as full as circles pack, wanted at most ${percent(most)}. `
  const gone = spare(engine, m, most)
  const ids = gone.map((s) => s.id)
  const otherwise = { text: `${text}Take fewer or thinner stems, or a vessel with a wider neck.`, stems: ids }
  if (ids.length === 0) return { ideas: [], otherwise }
  return {
    ideas: [
      {
        edit: { do: 'remove-stems', ids },
        stems: ids,
        say: (v) => `${text}Leave out ${named(gone)}, which are seen least: then ${percent(v.crowding as number)}.`,
      },
    ],
    otherwise,
  }
}

/** What is amiss with how the stems are held and watered, and ideas against it. */
export const adviseMechanics = (engine: Engine, lengths: Lengths): Topic[] => {
  const m = measureMechanics(engine)
  if (!m) return []
  const most = bandOf('mechanics', 'crowding', engine.resolved.document)?.band[1] ?? 1
  const topics: Topic[] = []
  if (m.holds.some((h) => h.loose === 'neck')) topics.push(aboutNeck(engine, m, lengths))
  if (m.below_mm.some((mm) => throughTable(mm) > 0)) topics.push(aboutTable(engine, m, lengths))
  if (m.holds.some((h) => h.loose && h.loose !== 'neck')) topics.push(aboutLoose(engine, m))
  if (m.holds.some((h) => h.dry)) topics.push(aboutDry(engine, m))
  const goIn = stemsWhere(engine, (i) => m.holds[i]!.loose !== 'neck').map(thicknessOf)
  if (goIn.length > 0 && (openingFor(goIn) / m.opening_mm) ** 2 > most) topics.push(aboutCrowding(engine, m, most))
  if (m.under.some(Boolean)) topics.push(aboutUnder(engine, m))
  return topics
}
