import type { Point2, Vessel } from '../arrangement/index.ts'
import { DENSITIES } from '../catalogue/index.ts'
import { outerSection, type Spill, shownHalfWidth, spillOf, surfaceMoment_mm4 } from '../geometry/index.ts'
import type { Engine } from './engine.ts'
import { WAYS as ROUND, turnOf } from './extents.ts'
import { standsOnTable, WIDER_THAN_TABLE } from './on-table.ts'
import type { Because, Mark, ReadingResult } from './types.ts'
import { type Weight, weigh } from './weight.ts'
import { hold, notApplicable, round, scoreOf, shown } from './words.ts'

export interface Stability {
  weight: Weight
  /** The least tilt at which it goes over, degrees; 0 when it does not stand at all. */
  tipping_deg: number
  /** The way it goes over, degrees from the x axis toward y. */
  toward_deg: number
  /** From under the centre of mass to the edge it turns over, mm that way. */
  room_mm: number
  /** Null where there is no water, or none that can run. */
  spill: Spill | null
  /** A level push at the height of the highest flower that tips it, N. */
  push_N: number
}

const DEGREE = Math.PI / 180
/** Standard gravity, m/s²; ISO 80000-3. */
const GRAVITY = 9.80665
const WAYS = 72

/** What a vessel brings to a tilt toward one way: how far its foot reaches, mm, and the moment of its water's surface, mm⁴. */
interface Edge {
  cos: number
  sin: number
  foot: number
  moment: number
}

const edgeOf = (vessel: Vessel, way: number): Edge => {
  const [cos, sin] = [Math.cos(way), Math.sin(way)]
  return {
    cos,
    sin,
    foot: shownHalfWidth(vessel, outerSection(vessel, 0), cos, sin),
    moment: surfaceMoment_mm4(vessel, cos, sin),
  }
}

/** By vessel: the edges of all ways that are looked at, one after another. */
const edges = new WeakMap<Vessel, readonly Edge[]>()
const edgesOf = (vessel: Vessel): readonly Edge[] => {
  const known = edges.get(vessel) ?? Array.from({ length: WAYS }, (_, i) => edgeOf(vessel, (i * 2 * Math.PI) / WAYS))
  edges.set(vessel, known)
  return known
}

/** From under the centre of mass to the edge of the foot, mm. */
const roomOf = ({ centre }: Weight, { cos, sin, foot }: Edge): number => foot - (centre[0] * cos + centre[1] * sin)

/** Tilt at which it goes over that edge, degrees; `room` as above. */
const tiltOf = (vessel: Vessel, weight: Weight, { moment }: Edge, room: number): number => {
  if (room <= 0) return 0
  const run = weight.free ? (DENSITIES.water * 1e-6 * moment) / weight.mass_g : 0
  return Math.atan2(room, Math.max(1e-6, weight.centre[2] + vessel.height + run)) / DEGREE
}

/** The same to the right as seen from each of the ways round. */
export const tiltEachWay = ({ resolved: { vessel, ...rest } }: Engine): number[] => {
  const weight = weigh({ vessel, ...rest })
  // Turned by φ, what lies along (cos −φ, sin −φ) is at the right.
  return Array.from({ length: ROUND }, (_, i) => {
    const edge = edgeOf(vessel, -turnOf(i) * DEGREE)
    return tiltOf(vessel, weight, edge, roomOf(weight, edge))
  })
}

/**
 * Static, on a level table: it goes over an edge of its foot when the plumb line of its centre of mass leaves the foot (any
 * text on statics). Water that runs to the low side raises the centre in effect by ρ I / M, to first order (the free
 * surface of naval architecture, from memory).
 */
export const measureStability = (engine: Engine): Stability => {
  const { resolved, ready } = engine
  const { vessel } = resolved
  const weight = weigh(resolved)
  let [way, angle, room] = [0, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  const consider = (other: number, edge: Edge): void => {
    const roomThere = roomOf(weight, edge)
    const there = tiltOf(vessel, weight, edge, roomThere)
    if (there < angle - 1e-9 || (there === 0 && roomThere < room - 1e-9)) [way, angle, room] = [other, there, roomThere]
  }
  const around = edgesOf(vessel)
  for (let i = 0; i < WAYS; i++) consider((i * 2 * Math.PI) / WAYS, around[i]!)
  // A rectangle turns over its sides, and these are among the ways; the rest is closed in on.
  for (let step = Math.PI / WAYS; step > 1e-5; step /= 2) {
    const middle = way
    consider(middle - step, edgeOf(vessel, middle - step))
    consider(middle + step, edgeOf(vessel, middle + step))
  }
  const top = ready.reduce((most, r) => Math.max(most, r.top), 0) + vessel.height
  return {
    weight,
    tipping_deg: angle,
    toward_deg: (((way / DEGREE) % 360) + 360) % 360,
    room_mm: room,
    // As when it tips: the foam is taken to fill the vessel, and water that it holds does not run.
    spill: vessel.mechanics === 'foam' ? null : spillOf(vessel),
    push_N: (Math.max(0, room) * (weight.mass_g / 1000) * GRAVITY) / top,
  }
}

/** Is there water, all of it held by foam? */
const bound = (engine: Engine, { weight }: Stability): boolean =>
  engine.resolved.vessel.mechanics === 'foam' && weight.water_g > 0

const partsOf = (engine: Engine, m: Stability) => {
  const { document } = engine.resolved
  const tip = hold('stability', document, {
    key: 'tippingAngle_deg',
    name: 'Tilt before it goes over',
    value: m.tipping_deg,
    unit: '°',
    scale: [0, 60],
    rule: `The least tilt, any way, at which the plumb line of the centre of mass leaves the foot; ${
      bound(engine, m) ? 'soaked foam holds its water, so none is reckoned to run.' : 'water that runs is reckoned in.'
    }`,
  })
  const spill = m.spill
    ? hold('stability', document, {
        key: 'spillAngle_deg',
        name: 'Tilt before water spills',
        value: m.spill.angle_deg,
        unit: '°',
        scale: [0, 60],
        rule: 'The tilt at which the level water, its volume the same, reaches the lowest point of the rim, in the worst way.',
      })
    : null
  return { tip, spill }
}

const because = (engine: Engine, m: Stability, { tip, spill }: ReturnType<typeof partsOf>): Because => {
  const { weight } = m
  const statics = 'statics of a rigid body on a level table'
  const memory = 'densities and masses of stems are from memory, as ranges; an estimate'
  const heavy = Math.max(5000, weight.mass_g)
  return {
    main: tip.held,
    others: [
      ...(spill ? [spill.held] : []),
      shown(
        'mass_g',
        'Weight of it all',
        weight.mass_g,
        'g',
        [0, heavy],
        'Vessel, water, what holds the stems, and the stems as cut. Lift it by the vessel, with both hands, and let two carry what is heavy.',
        memory,
      ),
      shown(
        'water_g',
        'Water in it',
        weight.water_g,
        'g',
        [0, heavy],
        `To the waterline, less what the stalks push aside. Water low down steadies it: what is drunk must be topped up.${
          bound(engine, m)
            ? ' Soaked foam is taken to fill the vessel and holds all of it: it does not spill. What stands round or over a smaller block would.'
            : ''
        }`,
        memory,
      ),
      shown(
        'push_N',
        'Push that tips it',
        m.push_N,
        'N',
        [0, 20],
        'A level push at the height of the highest flower; 1 N is about the weight of 100 g.',
        statics,
      ),
    ],
    how: spill
      ? 'Full inside each band, falling smoothly outside it; the score is the geometric mean of tipping and spilling.'
      : `Full inside its band, falling smoothly outside it; the score is tipping alone, for ${
          bound(engine, m) ? 'foam holds the water' : 'there is no water to spill'
        }.`,
    trust:
      'An estimate at rest on a level table: masses of stems are ranges from memory, and a draught, a child or a dog push harder. Try the vessel with water before the day; the venue’s rules come first.',
  }
}

/** Does it stand at all, as far as whole degrees can say? */
export const stands = (tipping_deg: number): boolean => round(tipping_deg) !== '0'

export const readStability = (engine: Engine): ReadingResult => {
  const m = measureStability(engine)
  const { weight } = m
  const { vessel, document } = engine.resolved
  const weights = {
    mass_g: weight.mass_g,
    centreOfMass_mm: weight.centre,
    vessel_g: weight.vessel_g,
    water_g: weight.water_g,
    stems_g: weight.stems_g,
  }
  // Over the edge of a table the foot is not carried whole: there is no telling how far it may lean.
  if (!standsOnTable(vessel, document.setting.table))
    return notApplicable('stability', WIDER_THAN_TABLE, {
      tippingAngle_deg: null,
      spillAngle_deg: null,
      ...weights,
      tippingToward_deg: null,
      spillToward_deg: null,
      tippingPush_N: null,
    })
  const parts = partsOf(engine, m)
  const { tip, spill } = parts
  const [x, y, z] = weight.centre
  const way = m.toward_deg * DEGREE
  const [c, s] = [Math.cos(way), Math.sin(way)]
  // Turned by this much, the way it goes over points to the right.
  const turn = (360 - m.toward_deg) % 360
  const foot = outerSection(vessel, 0)
  const outline: Point2[] =
    vessel.plan === 'rectangular'
      ? [
          [foot.a, foot.b],
          [-foot.a, foot.b],
          [-foot.a, -foot.b],
          [foot.a, -foot.b],
        ]
      : Array.from({ length: 48 }, (_, i): Point2 => {
          const a = (i * Math.PI) / 24
          return [foot.a * Math.cos(a), foot.b * Math.sin(a)]
        })
  const marks: Mark[] = [
    {
      kind: 'circle',
      view: 'elevation',
      turn,
      centre: [x * c + y * s, z],
      radius: 5,
      label: stands(m.tipping_deg) ? `goes over at ${round(m.tipping_deg)}°` : 'does not stand',
    },
    { kind: 'outline', view: 'plan', points: outline, label: 'foot' },
    { kind: 'circle', view: 'plan', centre: [x, y], radius: 5, label: 'centre of mass' },
  ]
  return {
    id: 'stability',
    score: scoreOf([tip.part, spill?.part ?? null]),
    notApplicable: '',
    values: {
      tippingAngle_deg: m.tipping_deg,
      spillAngle_deg: m.spill?.angle_deg ?? null,
      ...weights,
      tippingToward_deg: m.toward_deg,
      spillToward_deg: m.spill?.toward_deg ?? null,
      tippingPush_N: m.push_N,
    },
    because: because(engine, m, parts),
    advice: [],
    marks,
  }
}
