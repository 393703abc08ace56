import type { Point3 } from '../../arrangement/index.ts'
import { outerSection, PART_STRIDE, type Resolved, reachAlong, shownHalfWidth, viewAxes } from '../../geometry/index.ts'
import { BARE, partsOf } from '../parts.ts'

/**
 * An ellipse on the table: middle and half axes, mm from the foot of the vessel's axis; across as the viewer sees it and
 * away from the viewer.
 */
export type Shade = [across: number, away: number, halfWide: number, halfDeep: number]

/**
 * How far a shadow moves for each mm of height: the light falls from the upper left and from before, as flowers are shaded,
 * but from higher up, so that the shadow stays near what casts it. Ours.
 */
const SHIFT = { across: 0.42, away: 0.3 }
const SECTIONS = 12

const span = ([from, to]: [number, number]): [middle: number, half: number] => [(from + to) / 2, (to - from) / 2]

/**
 * What blooms, leaves and vessel cast on the table, each stand-in as the upright ellipse about its shadow, for a viewer who
 * sees the arrangement turned. Bare stems are left out: their shadows are thinner than the hatching. `foot` is what stands on
 * the table itself.
 * @param turn degrees
 */
export const shadesOf = ({ stems, vessel }: Resolved, turn = 0): { shades: Shade[]; foot: Shade } => {
  const lift = vessel.height
  const { right } = viewAxes({ turn, pitch: 0 })
  const alongX: Point3 = [right[0], right[1], SHIFT.across]
  const alongY: Point3 = [-right[1], right[0], SHIFT.away]
  const of = stems.flatMap((stem): Shade[] => {
    const parts = partsOf(stem)
    const shades: Shade[] = []
    for (let o = 0; o < parts.length; o += PART_STRIDE) {
      if (parts[o + 1] === BARE) continue
      const [x, w] = span(reachAlong(parts, o, alongX))
      const [y, d] = span(reachAlong(parts, o, alongY))
      shades.push([x + lift * SHIFT.across, y + lift * SHIFT.away, w, d])
    }
    return shades
  })
  const body = Array.from({ length: SECTIONS + 1 }, (_, i): Shade => {
    const section = outerSection(vessel, i / SECTIONS)
    const up = (i / SECTIONS) * vessel.height
    return [
      up * SHIFT.across,
      up * SHIFT.away,
      shownHalfWidth(vessel, section, right[0], -right[1]),
      shownHalfWidth(vessel, section, -right[1], -right[0]),
    ]
  })
  return { shades: [...body, ...of], foot: body[0]! }
}
