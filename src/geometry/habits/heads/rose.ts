import { type HeadMaker, num } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, frameIn, GOLDEN, lerp, TAU } from '../vector.ts'
import { addCalyx, addCap } from './parts.ts'

/**
 * Hybrid tea and sweetheart rose: petals wound into a high pointed heart, the outer ones rolled back to a point.
 * shape: petals, tightness (1: only the outermost open).
 */
export const teaRose: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const n = Math.max(8, Math.round(num(shape, 'petals', 26) * (small ? 0.75 : 1)))
  const tight = num(shape, 'tightness', 0)
  const away = lerp(1.25, 2.3, tight)
  for (let i = n - 1; i >= 0; i--) {
    const k = i / (n - 1)
    const far = k ** away
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.3,
        out: D * lerp(0.02, 0.085, k),
        up: D * lerp(0.1, -0.04, k ** 0.7),
        length: D * lerp(0.42, 0.56, k) * about(random, 0.04),
        width: D * lerp(0.3, 0.56, k ** 0.7),
        base: lerp(2, lerp(12, 46 - 18 * tight, open), far) + (random() - 0.5) * 4,
        tip: lerp(-7, lerp(-14, 150 - 90 * tight, open), far) + (random() - 0.5) * 12 * k,
        late: lerp(1, 1.7, k),
        hollow: D * lerp(0.05, lerp(0.24, 0.3, open), k),
        opening: lerp(0.8, 1 + 0.9 * open, k),
        curl: D * lerp(0.004, 0.1, far) * open,
        ruffle: D * 0.008,
        waves: 3,
        phase: random() * TAU,
        outline: 'rolled',
        nu: small ? 7 : 10,
        nv: small ? 5 : 8,
      },
      'petal',
    )
  }
  addCap(b, f, D * 0.1, D * 0.2, 0, 'petal')
  addCalyx(b, f, D * lerp(0.1, 0.08, open), D * 0.02, 5, lerp(25, 130, open), D * 0.3)
}

/** Petals of a quarter of a garden rose, wound about an axis of their own. */
const QUARTER = 12

/**
 * Garden rose: broad round guards in a deep cup, filled level with small petals in four quarters.
 * shape: guards.
 */
export const gardenRose: HeadMaker = (b, f, D, { open, shape, random }) => {
  const guards = Math.round(num(shape, 'guards', 13))
  for (let i = guards - 1; i >= 0; i--) {
    const k = i / (guards - 1)
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + (random() - 0.5) * 0.2,
        out: D * 0.05,
        up: D * lerp(0, -0.05, k),
        length: D * lerp(0.43, 0.53, k) * about(random, 0.03),
        width: D * lerp(0.44, 0.56, k),
        base: lerp(lerp(58, 70, k), lerp(66, 86, k), open),
        tip: lerp(-48, lerp(-34, 50, k * k), open) + (random() - 0.5) * 8,
        late: lerp(0.75, 0.9, open),
        hollow: D * lerp(0.26, 0.36, k),
        opening: lerp(0.75, 1.2, open),
        ruffle: D * 0.01,
        phase: random() * TAU,
        notch: 0.05,
        nu: 8,
        nv: 7,
      },
      'petal',
    )
  }
  const start = random() * TAU
  const wide = lerp(0.7, 1, open)
  for (let q = 0; q < 5; q++) {
    // Four quarters, and a few petals that close the gap in their midst.
    const a = start + (q / 4) * TAU + (random() - 0.5) * 0.3
    const r = q < 4 ? D * 0.145 * wide : 0
    const g = frameIn(
      f,
      [r * Math.cos(a), r * Math.sin(a), 0],
      [Math.cos(a) * 0.2, Math.sin(a) * 0.2, q < 4 ? 1 : 9],
      a,
    )
    const n = q < 4 ? QUARTER : 7
    for (let i = 0; i < n; i++) {
      const k = (i + (q < 4 ? 1 : 2)) / QUARTER
      addPetal(
        b,
        g,
        {
          turn: i * GOLDEN + (random() - 0.5) * 0.3,
          out: D * 0.115 * k * wide,
          up: D * lerp(0.05, 0, k),
          length: D * lerp(0.37, 0.34, k) * lerp(0.8, 1, open) * about(random, 0.05),
          width: D * lerp(0.1, 0.25, k),
          base: lerp(0, 6, k),
          tip: lerp(-30, lerp(-20, 22, open), k) + (random() - 0.5) * 10,
          hollow: D * lerp(0.025, 0.12, k),
          ruffle: D * 0.008,
          phase: random() * TAU,
          nu: 3,
          nv: 4,
        },
        'petal',
      )
    }
  }
  addCap(b, f, D * 0.27 * wide, D * 0.24, 0, 'petal')
  addCalyx(b, f, D * 0.09, 0, 5, lerp(30, 125, open), D * 0.24)
}
