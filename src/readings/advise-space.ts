import type { Edit, Point3 } from '../arrangement/index.ts'
import { projectPoint, type ResolvedStem, unprojectElevation, viewAxes } from '../geometry/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureSpace, type Space } from './negative-space.ts'
import type { Idea, Topic } from './trial.ts'
import { formWords, type Lengths, listed, named, numbered, percent, sideWords } from './words.ts'

const shift = (stem: ResolvedStem, to: Point3): Edit => {
  const { tip } = stem.stem
  return { do: 'shift-stems', ids: [stem.id], by: [to[0] - tip[0], to[1] - tip[1], to[2] - tip[2]] }
}

/** Way of a move as seen in the elevation. */
const wayOf = (dx: number, dz: number, lengths: Lengths): string => {
  const words = []
  if (Math.abs(dz) >= 5) words.push(`${lengths(Math.abs(dz))} ${dz > 0 ? 'up' : 'down'}`)
  if (Math.abs(dx) >= 5) words.push(`${lengths(Math.abs(dx))} to the ${dx > 0 ? 'right' : 'left'}`)
  return words.length > 0 ? listed(words) : 'a little'
}

const fives = (mm: number): number => 5 * Math.round(mm / 5)

/** Fillers first, then greens, then any other that is neither focal nor a line. */
const ORDER: Partial<Record<string, number>> = { filler: 0, greens: 1, mass: 2, form: 3 }

const aboutHole = (engine: Engine, s: Space, lengths: Lengths): Topic => {
  const { stems } = engine.resolved
  const angle = { turn: s.turn, pitch: 0 }
  const all = stems
    .filter((stem) => stem.plant.formClass !== 'line')
    .map((stem) => ({ stem, at: projectPoint(stem.stem.tip, angle) }))
    .map((n) => ({ ...n, far: Math.hypot(n.at[0] - s.centre[0], n.at[1] - s.centre[1]) }))
    .sort((a, b) => a.far - b.far)
  const near = all.slice(0, 3)
  const fillers = all
    .filter(({ stem }) => stem.role !== 'focal')
    .slice(0, 8)
    .sort((a, b) => (ORDER[a.stem.role] ?? 4) - (ORDER[b.stem.role] ?? 4) || a.far - b.far)
    .slice(0, 3)
  const ideas = [0.75, 1, 0.4].flatMap((k) =>
    fillers.map(({ stem, at }): Idea => {
      const [dx, dz] = [fives(k * (s.centre[0] - at[0])), fives(k * (s.centre[1] - at[1]))]
      return {
        edit: shift(stem, unprojectElevation(stem.stem.tip, s.turn, [at[0] + dx, at[1] + dz])),
        stems: [stem.id],
        say: (v) => {
          const left = v.largestHole_mm as number
          return `Seen from ${sideWords(s.turn)}, move ${numbered(stem)}, ${wayOf(dx, dz, lengths)} into the hole: ${left < 3 ? 'none is then left' : `the largest then measures ${lengths(left)}`} instead of ${lengths(s.hole)}.`
        },
      }
    }),
  )
  const names = listed(near.map(({ stem }) => numbered(stem)))
  return {
    ideas: ideas,
    otherwise: {
      text: `The hole of ${lengths(s.hole)} seen from ${sideWords(s.turn)} lies between ${names}: a small stem set there closes it.`,
      stems: near.map(({ stem }) => stem.id),
    },
  }
}

const aboutMouth = (engine: Engine, s: Space): Topic => {
  const { stems, vessel } = engine.resolved
  const half = Math.min(vessel.width, vessel.depth) / 2
  const { toward } = viewAxes({ turn: s.mouthTurn, pitch: 0 })
  const low = stems
    .filter((x) => x.plant.formClass !== 'line' && x.role !== 'focal')
    .sort((a, b) => Number(b.role === 'greens') - Number(a.role === 'greens') || a.stem.tip[2] - b.stem.tip[2])
    .slice(0, 3)
  return {
    // Toward the one who sees the mouth: the front of the rim at that turn.
    ideas: [0.8, 0.3].flatMap((k) =>
      low.map(
        (stem): Idea => ({
          edit: shift(stem, [toward[0] * half * k, toward[1] * half * k, half * 0.4 + stem.head_mm / 4]),
          stems: [stem.id],
          say: (v) =>
            `Bring ${numbered(stem)}, low over the rim toward ${sideWords(s.mouthTurn)}: ${percent(v.mouthShowing as number)} of the mouth then shows instead of ${percent(s.mouthShowing)}.`,
        }),
      ),
    ),
    otherwise: {
      text: `${percent(s.mouthShowing)} of the mouth shows from 45° above, seen from ${sideWords(s.mouthTurn)}: low greens over the rim hide it.`,
      stems: [],
    },
  }
}

const aboutAir = (engine: Engine, s: Space, wanted: readonly [number, number]): Topic => {
  const { stems, document } = engine.resolved
  const out = stems.toSorted((a, b) => Math.hypot(...b.stem.tip) - Math.hypot(...a.stem.tip))
  const closed = s.voidFraction < wanted[0]
  // Too closed: let the farthest reach farther. Too open: draw them in.
  const idea = (part: number, factor: number): Idea => {
    const few = out.slice(0, Math.max(1, Math.round(stems.length * part)))
    const names = named(few)
    return {
      edit: { do: 'lengthen-stems', ids: few.map((x) => x.id), factor },
      stems: few.map((x) => x.id),
      say: (v) =>
        `The outline is ${closed ? 'closed for' : 'more open than'} ${formWords(document.form)}${closed ? '' : ' wants'}: ${closed ? 'lengthen' : 'shorten'} ${names}, by ${percent(Math.abs(factor - 1))}; air goes from ${percent(s.voidFraction)} to ${percent(v.voidFraction as number)}.`,
    }
  }
  const ideas = closed
    ? [idea(1 / 8, 1.15), idea(1 / 8, 1.3), idea(1 / 4, 1.2), idea(1 / 5, 1.5)]
    : [idea(1 / 8, 0.9), idea(1 / 8, 0.8), idea(1 / 4, 0.85), idea(1 / 3, 0.75)]
  return { ideas: stems.length < 3 ? [] : ideas, otherwise: null }
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
  if (vessel.mechanics !== 'none' && s.mouthShowing > mouth[1]) topics.push(aboutMouth(engine, s))
  if (s.voidFraction < air[0] || s.voidFraction > air[1]) topics.push(aboutAir(engine, s, air))
  return topics
}
