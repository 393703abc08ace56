import type { Point2 } from '../arrangement/index.ts'
import { projectPoint, type ResolvedStem, unprojectElevation, unprojectPlan, viewAxes } from '../geometry/index.ts'
import { aboutMouth } from './advise-mouth.ts'
import { grouped } from './advise-words.ts'
import { bandOf, isOutside } from './bands.ts'
import type { Engine } from './engine.ts'
import { oneMore, shiftTo } from './mend-stems.ts'
import { holeWords, measureSpace, type Space } from './negative-space.ts'
import { dome } from './regroup.ts'
import type { Idea, Topic, Values } from './trial.ts'
import { formWords, type Lengths, listed, named, numbered, percent, sideWords } from './words.ts'

/** Way of a move as seen in the elevation, or from above. */
const wayOf = (above: boolean, dx: number, dz: number, lengths: Lengths): string => {
  const words = []
  const [far, near] = above ? ['to the back', 'to the front'] : ['up', 'down']
  if (Math.abs(dz) >= 5) words.push(`${lengths(Math.abs(dz))} ${dz > 0 ? far : near}`)
  if (Math.abs(dx) >= 5) words.push(`${lengths(Math.abs(dx))} to the ${dx > 0 ? 'right' : 'left'}`)
  return words.length > 0 ? listed(words) : 'a little'
}

const fives = (mm: number): number => 5 * Math.round(mm / 5)

/** Fillers first, then greens, then any other that is neither focal nor a line. */
const ORDER: Partial<Record<string, number>> = { filler: 0, greens: 1, mass: 2, form: 3 }

const aboutHole = (engine: Engine, s: Space, lengths: Lengths): Topic => {
  const { resolved } = engine
  const { stems } = resolved
  const angle = { turn: s.turn, pitch: s.above ? 90 : 0 }
  const placeAt = s.above ? unprojectPlan : unprojectElevation
  const { toward } = viewAxes(angle)
  const all = stems
    .filter((stem) => stem.plant.formClass !== 'line')
    .map((stem) => ({ stem, at: projectPoint(stem.stem.tip, angle) }))
    .map((n) => ({ ...n, far: Math.hypot(n.at[0] - s.centre[0], n.at[1] - s.centre[1]) }))
    .sort((a, b) => a.far - b.far)
  const near = all.slice(0, 3)
  const others = all.filter(({ stem }) => stem.role !== 'focal').slice(0, 8)
  const rank = (stem: ResolvedStem): number => ORDER[stem.role] ?? 4
  const fillers = others.toSorted((a, b) => rank(a.stem) - rank(b.stem) || a.far - b.far).slice(0, 3)
  // One more: of those that fill the hole, as long as there is one, and of each plant once.
  const small = (stem: ResolvedStem): number => (stem.head_mm < 0.6 * s.hole ? 8 : 0)
  const likes = others
    .map(({ stem }) => stem)
    .toSorted((a, b) => small(a) + rank(a) - small(b) - rank(b))
    .filter((stem, i, list) => list.findIndex((x) => x.stem.plant === stem.stem.plant) === i)
    .slice(0, 2)
  const left = (v: Values): string => {
    const mm = v.largestHole_mm as number
    return `${mm < 3 ? 'none is then left' : `the largest then measures ${lengths(mm)}`} instead of ${lengths(s.hole)}`
  }
  // As deep as what lies round the hole, on the mean and where that is nearest the eye.
  const deep = near.map(({ stem }) => stem.stem.tip.reduce((sum, v, i) => sum + v * toward[i]!, 0))
  const depths = [deep.reduce((a, b) => a + b, 0) / deep.length, Math.max(...deep)]
  const at: Point2 = [fives(s.centre[0]), fives(s.centre[1])]
  const added = depths.flatMap((out) =>
    likes.map((like): Idea => {
      const to = placeAt([toward[0] * out, toward[1] * out, toward[2] * out], s.turn, at)
      return {
        edit: oneMore(resolved, like, to),
        stems: [like.id, ...near.map(({ stem }) => stem.id).filter((id) => id !== like.id)],
        say: (v) =>
          `Set one more like ${numbered(like)}, into the hole ${holeWords({ above: s.above, turn: s.turn, centre: at }, lengths)}: ${left(v)}.`,
      }
    }),
  )
  const moved = [0.75, 1, 0.4].flatMap((k) =>
    fillers.map(({ stem, at }): Idea => {
      const [dx, dz] = [fives(k * (s.centre[0] - at[0])), fives(k * (s.centre[1] - at[1]))]
      return {
        edit: shiftTo(stem, placeAt(stem.stem.tip, s.turn, [at[0] + dx, at[1] + dz])),
        stems: [stem.id],
        say: (v) =>
          `Seen from ${s.above ? 'above' : sideWords(s.turn)}, move ${numbered(stem)}, ${wayOf(s.above, dx, dz, lengths)} into the hole: ${left(v)}.`,
      }
    }),
  )
  const names = listed(near.map(({ stem }) => numbered(stem)))
  return {
    // The first few are tried where there is more amiss than this.
    ideas: [...added.slice(0, 2), ...moved.slice(0, 2), ...added.slice(2), ...moved.slice(2)],
    otherwise: {
      text: `The hole of ${lengths(s.hole)} ${holeWords(s, lengths)} lies between ${names}: a small stem set there closes it.`,
      stems: near.map(({ stem }) => stem.id),
    },
  }
}

const aboutAir = (engine: Engine, s: Space, wanted: readonly [number, number]): Topic => {
  const { stems, document } = engine.resolved
  const out = stems.toSorted((a, b) => Math.hypot(...b.stem.tip) - Math.hypot(...a.stem.tip))
  const closed = s.airFraction < wanted[0]
  // Too closed: let the farthest reach farther. Too open: draw them in.
  const idea = (part: number, factor: number): Idea => {
    const few = out.slice(0, Math.max(1, Math.round(stems.length * part)))
    const names = named(few)
    return {
      edit: { do: 'lengthen-stems', ids: few.map((x) => x.id), factor },
      stems: few.map((x) => x.id),
      say: (v) =>
        `The outline is ${closed ? 'closed for' : 'more open than'} ${formWords(document.form)}${closed ? '' : ' wants'}: ${closed ? 'lengthen' : 'shorten'} ${names}, by ${percent(Math.abs(factor - 1))}; air goes from ${percent(s.airFraction)} to ${percent(v.airFraction as number)}.`,
    }
  }
  const ideas = closed
    ? [idea(1 / 8, 1.15), idea(1 / 8, 1.3), idea(1 / 4, 1.2), idea(1 / 5, 1.5)]
    : [idea(1 / 8, 0.9), idea(1 / 8, 0.8), idea(1 / 4, 0.85), idea(1 / 3, 0.75)]
  const round = !closed && (document.form === 'round' || document.form === 'low') ? dome(stems) : null
  const domed: Idea[] = round
    ? [
        {
          edit: round.edit,
          stems: round.cut.map((x) => x.id),
          say: (v) =>
            `The outline stands open like a parasol: cut ${grouped(round.cut)} shorter the farther out they stand, so that it falls to the rim like a dome; air goes from ${percent(s.airFraction)} to ${percent(v.airFraction as number)}.`,
        },
      ]
    : []
  return { ideas: stems.length < 3 ? [] : [...domed, ...ideas], otherwise: null }
}

/** What is amiss with air and holes, and ideas against it. */
export const adviseSpace = (engine: Engine, lengths: Lengths): Topic[] => {
  const s = measureSpace(engine)
  if (!s) return []
  const { document } = engine.resolved
  const { vessel } = document
  const hole = bandOf('negative-space', 'holeShare', document)!.band
  const mouth = bandOf('negative-space', 'mouthShowing', document)!.band
  const air = bandOf('negative-space', 'voidFraction', document)!.band
  const topics: Topic[] = []
  if (s.reach > 0 && s.hole / s.reach > hole[1]) topics.push(aboutHole(engine, s, lengths))
  if (vessel.mechanics !== 'none' && s.mouthShowing > mouth[1]) topics.push(aboutMouth(engine, s, mouth[1], lengths))
  if (isOutside(s.airFraction, air)) topics.push(aboutAir(engine, s, air))
  return topics
}
