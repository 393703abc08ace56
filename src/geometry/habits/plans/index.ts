import type { Habit, Plant } from '../../../catalogue/index.ts'
import { type Line, lineOf, sideOf } from '../line.ts'
import { type Layout, num, type Shape, type SolidInput, word } from '../organs.ts'
import { type Frame, frameOf, type Random, randomFrom } from '../vector.ts'
import { blade, broadLeaf, fern, trailing } from './branches.ts'
import { cloud } from './cloud.ts'
import { orchidSpray } from './orchids.ts'
import { alternateLeaves, oppositeLeaves } from './shoots.ts'
import { single } from './single.ts'
import { spikes } from './spikes.ts'
import { berryBranch, spray } from './sprays.ts'
import { trumpets } from './trumpets.ts'

/** What a plan works with: it adds heads, ropes, leaves and twigs to the layout. */
export interface PlanCase {
  input: SolidInput
  shape: Shape
  line: Line
  /** Where the head sits and looks. */
  f: Frame
  random: Random
  /** head_mm */
  head: number
  /** Its diameter once it is open, mm: what side stems are as long as. */
  full: number
  /** How far heads are open at openness 0; see `cutOpen`. */
  least: number
  /** Length of stem above the mouth, mm. */
  above: number
  /** Flowering or leafy length, mm. */
  long: number
  layout: Layout
}
export type Plan = (c: PlanCase) => void

const PLANS: Record<Habit, Plan> = {
  rosette: single,
  quilled: single,
  ray: single,
  pincushion: single,
  globe: single,
  umbel: single,
  cup: single,
  spathe: single,
  dome: single,
  spike: spikes,
  plume: spikes,
  trumpet: trumpets,
  spray,
  cloud,
  orchid: orchidSpray,
  'berry-branch': berryBranch,
  'opposite-leaves': oppositeLeaves,
  'alternate-leaves': alternateLeaves,
  trailing,
  fern,
  blade,
  'broad-leaf': broadLeaf,
}

/** A plant that has no width of its own in bud is cut with its heads showing: so far are they open at openness 0. Ours. */
const cutOpen = (plant: Plant): number => (plant.headClosed_mm ? 0 : (SHOWING[plant.habit] ?? 0))
const SHOWING: Partial<Record<Habit, number>> = { ray: 0.34, pincushion: 0.42, quilled: 0.4, spray: 0.4 }

/**
 * How heads that have a front turn about their axis, radians from square to the way the stem leans: a strelitzia shows
 * its beak in profile, a calla and an anthurium their inside. All others turn as they happen to.
 */
const ROLL: Record<string, number> = { crane: 0, calla: -Math.PI / 2, anthurium: -Math.PI / 2 }

/** How much a head of a plant widens from this openness on. */
const widens = ({ headClosed_mm, headOpen_mm }: Plant, openness: number): number => {
  const open = headOpen_mm.value
  const closed = headClosed_mm?.value ?? open
  return open / Math.max(1, closed + (open - closed) * openness)
}

/** Take a stem apart into heads, flowering lengths, leaves, twigs and the bare stem. mm, relative to the tip. */
export const layoutOf = (input: SolidInput): Layout => {
  const { plant, curve, seed } = input
  const side = sideOf(input.axis, curve.points, curve.mouthIndex)
  const line = lineOf(curve, side)
  const random = randomFrom(seed)
  const above = Math.max(10, line.total - line.mouth)
  const head = Math.max(1, input.head_mm)
  const r = Math.max(0.5, plant.stemDiameter_mm.value / 2)
  const { shape } = plant
  const layout: Layout = {
    line,
    heads: [],
    ropes: [],
    leaves: [],
    twigs: [],
    fruits: [],
    stem: { until: line.total, r0: r, r1: r * 0.85, tissue: num(shape, 'woody', 0) > 0 ? 'bark' : 'stem' },
  }
  const any = random() * 6.28
  const f = frameOf([0, 0, 0], input.axis, side, ROLL[word(shape, 'kind', '')] ?? any)
  const long = plant.headLength_mm?.value ?? Math.max(head * 2, above * 0.6)
  const plan = PLANS[plant.habit] ?? single
  plan({
    input,
    shape,
    line,
    f,
    random,
    head,
    full: head * widens(plant, input.openness),
    least: cutOpen(plant),
    above,
    long,
    layout,
  })
  return layout
}
