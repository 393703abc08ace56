import type { Vessel } from '../arrangement/index.ts'
import { cosSin, heightFraction, innerSection, reachIn, waterlineZ } from '../geometry/index.ts'
import { type Frame, type Picture, type Sprite, VESSEL_OWNER, type ViewAngle } from './types.ts'
import { wet } from './water.ts'

/** Shares of the water's colour below its surface, and of the line where the surface meets the wall. Ours. */
const BODY = 0.22
const LINE = 0.5
const LINE_MM = 0.3
/** From so far out on the line is looked for. */
const NEAR_EDGE = 0.85
/** Depths that differ by less are one place, mm. */
const SAME = 0.05

/**
 * Draws water seen from above: its surface as the section that it is, with a line where it meets the wall, and what is below it
 * a little cooler; in glass through the wall too. What stands before the water stays as it is.
 * @param shell the vessel's sprite, as it lies in the picture
 */
export const showWaterFromAbove = (
  picture: Picture,
  vessel: Vessel,
  angle: ViewAngle,
  frame: Frame,
  shell: Sprite,
  [vx, vy]: readonly [number, number],
): void => {
  const [cos, sin] = cosSin(angle.pitch)
  const [c, s] = cosSin(angle.turn)
  const surface = waterlineZ(vessel)
  const section = innerSection(vessel, heightFraction(vessel, surface))
  if (section.a <= 0 || section.b <= 0) return
  const glass = vessel.material === 'glass'
  // Beyond 1 outside the surface; right and up as seen.
  const reach = (X: number, up: number): number => {
    const Y = (up - surface * cos) / sin
    return reachIn(vessel, section, X * c + Y * s, Y * c - X * s)
  }
  const half = Math.max(0.5 / frame.scale, LINE_MM / 2)
  const [left, top] = [vx + shell.left, vy + shell.top]
  const toX = Math.min(shell.width, picture.width - left)
  const toY = Math.min(shell.height, picture.height - top)
  for (let y = Math.max(0, -top); y < toY; y++)
    for (let x = Math.max(0, -left); x < toX; x++) {
      const wall = shell.depth[y * shell.width + x]!
      const i = (top + y) * picture.width + left + x
      if (wall < -1e8 || picture.owner[i] === 0) continue
      const [X, up] = [frame.left + (left + x + 0.5) / frame.scale, frame.top - (top + y + 0.5) / frame.scale]
      const near = picture.depth[i]!
      const level = (up - surface * cos) / sin
      const water = surface * sin - level * cos
      const inside = reach(X, up)
      // Clay hides the surface where its wall is nearer.
      const shows = inside <= 1 && (glass || wall < water)
      const throughWall = glass && !shows && up * cos + wall * sin < surface
      if (!shows && !throughWall) continue
      const isShell = picture.owner[i] === VESSEL_OWNER && Math.abs(near - wall) < SAME
      const from = shows ? water : wall
      if (!isShell && near > from + SAME) continue
      wet(picture, i, BODY, false)
      if (!shows || inside < NEAR_EDGE) continue
      const slope = Math.hypot(reach(X + half, up) - inside, reach(X, up + half) - inside) / half
      const cover = Math.min(1, 1.5 - ((1 - inside) / slope - half) * frame.scale)
      if (cover > 0) wet(picture, i, LINE * cover, true)
    }
}
