import type { Edit } from '../arrangement/index.ts'
import { type ResolvedStem, viewAxes } from '../geometry/index.ts'
import { grouped } from './advise-words.ts'
import { bandOf, isOutside } from './bands.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, turnOf } from './extents.ts'
import { dome } from './regroup.ts'
import type { Idea, Topic } from './trial.ts'
import { type Balance, measureBalance, offsetWords } from './visual-balance.ts'
import { weightOf } from './visual-weight.ts'
import { bandWords, type Lengths, named, numbered, percent, round, sideWords, steps } from './words.ts'

/** A stem as one weight, seen from one way round: only for choosing what to try, since what is tried is measured. */
interface Weight {
  stem: ResolvedStem
  /** Place across, right positive, mm. */
  x: number
  /** Visible pixels of blooms and leaves, and their weight. */
  pixels: number
  weight: number
}

const weightsOf = (engine: Engine, way: number): Weight[] => {
  const own = engine.seen().byWay[way]!
  const { right } = viewAxes({ turn: turnOf(way), pitch: 0 })
  return engine.resolved.stems.map((stem, i) => {
    const { tip } = stem.stem
    const [bloom, leaf] = [own[i * 4 + 1]!, own[i * 4 + 2]!]
    return {
      stem,
      x: tip[0] * right[0] + tip[1] * right[1],
      pixels: bloom + leaf,
      weight: bloom * weightOf(stem, 0) + leaf * weightOf(stem, 1),
    }
  })
}

/** Two stems in each other's place. */
const swapPlaces = (a: ResolvedStem, b: ResolvedStem): Edit => ({
  do: 'many',
  label: 'change places',
  edits: [
    { do: 'set-stems', ids: [a.id], set: { tip: b.stem.tip, mouth: b.stem.mouth } },
    { do: 'set-stems', ids: [b.id], set: { tip: a.stem.tip, mouth: a.stem.mouth } },
  ],
})

const swapColours = (a: ResolvedStem, b: ResolvedStem): Edit => ({
  do: 'many',
  label: 'change colours',
  edits: [
    { do: 'set-stems', ids: [a.id], set: { colour: b.stem.colour } },
    { do: 'set-stems', ids: [b.id], set: { colour: a.stem.colour } },
  ],
})

/** Heavier and lighter ones by pairs, those first that bring the centre nearest to the axis. */
const bestPairs = (
  heavy: readonly Weight[],
  light: readonly Weight[],
  gain: (a: Weight, b: Weight) => number,
): [Weight, Weight][] =>
  heavy
    .flatMap((a) => light.map((b) => ({ a, b, gain: gain(a, b) })))
    .filter((p) => p.gain > 0)
    .sort((p, q) => q.gain - p.gain)
    .map(({ a, b }) => [a, b])

const MOST = 8

const aboutSides = (engine: Engine, b: Balance, lengths: Lengths): Topic => {
  const { way, offsetWorst: offset } = b
  const turn = turnOf(way)
  const across = Math.abs(b.centres[way]![0])
  const { right } = viewAxes({ turn, pitch: 0 })
  const weights = weightsOf(engine, way)
  const total = weights.reduce((sum, w) => sum + w.weight, 0)
  const sign = Math.sign(offset)
  // How far the centre has to go toward the lighter side, in weight × mm.
  const owed = across * total
  const near = (moved: number): number => owed - Math.abs(owed - moved)
  const heavy = weights
    .filter((w) => w.x * sign > 0 && w.weight > 0)
    .sort((p, q) => q.weight * Math.abs(q.x) - p.weight * Math.abs(p.x))
  const light = weights.filter((w) => w.x * sign <= 0)
  const [some, others] = [heavy.slice(0, MOST), light.sort((p, q) => p.weight - q.weight).slice(0, MOST)]
  const text = `Seen from ${sideWords(turn)}, the weight lies ${offsetWords(offset)}`
  const to = sign > 0 ? 'left' : 'right'
  const idea = (edit: Edit, stems: readonly ResolvedStem[], what: string): Idea => ({
    edit,
    stems: stems.map((s) => s.id),
    say: (v) => `${text}: ${what}; at its worst it then lies ${offsetWords(v.offsetWorst as number)}.`,
  })

  const mirrors = some
    .map((w) => ({ w, gain: near(2 * Math.abs(w.x) * w.weight) }))
    .filter(({ gain }) => gain > 0)
    .sort((p, q) => q.gain - p.gain)
    .map(({ w: { stem } }) =>
      idea({ do: 'mirror-stems', ids: [stem.id], turn }, [stem], `set ${numbered(stem)}, over on the ${to}`),
    )
  const places = bestPairs(some, others, (p, q) => near((p.weight - q.weight) * Math.abs(p.x - q.x))).map(([p, q]) =>
    idea(
      swapPlaces(p.stem, q.stem),
      [p.stem, q.stem],
      `let ${numbered(p.stem)}, and ${numbered(q.stem)}, change places`,
    ),
  )
  // Each keeps its place; what is darker goes to the lighter side.
  const tone = (w: Weight): number => weightOf(w.stem, 0)
  const colours = bestPairs(
    some.filter((w) => w.stem.plant.formClass !== 'foliage'),
    light.filter((w) => w.stem.plant.formClass !== 'foliage' && w.pixels > 0),
    (p, q) => near((tone(p) - tone(q)) * (p.pixels * Math.abs(p.x) + q.pixels * Math.abs(q.x))),
  ).map(([p, q]) =>
    idea(
      swapColours(p.stem, q.stem),
      [p.stem, q.stem],
      `let ${numbered(p.stem)}, and ${numbered(q.stem)}, change colours`,
    ),
  )
  const shift = (few: readonly Weight[], mm: number, what: string): Idea =>
    idea(
      {
        do: 'shift-stems',
        ids: few.map((w) => w.stem.id),
        by: [-sign * mm * right[0] + 0, -sign * mm * right[1] + 0, 0],
      },
      few.map((w) => w.stem),
      `move ${what} ${lengths(mm)} to the ${to}`,
    )
  const three = heavy.slice(0, 3)
  const heft = three.reduce((sum, w) => sum + w.weight, 0)
  const shifts = heft > 0 ? [shift(three, steps(Math.min(owed / heft, 80)), `${named(three.map((w) => w.stem))},`)] : []
  const all = [shift(weights, steps(across), 'all heads')]
  return {
    ideas: [mirrors, places, colours, shifts, all, mirrors.slice(1), places.slice(1), colours.slice(1)]
      .flatMap((ideas) => ideas.slice(0, 1))
      .concat(places.slice(2, 4), mirrors.slice(2, 4)),
    otherwise: {
      text: `${text}: ${named(three.map((w) => w.stem))}, weigh${three.length > 1 ? '' : 's'} most there; moving what is there costs other readings, so another dark or large bloom on the ${to} serves.`,
      stems: three.map((w) => w.stem.id),
    },
  }
}

const aboutHeight = (engine: Engine, b: Balance, [least, most]: readonly [number, number]): Topic => {
  const high = b.topHeaviness > most
  const weights = Array.from({ length: HALF_WAYS }, (_, way) => weightsOf(engine, way))
  const all = engine.resolved.stems
    .map((stem, i) => ({
      stem,
      x: stem.stem.tip[2],
      pixels: 0,
      weight: weights.reduce((sum, w) => sum + w[i]!.weight, 0),
    }))
    .sort((p, q) => q.x * q.weight - p.x * p.weight)
  const text = `The weight lies ${high ? 'high' : 'low'}, at ${percent(b.topHeaviness)} of the height, wanted ${bandWords([least, most], { unit: '', scale: [0, 1] })}`
  const idea = (edit: Edit, stems: readonly ResolvedStem[], what: string): Idea => ({
    edit,
    stems: stems.map((s) => s.id),
    say: (v) => `${text}: ${what}; it is then at ${percent(v.topHeaviness as number)}.`,
  })
  // The heavy one goes where the light one is, lower or higher.
  const swaps = bestPairs(all, all, (p, q) => (p.weight - q.weight) * (high ? p.x - q.x : q.x - p.x)).map(([p, q]) =>
    idea(
      swapPlaces(p.stem, q.stem),
      [p.stem, q.stem],
      `let ${numbered(p.stem)}, and ${numbered(q.stem)}, change places`,
    ),
  )
  const few = (high ? all : all.filter((w) => w.x > 0)).slice(0, Math.max(1, Math.round(all.length / 5)))
  const lengthen = (factor: number): Idea =>
    idea(
      { do: 'lengthen-stems', ids: few.map((w) => w.stem.id), factor },
      few.map((w) => w.stem),
      `${high ? 'shorten' : 'lengthen'} ${named(few.map((w) => w.stem))}, by ${round(100 * Math.abs(factor - 1))} %`,
    )
  const shape = high && ['round', 'low'].includes(engine.resolved.document.form) ? dome(engine.resolved.stems) : null
  const domed = shape
    ? [idea(shape.edit, shape.cut, `cut ${grouped(shape.cut)} to a dome, shorter the farther out`)]
    : []
  const factors = high ? [0.8, 0.65, 0.9] : [1.25, 1.5, 1.1]
  return {
    ideas: [
      domed,
      swaps.slice(0, 2),
      factors.slice(0, 2).map(lengthen),
      swaps.slice(2, 4),
      factors.slice(2).map(lengthen),
    ].flat(),
    otherwise: null,
  }
}

/** What is amiss with the weight, and ideas against it. */
export const adviseBalance = (engine: Engine, lengths: Lengths): Topic[] => {
  const b = measureBalance(engine)
  if (!b) return []
  const { document } = engine.resolved
  const worst = bandOf('visual-balance', 'offsetWorst', document)!.band
  const top = bandOf('visual-balance', 'topHeaviness', document)!.band
  const topics: Topic[] = []
  if (isOutside(b.offsetWorst, worst)) topics.push(aboutSides(engine, b, lengths))
  if (isOutside(b.topHeaviness, top)) topics.push(aboutHeight(engine, b, top))
  return topics
}
