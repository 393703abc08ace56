import { addGrid, steps } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { at, type Frame, lerp, smooth, TAU } from '../vector.ts'
import { crane } from './crane.ts'
import { addTurned } from './parts.ts'

const spadix = (b: Parameters<HeadMaker>[0], f: Frame, r: number, from: number, to: number): void =>
  addTurned(
    b,
    f,
    (u) => r * Math.min(1, Math.sqrt(Math.max(0, 1 - u)) * 1.8) * lerp(0.8, 1, smooth(0, 0.2, u)),
    (u) => lerp(from, to, u),
    'pollen',
    7,
    9,
  )

/** Anthurium: a flat heart across the axis, cleft behind and pointed in front; the spadix stands out of it. */
const heart: HeadMaker = (b, f, D, { open, shape, random }) => {
  const shut = 1 - open
  const phase = random() * 6
  addGrid(
    b,
    steps(b, 8),
    steps(b, 36, 16),
    (u, v, out) => {
      const a = v * TAU
      const reach = 0.62 * (1 + 0.12 * Math.sin(a) ** 2)
      const point = 0.22 * Math.max(0, Math.cos(a)) ** 8
      const cleft = 0.42 * Math.exp(-(((Math.PI - Math.abs(a - (a > Math.PI ? TAU : 0))) / 0.33) ** 2))
      const r = D * 0.72 * u * (reach + point - cleft)
      const x = r * Math.cos(a) + D * 0.1
      const y = r * Math.sin(a)
      const bowl = 0.25 + 1.6 * shut
      const z = (bowl * y * y + 0.25 * x * x * Math.sign(x)) / D + D * 0.008 * Math.sin(5 * a + phase) * u
      const narrow = 1 - 0.45 * shut
      for (let k = 0; k < 3; k++) out[k] = f.o[k]! + f.u[k]! * x + f.v[k]! * y * narrow + f.w[k]! * z
    },
    'petal',
    { closed: true },
  )
  const g: Frame = { ...f, o: at(f, -D * 0.1, 0, D * 0.02) }
  const lean = num(shape, 'lean', 0.5)
  const w: [number, number, number] = [f.w[0] + f.u[0] * lean, f.w[1] + f.u[1] * lean, f.w[2] + f.u[2] * lean]
  const l = Math.hypot(...w)
  const u: [number, number, number] = [f.u[0] - f.w[0] * lean, f.u[1] - f.w[1] * lean, f.u[2] - f.w[2] * lean]
  spadix(b, { ...g, w: [w[0] / l, w[1] / l, w[2] / l], u: [u[0] / l, u[1] / l, u[2] / l] }, D * 0.045, 0, D * 0.5)
}

/** Calla: a sheet rolled into a funnel, tall behind with a point, low in front where its edges cross. */
export const spathe: HeadMaker = (b, f, D, head) => {
  if (word(head.shape, 'kind', 'calla') === 'crane') return crane(b, f, D, head)
  if (word(head.shape, 'kind', 'calla') === 'anthurium') return heart(b, f, D, head)
  const { open, shape, random } = head
  // The garden kind flares and rolls its whole lip back to a drawn-out tip; the small kind is a narrow cup.
  const flaring = num(shape, 'flare', 1)
  const tall = D * num(shape, 'tall', 1.5) * lerp(2.2, 1, open)
  const low = -tall * 0.62
  const phase = random() * TAU
  addGrid(
    b,
    steps(b, 16),
    steps(b, 26, 14),
    (u, v, out) => {
      const a = lerp(-1.12, 1.12, v) * Math.PI
      const back = Math.cos(Math.min(Math.PI, Math.abs(a)) / 2) ** 2
      // The lip: highest behind, cut away to the front.
      const lip = lerp(lerp(0.7, 0.56, flaring), 1, back ** lerp(1.6, 1, flaring)) + 0.16 * back ** 10
      const t = u * lip
      const inner = 1 - 0.1 * v
      const flare = lerp(0.22, lerp(0.26, 0.21, flaring), open) * t ** lerp(2, 2.6, open) + 0.13 * smooth(0, 0.6, t)
      const rolled = smooth(0.72, 1, u) ** 2 * open * flaring
      const r = D * (0.035 + flare + 0.09 * rolled) * inner * 1.1
      const wave = rolled * D * 0.02 * Math.sin(3 * a + phase)
      const x = -Math.cos(a) * r - rolled * D * 0.16 * back
      const y = Math.sin(a) * r
      const z = low + tall * t - rolled * D * 0.1 + wave
      for (let k = 0; k < 3; k++) out[k] = f.o[k]! + f.u[k]! * x + f.v[k]! * y + f.w[k]! * z
    },
    'petal',
  )
  spadix(b, f, D * 0.055, low + tall * 0.15, low + tall * 0.68)
  addTurned(
    b,
    f,
    (u) => D * (0.03 + 0.02 * u),
    (u) => low + D * 0.08 * (u - 0.6),
    'green',
    3,
    7,
  )
}
