import {
  type Arrangement,
  type Form,
  mouthFor,
  newStemId,
  type Point2,
  type Point3,
  type Stem,
} from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import { cosSin } from '../../geometry/index.ts'
import type { ViewName } from './layout.ts'

const GOLDEN = Math.PI * (3 - Math.sqrt(5))

/**
 * The form's dome: how high its middle stands over the rim (× the vessel's larger dimension) and how far it reaches
 * (× half of the vessel's width). Ours; it only gives a first height to what is placed in the plan.
 */
const DOME: Record<Form, { up: number; out: number }> = {
  round: { up: 0.9, out: 1.7 },
  low: { up: 0.55, out: 2.2 },
  airy: { up: 1.2, out: 2 },
  vertical: { up: 1.7, out: 1.2 },
  triangle: { up: 1.4, out: 1.9 },
  crescent: { up: 0.9, out: 2.2 },
  cascade: { up: 0.8, out: 2.2 },
}

/** Height of the dome over the rim at a distance from the axis, mm; beyond its edge a little over the rim. */
export const domeHeight = ({ form, vessel }: Pick<Arrangement, 'form' | 'vessel'>, distance: number): number => {
  const { up, out } = DOME[form]
  const top = up * Math.max(vessel.height, vessel.width, vessel.depth)
  const reach = (out * Math.max(vessel.width, vessel.depth)) / 2
  const least = 0.08 * top
  const q = distance / reach
  return Math.round(q >= 1 ? least : Math.max(least, top * Math.sqrt(1 - q * q)))
}

/**
 * How far behind the axis (−: in front) a head at [right, up] of the elevation goes: of eight places in front, spread by
 * the golden angle, the one farthest from the heads that are there.
 */
export const freeDepth = ({ stems, vessel }: Arrangement, turn: number, [right, up]: Point2): number => {
  const [c, s] = cosSin(turn)
  const span = Math.max(0.25 * vessel.width, 0.55 * Math.abs(right), 0.3 * Math.max(0, up))
  let [best, widest] = [0, -1]
  for (let i = 0; i < 8; i++) {
    const depth = -span * Math.abs(Math.sin((stems.length + i) * GOLDEN))
    const [x, y] = [right * c + depth * s, -right * s + depth * c]
    const gap = Math.min(1e4, ...stems.map((o) => Math.hypot(o.tip[0] - x, o.tip[1] - y, o.tip[2] - up)))
    if (gap > widest + 1e-9) {
      best = depth
      widest = gap
    }
  }
  return Math.round(best)
}

/** Where the head goes when a view is touched at [right, up] mm. */
export const tipFor = (document: Arrangement, view: ViewName, turn: number, [right, up]: Point2): Point3 => {
  const [c, s] = cosSin(turn)
  const depth = view === 'plan' ? up : freeDepth(document, turn, [right, up])
  const z = view === 'plan' ? domeHeight(document, Math.hypot(right, up)) : Math.max(up, -document.vessel.height)
  return [Math.round(right * c + depth * s), Math.round(-right * s + depth * c), Math.round(z)]
}

/** The stem that is placed when a view is touched there; null when the plant in hand is not listed. */
export const stemFor = (
  document: Arrangement,
  inHand: { plant: string; colour: string },
  view: ViewName,
  turn: number,
  at: Point2,
): Stem | null => {
  const plant = findPlant(inHand.plant)
  if (!plant) return null
  const slot = document.palette.slots.findIndex((s) => s.colour === inHand.colour)
  const tip = tipFor(document, view, turn, at)
  return {
    id: newStemId(document),
    plant: plant.id,
    role: plant.role,
    colour: slot >= 0 ? { slot } : inHand.colour,
    openness: 0.8,
    mouth: mouthFor(document.vessel, tip),
    tip,
    bend: 0,
    piece: plant.manyHeaded && plant.habit === 'spray' ? 'lateral' : 'whole',
  }
}
