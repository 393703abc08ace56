import type { Point3 } from '../../arrangement/index.ts'
import { tipOf } from '../../drawing/index.ts'
import {
  outerSection,
  PART_STRIDE,
  preparedParts,
  type Resolved,
  reachAlong,
  shownHalfWidth,
  standinsOf,
} from '../../geometry/index.ts'

/** An ellipse on the table: middle and half axes, mm from the foot of the vessel's axis; x right, y away from the viewer. */
export type Shade = [x: number, y: number, halfWide: number, halfDeep: number]

/**
 * How far a shadow moves for each mm of height: the light falls from the upper left and from before, as flowers are shaded,
 * but from higher up, so that the shadow stays near what casts it. Ours.
 */
const SHIFT = { x: 0.42, y: 0.3 }
const SECTIONS = 12
/** In parts, the number of a bare stem. */
const BARE = 2

const ALONG_X: Point3 = [1, 0, SHIFT.x]
const ALONG_Y: Point3 = [0, 1, SHIFT.y]

const span = ([from, to]: [number, number]): [middle: number, half: number] => [(from + to) / 2, (to - from) / 2]

/**
 * What blooms, leaves and vessel cast on the table, each stand-in as the upright ellipse about its shadow. Bare stems are left
 * out: their shadows are thinner than the hatching. `foot` is what stands on the table itself.
 */
export const shadesOf = ({ stems, vessel }: Resolved): { shades: Shade[]; foot: Shade } => {
  const lift = vessel.height
  const of = stems.flatMap((stem): Shade[] => {
    const parts = preparedParts(standinsOf(stem), tipOf(stem))
    const shades: Shade[] = []
    for (let o = 0; o < parts.length; o += PART_STRIDE) {
      if (parts[o + 1] === BARE) continue
      const [x, w] = span(reachAlong(parts, o, ALONG_X))
      const [y, d] = span(reachAlong(parts, o, ALONG_Y))
      shades.push([x + lift * SHIFT.x, y + lift * SHIFT.y, w, d])
    }
    return shades
  })
  const body = Array.from({ length: SECTIONS + 1 }, (_, i): Shade => {
    const section = outerSection(vessel, i / SECTIONS)
    const up = (i / SECTIONS) * vessel.height
    return [up * SHIFT.x, up * SHIFT.y, shownHalfWidth(vessel, section, 1, 0), shownHalfWidth(vessel, section, 0, 1)]
  })
  return { shades: [...body, ...of], foot: body[0]! }
}
