import type { Point3, Vessel } from '../arrangement/index.ts'
import {
  floorFraction,
  type HalfSection,
  heightFraction,
  innerSection,
  outerSection,
  reachIn,
} from '../geometry/index.ts'
import { addGrid, addWire, type Growing } from './surface.ts'

/**
 * Chicken wire: mm across a cell (the trade sells 13, 25 and 50 mm; 25 or 50 for vessels) and of its wire. Two sides of a cell are
 * twisted: from the side half as thick again. Common practice.
 */
const CELL = 25
const WIRE = 0.8
const TWIST = 1.5
/** Crumpled in two layers, tucked in under the rim and domed over it, so that level stems hold too. Common practice; figures ours. */
const TUCKED = -7
const DOME = { most: 14, ofWidth: 0.09 }
const LAYER = 16
const CRUMPLED = 2.5
/** A tape grid: strips and gaps, mm. Common practice. */
const TAPE = 6
const TAPE_STEP = 22
/** Pins of a pin-holder: height over the floor and spacing, mm. Ours, from practice. */
const PIN = 13
const PIN_STEP = 6
const PIN_WIDE = 1.2

/** The part of a wire that lies in the mouth, bent down no further than the wall lets it; null where none does. */
const clipped = (p: Point3, q: Point3, inside: (p: Point3) => boolean): [Point3, Point3] | null => {
  const [a, b] = [inside(p), inside(q)]
  if (!a && !b) return null
  if (a && b) return [p, q]
  let [held, out] = a ? [p, q] : [q, p]
  for (let k = 0; k < 6; k++) {
    const middle: Point3 = [(held[0] + out[0]) / 2, (held[1] + out[1]) / 2, (held[2] + out[2]) / 2]
    if (inside(middle)) held = middle
    else out = middle
  }
  return [a ? p : q, held]
}

const netting = (g: Growing, vessel: Vessel, material: number): void => {
  const mouth = innerSection(vessel, 1)
  const reach = (x: number, y: number): number => reachIn(vessel, mouth, x, y)
  const inside = ([x, y]: Point3): boolean => reach(x, y) < 0.98
  const side = CELL / Math.sqrt(3)
  const rise = Math.min(DOME.most, DOME.ofWidth * 2 * Math.min(mouth.a, mouth.b)) - TUCKED - CRUMPLED
  const cells = Math.ceil(Math.max(mouth.a, mouth.b) / (1.5 * side)) + 1
  for (const layer of [0, 1])
    for (let i = -cells; i <= cells; i++)
      for (let j = -cells; j <= cells; j++) {
        const x = 1.5 * side * i + layer * 9
        const y = CELL * (j + (i & 1) / 2) + layer * 6
        const point = (k: number): Point3 => {
          const a = (k * Math.PI) / 3
          const [px, py] = [x + side * Math.cos(a), y + side * Math.sin(a)]
          const [cx, cy] = [px + 2 * Math.sin(py * 0.2), py + 2 * Math.cos(px * 0.17)]
          const domed = rise * Math.max(0, 1 - Math.min(1, reach(cx, cy)) ** 2)
          const uneven = (CRUMPLED / 2) * (Math.sin(px * 0.11 + 2 * layer) + Math.cos(py * 0.13))
          return [cx, cy, Math.max(TUCKED - LAYER * layer + domed + uneven, -vessel.height * 0.7)]
        }
        for (let k = 0; k < 3; k++) {
          const wire = clipped(point(k), point(k + 1), inside)
          if (wire) addWire(g, wire[0], wire[1], k === 1 ? TWIST * WIRE : WIRE, material)
        }
      }
}

const tapeGrid = (g: Growing, vessel: Vessel, material: number): void => {
  // It sticks to the rim.
  const mouth = outerSection(vessel, 1)
  for (const along of [0, 1]) {
    const half = along === 0 ? mouth.b : mouth.a
    const count = Math.floor((half - TAPE / 2) / TAPE_STEP)
    for (let i = -count; i <= count; i++) {
      const off = i * TAPE_STEP
      const unit = along === 0 ? reachIn(vessel, mouth, 0, off) : reachIn(vessel, mouth, off, 0)
      const other = along === 0 ? mouth.a : mouth.b
      const long = vessel.plan === 'rectangular' ? other : other * Math.sqrt(Math.max(0, 1 - unit * unit))
      addGrid(g, 1, 1, material, (u, v) => {
        const [s, t] = [(2 * u - 1) * long, off + (v - 0.5) * TAPE]
        return along === 0 ? [s, t, 0.3] : [t, s, 0.6]
      })
    }
  }
}

const pinHolder = (g: Growing, vessel: Vessel, material: number, pins: number): void => {
  const floor = -vessel.height + vessel.wall
  const base = innerSection(vessel, Math.min(1, vessel.wall / vessel.height + 0.05))
  const r = Math.min(38, 0.8 * Math.min(base.a, base.b))
  if (r < 4) return
  addGrid(g, 2, 32, material, (u, v) => {
    const a = v * 2 * Math.PI
    const k = Math.min(1, 2 * u) * r
    return [k * Math.cos(a), k * Math.sin(a), floor + (u > 0.5 ? 0.5 : 5)]
  })
  for (let x = -r; x <= r; x += PIN_STEP)
    for (let y = -r; y <= r; y += PIN_STEP) {
      if (Math.hypot(x, y) >= r - 1) continue
      addGrid(g, 1, 1, pins, (u, v) => [x + (v - 0.5) * PIN_WIDE, y + (v - 0.5) * PIN_WIDE, floor + 5 + u * (PIN - 5)])
      addGrid(g, 1, 1, pins, (u, v) => [x + (u - 0.5) * PIN_WIDE, y + (v - 0.5) * PIN_WIDE, floor + PIN])
    }
}

const foam = (g: Growing, vessel: Vessel, material: number): void => {
  const ring = ({ a, b }: HalfSection, u: number, v: number, z: number): Point3 => {
    const t = v * 2 * Math.PI
    const [c, s] = [Math.cos(t), Math.sin(t)]
    const k = u * (vessel.plan === 'rectangular' ? 0.97 / Math.max(Math.abs(c), Math.abs(s)) : 0.97)
    return [a * k * c, b * k * s, z]
  }
  addGrid(g, 4, 64, material, (u, v) => ring(innerSection(vessel, 1), u, v, -4))
  if (vessel.material !== 'glass') return
  // The whole block is seen.
  const deep = vessel.height - vessel.wall - 4
  addGrid(g, 16, 64, material, (u, v) => {
    const z = -4 - u * deep
    return ring(innerSection(vessel, Math.max(heightFraction(vessel, z), floorFraction(vessel))), 1, v, z)
  })
}

/**
 * Adds what holds the stems, to scale.
 * @param pins material of a pin-holder's pins
 */
export const mechanicsInto = (g: Growing, vessel: Vessel, material: number, pins: number): void => {
  if (vessel.mechanics === 'netting') netting(g, vessel, material)
  else if (vessel.mechanics === 'tape-grid') tapeGrid(g, vessel, material)
  else if (vessel.mechanics === 'pin-holder') pinHolder(g, vessel, material, pins)
  else if (vessel.mechanics === 'foam') foam(g, vessel, material)
}
