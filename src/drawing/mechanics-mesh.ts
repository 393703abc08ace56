import type { Point3, Vessel } from '../arrangement/index.ts'
import { innerSection, reachIn } from '../geometry/index.ts'
import { addGrid, addWire, type Growing } from './surface.ts'

/** Netting of this mesh (mm across a cell) and wire; 25 mm and 50 mm are the usual meshes. Common practice. */
const CELL = 25
const WIRE = 0.9
/** A tape grid: strips and gaps, mm. Common practice. */
const TAPE = 6
const TAPE_STEP = 22
/** Pins of a pin-holder: height over the floor and spacing, mm. Ours, from practice. */
const PIN = 13
const PIN_STEP = 6

const netting = (g: Growing, vessel: Vessel, material: number): void => {
  const mouth = innerSection(vessel, 1)
  const inside = (x: number, y: number): boolean => reachIn(vessel, mouth, x, y) < 0.97
  const side = CELL / Math.sqrt(3)
  const reach = Math.ceil(Math.max(mouth.a, mouth.b) / (1.5 * side)) + 1
  // Crumpled by hand: no cell lies quite level, and a second layer lies below the first; its crests stay under the rim.
  for (const layer of [0, 1])
    for (let i = -reach; i <= reach; i++)
      for (let j = -reach; j <= reach; j++) {
        const x = 1.5 * side * i + layer * 9
        const y = CELL * (j + (i & 1) / 2) + layer * 6
        const point = (k: number): Point3 => {
          const a = (k * Math.PI) / 3
          const [px, py] = [x + side * Math.cos(a), y + side * Math.sin(a)]
          const z = -7 - 14 * layer + 3 * Math.sin(px * 0.11 + layer) + 3 * Math.cos(py * 0.13)
          return [px + 2 * Math.sin(py * 0.2), py + 2 * Math.cos(px * 0.17), Math.max(z, -vessel.height * 0.7)]
        }
        for (let k = 0; k < 3; k++) {
          const [p, q] = [point(k), point(k + 1)]
          if (inside(p[0], p[1]) && inside(q[0], q[1])) addWire(g, p, q, WIRE, material)
        }
      }
}

const tapeGrid = (g: Growing, vessel: Vessel, material: number): void => {
  const mouth = innerSection(vessel, 1)
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

const pinHolder = (g: Growing, vessel: Vessel, material: number): void => {
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
    for (let y = -r; y <= r; y += PIN_STEP)
      if (Math.hypot(x, y) < r - 1)
        addGrid(g, 1, 1, material, (u, v) => [x + (v - 0.5) * 0.8, y + (v - 0.5) * 0.8, floor + 5 + u * (PIN - 5)])
}

const foam = (g: Growing, vessel: Vessel, material: number): void => {
  const { a, b } = innerSection(vessel, 1)
  addGrid(g, 4, 64, material, (u, v) => {
    const t = v * 2 * Math.PI
    const [c, s] = [Math.cos(t), Math.sin(t)]
    const k = vessel.plan === 'rectangular' ? 0.97 / Math.max(Math.abs(c), Math.abs(s)) : 0.97
    return [a * k * u * c, b * k * u * s, -4]
  })
}

/** Adds a hint of what holds the stems. */
export const mechanicsInto = (g: Growing, vessel: Vessel, material: number): void => {
  if (vessel.mechanics === 'netting') netting(g, vessel, material)
  else if (vessel.mechanics === 'tape-grid') tapeGrid(g, vessel, material)
  else if (vessel.mechanics === 'pin-holder') pinHolder(g, vessel, material)
  else if (vessel.mechanics === 'foam') foam(g, vessel, material)
}
