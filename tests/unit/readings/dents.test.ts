import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Arrangement, Stem } from '../../../src/arrangement/index.ts'
import { dentCentre, largestDent } from '../../../src/readings/dents.ts'
import { createEngine } from '../../../src/readings/index.ts'
import { design, resolve, stem } from './made.ts'

const engine = createEngine()
const dent = (d: Arrangement) => {
  engine.update(resolve(d))
  const found = largestDent(engine)
  const { mm } = engine.frame.plan
  return { wide: 2 * found.radius * mm, centre: dentCentre(found, mm) }
}

/** Heads in a lying ring, as in a wreath, all at one height. */
const wreath = (n: number, radius: number, head: number, z = 110): Stem[] =>
  Array.from({ length: n }, (_, i) => {
    const a = (i * 2 * Math.PI) / n
    return stem(`r${i}`, [radius * Math.cos(a), radius * Math.sin(a), z], { head })
  })
const GREENS: Partial<Stem> = { plant: 'green', role: 'greens', colour: '#55703f' }

/** By a search of its own: a cell lies in a hole if no way out stays below its level, and the circle is the widest that fits. */
const slowly = (wall: number[][], floor: number[][], deep: number): number => {
  const n = wall.length
  const out = wall.map((row) => row.map(() => Infinity))
  for (let round = 0, changed = true; changed && round < n * n; round++) {
    changed = false
    for (let r = 0; r < n; r++)
      for (let c = 0; c < n; c++) {
        const edge = r === 0 || c === 0 || r === n - 1 || c === n - 1
        const way = edge ? 0 : Math.min(out[r - 1]![c]!, out[r + 1]![c]!, out[r]![c - 1]!, out[r]![c + 1]!)
        const level = Math.max(way, wall[r]![c]!)
        if (level < out[r]![c]!) {
          out[r]![c] = level
          changed = true
        }
      }
  }
  let best = 0
  for (let r = 0; r < n; r++)
    for (let c = 0; c < n; c++) {
      let near = Infinity
      for (let y = -1; y <= n; y++)
        for (let x = -1; x <= n; x++) {
          const inside = y >= 0 && x >= 0 && y < n && x < n
          if (!inside || out[y]![x]! - floor[y]![x]! < deep) near = Math.min(near, (y - r) ** 2 + (x - c) ** 2)
        }
      best = Math.max(best, near)
    }
  return best
}

describe('holes seen from above', () => {
  it('a wreath has the hole that is left in its middle', () => {
    const { wide, centre } = dent(design(wreath(24, 100, 50)))
    expect(Math.abs(wide - 150)).toBeLessThan(12)
    expect(Math.hypot(...centre)).toBeLessThan(8)
  })
  it('a wreath with a gap as wide as two hands lets the eye, and water, out: no hole', () => {
    expect(dent(design(wreath(24, 100, 50).slice(5))).wide).toBeLessThan(12)
  })
  it('a crater in a mound is a hole, and a rose set into it closes it', () => {
    const mound = [...wreath(9, 55, 44, 150), ...wreath(14, 105, 46, 110), ...wreath(14, 120, 44, 60)]
    const full = dent(design([...mound, stem('top', [0, 0, 165], { head: 70 })])).wide
    const crater = dent(design(mound)).wide
    expect(crater).toBeGreaterThan(40)
    expect(full).toBeLessThan(crater / 2)
  })
  it('filler at the bottom of a deep crater leaves it one; near its brim it closes it', () => {
    const ring = [...wreath(12, 70, 50, 150), ...wreath(14, 115, 46, 80)]
    const at = (z: number): number => dent(design([...ring, stem('g', [0, 0, z], { role: 'filler', head: 96 })])).wide
    expect(at(20)).toBeGreaterThan(50)
    expect(at(140)).toBeLessThan(20)
  })
  it('bare stems close nothing: they are looked through', () => {
    // Two half rings with a way between them, and stems that lean across the way.
    const half = wreath(24, 100, 50).filter((s) => Math.abs(s.tip[1]) > 30)
    const across = [-8, 0, 8].map((y, i) => stem(`x${i}`, [-230, y, 150], { mouth: [30, y], head: 12 }))
    expect(dent(design(half)).wide).toBeLessThan(12)
    expect(dent(design([...half, ...across])).wide).toBeLessThan(12)
  })
  it('a flower’s own cup is no hole', () => {
    expect(dent(design([stem('t', [0, 0, 120], { plant: 'cup', head: 90 })])).wide).toBeLessThan(16)
  })
  it('a deeper crater is never read as smaller', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 120 }), fc.integer({ min: 44, max: 60 }), (radius, head) => {
        const ring = wreath(24, radius, head, 140)
        const wide = [135, 100, 60, 20].map((z) => dent(design([...ring, stem('m', [0, 0, z], { head })])).wide)
        for (let i = 1; i < wide.length; i++) expect(wide[i]!).toBeGreaterThanOrEqual(wide[i - 1]! - 1e-9)
      }),
      { numRuns: 25 },
    )
  })
  it('agrees with a slow search of its own on random heights', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({ min: -90, max: 90 }),
            fc.integer({ min: -90, max: 90 }),
            fc.integer({ min: 20, max: 160 }),
          ),
          { minLength: 3, maxLength: 14 },
        ),
        (places) => {
          const stems = places.map(([x, y, z], i) => stem(`s${i}`, [x, y, z], { ...GREENS, head: 60 }))
          engine.update(resolve(design(stems)))
          const { depth, owner } = engine.layers.at(-1)!
          const top = Math.max(...engine.ready.map((r) => r.high))
          const n = Math.sqrt(depth.length) / 2
          const [wall, floor] = [0, 1].map((which) =>
            Array.from({ length: n }, (_, r) =>
              Array.from({ length: n }, (_, c) => {
                const z = [0, 1, 2, 3].flatMap((k) => {
                  const i = (2 * r + (k >> 1)) * 2 * n + 2 * c + (k & 1)
                  const bare = owner[i] !== 65535 && owner[i]! > 0 && (owner[i]! - 1) % 4 === 2
                  return bare ? [] : [Math.max(0, depth[i]!)]
                })
                const mm = which === 0 || z.length === 0 ? Math.max(0, ...z) : Math.min(...z)
                return Math.min(64, Math.round((mm * 64) / top))
              }),
            ),
          ) as [number[][], number[][]]
          const best = slowly(wall, floor, 16)
          expect(largestDent(engine).radius).toBeCloseTo(2 * Math.max(0, Math.sqrt(best) - 1), 9)
        },
      ),
      { numRuns: 20 },
    )
  })
})
