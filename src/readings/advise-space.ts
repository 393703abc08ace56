import type { Edit, Point3 } from '../arrangement/index.ts'
import { projectPoint, type ResolvedStem, unprojectElevation, viewAxes } from '../geometry/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureSpace, type Space, scoreSpace } from './negative-space.ts'
import { bestOf, tryOut } from './trial.ts'
import type { Advice } from './types.ts'
import { formWords, listed, numbered, percent, round } from './words.ts'

const shift = (stem: ResolvedStem, to: Point3): Edit => {
  const { tip } = stem.stem
  return { do: 'shift-stems', ids: [stem.id], by: [to[0] - tip[0], to[1] - tip[1], to[2] - tip[2]] }
}

const side = (turn: number): string => (turn === 0 ? 'the front' : `${turn}° round`)

/** Way of a move as seen in the elevation. */
const wayOf = (dx: number, dz: number): string => {
  const words = []
  if (Math.abs(dz) >= 5) words.push(`${round(Math.abs(dz))} mm ${dz > 0 ? 'up' : 'down'}`)
  if (Math.abs(dx) >= 5) words.push(`${round(Math.abs(dx))} mm to the ${dx > 0 ? 'right' : 'left'}`)
  return listed(words)
}

const aboutHole = (engine: Engine, s: Space): Advice[] => {
  const { stems } = engine.resolved
  const angle = { turn: s.turn, pitch: 0 }
  const near = stems
    .map((stem) => ({ stem, at: projectPoint(stem.stem.tip, angle) }))
    .filter(({ stem }) => stem.plant.formClass !== 'line')
    .map((n) => ({ ...n, far: Math.hypot(n.at[0] - s.centre[0], n.at[1] - s.centre[1]) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, 3)
  const edits = near.flatMap(({ stem, at }) =>
    [0.4, 0.75].map((k) =>
      shift(
        stem,
        unprojectElevation(stem.stem.tip, s.turn, [
          at[0] + k * (s.centre[0] - at[0]),
          at[1] + k * (s.centre[1] - at[1]),
        ]),
      ),
    ),
  )
  const tried = tryOut(engine, edits, (e) => -(measureSpace(e)?.hole ?? Number.POSITIVE_INFINITY))
  // It has to be seen: at least a tenth smaller.
  const best = bestOf(tried, -0.9 * s.hole)
  const names = listed(near.map(({ stem }) => numbered(stem)))
  if (best?.edit.do !== 'shift-stems')
    return [
      {
        text: `The hole of ${round(s.hole)} mm seen from ${side(s.turn)} lies between ${names}: a small stem set there closes it.`,
        stems: near.map(({ stem }) => stem.id),
      },
    ]
  const moved = stems.find((x) => best.edit.do === 'shift-stems' && x.id === best.edit.ids[0])!
  const { right } = viewAxes(angle)
  const { by } = best.edit
  const way = wayOf(by[0] * right[0] + by[1] * right[1], by[2])
  return [
    {
      text: `Seen from ${side(s.turn)}, move ${numbered(moved)}, ${way} into the hole: ${-best.value < 3 ? 'none is then left' : `the largest then measures ${round(-best.value)} mm`} instead of ${round(s.hole)} mm.`,
      stems: [moved.id],
      edit: best.edit,
    },
  ]
}

const aboutMouth = (engine: Engine, s: Space): Advice[] => {
  const { stems, vessel } = engine.resolved
  const half = Math.min(vessel.width, vessel.depth) / 2
  const low = stems
    .filter((x) => x.plant.formClass !== 'line' && x.role !== 'focal')
    .sort((a, b) => Number(b.role === 'greens') - Number(a.role === 'greens') || a.stem.tip[2] - b.stem.tip[2])
    .slice(0, 3)
  // Toward the one who sees the mouth: the front of the rim at that turn.
  const edits = low.flatMap((stem) =>
    [0.3, 0.8].map((k) => {
      const { toward } = viewAxes({ turn: s.mouthTurn, pitch: 0 })
      return shift(stem, [toward[0] * half * k, toward[1] * half * k, half * 0.4 + stem.head_mm / 4])
    }),
  )
  const tried = tryOut(engine, edits, (e) => -(measureSpace(e)?.mouthShowing ?? 2))
  const best = bestOf(tried, -s.mouthShowing + 0.03)
  if (best?.edit.do !== 'shift-stems')
    return [
      {
        text: `${percent(s.mouthShowing)} of the mouth shows from 45° above, seen from ${side(s.mouthTurn)}: low greens over the rim hide it.`,
        stems: [],
      },
    ]
  const moved = stems.find((x) => best.edit.do === 'shift-stems' && x.id === best.edit.ids[0])!
  return [
    {
      text: `Bring ${numbered(moved)}, low over the rim toward ${side(s.mouthTurn)}: ${percent(-best.value)} of the mouth then shows instead of ${percent(s.mouthShowing)}.`,
      stems: [moved.id],
      edit: best.edit,
    },
  ]
}

const aboutAir = (engine: Engine, s: Space, wanted: readonly [number, number]): Advice[] => {
  const { stems, document } = engine.resolved
  const score = scoreSpace(engine)
  if (stems.length < 3 || score === null) return []
  const out = stems.toSorted((a, b) => Math.hypot(...b.stem.tip) - Math.hypot(...a.stem.tip))
  const closed = s.voidFraction < wanted[0]
  // Too closed: let the farthest reach farther. Too open: draw them in.
  const few = out.slice(0, Math.max(1, Math.round(stems.length / 8)))
  const edits = (closed ? [1.15, 1.3] : [0.9, 0.8]).map(
    (factor): Edit => ({ do: 'lengthen-stems', ids: few.map((x) => x.id), factor }),
  )
  const tried = tryOut(engine, edits, (e) => {
    const there = measureSpace(e)?.voidFraction ?? s.voidFraction
    return closed ? there : -there
  })
  const best = bestOf(tried, (closed ? s.voidFraction : -s.voidFraction) + 0.01)
  if (!best) return []
  const names = listed(few.slice(0, 3).map(numbered)) + (few.length > 3 ? ` and ${few.length - 3} more` : '')
  const there = percent(Math.abs(best.value))
  return [
    {
      text: `${closed ? 'The outline is closed for' : 'The outline is more open than'} ${formWords(document.form)}${closed ? '' : ' wants'}: ${closed ? 'let' : 'draw in'} ${names}${closed ? ', reach farther' : ''}; air goes from ${percent(s.voidFraction)} to ${there}.`,
      stems: few.map((x) => x.id),
      edit: best.edit,
    },
  ]
}

/** Advice on air and holes, each edit tried and measured. */
export const adviseSpace = (engine: Engine): Advice[] => {
  const s = measureSpace(engine)
  if (!s) return []
  const { form, vessel } = engine.resolved.document
  const hole = bandOf('negative-space', 'holeShare', form)!.band
  const mouth = bandOf('negative-space', 'mouthShowing', form)!.band
  const air = bandOf('negative-space', 'voidFraction', form)!.band
  const advice: Advice[] = []
  if (s.reach > 0 && s.hole / s.reach > hole[1]) advice.push(...aboutHole(engine, s))
  if (vessel.mechanics !== 'none' && s.mouthShowing > mouth[1]) advice.push(...aboutMouth(engine, s))
  if (s.voidFraction < air[0] || s.voidFraction > air[1]) advice.push(...aboutAir(engine, s, air))
  return advice
}
