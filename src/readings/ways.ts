import { harmonyScale, labOf, labUnderLight, paletteHarmony } from '../colour/index.ts'
import type { Engine } from './engine.ts'
import { HALF_WAYS, spanAcross, WAYS } from './extents.ts'
import { ownSilhouette } from './seen.ts'
import { measureSight } from './sight-line.ts'
import { tiltEachWay } from './stability.ts'
import { partColour } from './tones.ts'
import type { ReadingId, WaysRound } from './types.ts'
import { measureBalance } from './visual-balance.ts'

const each = (of: (way: number) => number | null): (number | null)[] =>
  Array.from({ length: WAYS }, (_, way) => of(way))

const focalUnhidden = (engine: Engine): WaysRound => {
  const { stems } = engine.resolved
  const { byWay } = engine.seen()
  const focal = stems.flatMap((s, i) => (s.role === 'focal' && engine.ready[i]!.bloom ? [i] : []))
  const whole = focal.map((i) => ownSilhouette(engine, i))
  return {
    name: 'focal flowers unhidden',
    unit: '',
    scale: [0, 1],
    worst: 'least',
    values: each((way) => {
      const all = whole.reduce((sum, w) => sum + w[way]!, 0)
      const shown = focal.reduce((sum, i) => sum + byWay[way]![i * 4 + 1]!, 0)
      return all > 0 ? Math.min(1, shown / all) : null
    }),
  }
}

const largestHole = (engine: Engine): WaysRound => {
  const air = engine.air()
  const { mm } = engine.frame.grid
  return {
    name: 'largest hole',
    unit: 'mm',
    scale: [0, 5000],
    worst: 'most',
    values: each((way) => {
      const { massPixels, radius } = air[way % HALF_WAYS]!
      return massPixels > 0 ? 2 * radius * mm : null
    }),
  }
}

/** From vivid (0) to quiet (100), as the reading itself. */
const harmony = (engine: Engine): WaysRound => {
  const { stems, document } = engine.resolved
  const { light } = document.setting
  const { byWay } = engine.seen()
  const colours = [...new Set(stems.map((s) => partColour(s, 0)))]
  const labs = colours.map((hex) => (light === 'daylight' ? labOf(hex) : labUnderLight(hex, light)))
  const place = stems.map((s) => colours.indexOf(partColour(s, 0)))
  return {
    name: 'toward quiet',
    unit: 'of 100',
    scale: [0, 100],
    worst: null,
    values: each((way) => {
      const area = new Float64Array(colours.length)
      place.forEach((colour, i) => {
        area[colour]! += byWay[way]![i * 4 + 1]!
      })
      const seen = labs.flatMap((lab, i) => (area[i]! > 0 ? [{ lab, area: area[i]!, id: colours[i]! }] : []))
      const { mean, colours: count } = paletteHarmony(seen)
      return mean && harmonyScale(mean.harmony, count)
    }),
  }
}

const spread = (engine: Engine): WaysRound => ({
  name: 'spread',
  unit: 'mm',
  scale: [0, 5000],
  worst: 'most',
  values: each((way) => {
    const [from, to] = spanAcross(engine.ready, way % HALF_WAYS)
    return to > from ? to - from : null
  }),
})

const offAxis = (engine: Engine): WaysRound => ({
  name: 'weight off the axis',
  unit: '',
  scale: [0, 1],
  worst: 'most',
  values: measureBalance(engine)?.offsets.map((o) => o && Math.abs(o)) ?? each(() => null),
})

const faceHidden = (engine: Engine): WaysRound => {
  const sight = measureSight(engine)
  const values = typeof sight === 'string' ? each(() => null) : sight.ways
  return { name: 'face opposite hidden', unit: '', scale: [0, 1], worst: 'most', values }
}

/** The tilt toward the right as seen from each side. */
const tilt = (engine: Engine): WaysRound => ({
  name: 'tilt before it goes over, to the right',
  unit: '°',
  scale: [0, 90],
  worst: 'least',
  values: tiltEachWay(engine),
})

const mechanicsShowing = (engine: Engine): WaysRound => {
  const covered = engine.resolved.vessel.mechanics === 'none'
  const open = engine.mouth()
  return {
    name: 'mechanics showing',
    unit: '',
    scale: [0, 1],
    worst: 'most',
    values: each((way) => (covered ? null : open[way]!)),
  }
}

const WAYS_OF: Record<ReadingId, (engine: Engine) => WaysRound> = {
  'focal-prominence': focalUnhidden,
  'negative-space': largestHole,
  'palette-harmony': harmony,
  proportion: spread,
  'visual-balance': offAxis,
  stability: tilt,
  mechanics: mechanicsShowing,
  'sight-line': faceHidden,
}

/** One measured value of a reading from each way round, on what the engine looks at; null where it can't be said. */
export const waysOf = (engine: Engine, id: ReadingId): WaysRound => WAYS_OF[id](engine)
