import type { Tissue } from '../../types.ts'
import { addGrid, addTube, type Builder, steps } from '../builder.ts'
import { addPetal } from '../petal.ts'
import { at, type Frame, TAU } from '../vector.ts'

/** A half ball of radius r and height h standing at height z; h below 0 hangs. */
export const addCap = (b: Builder, f: Frame, r: number, h: number, z: number, tissue: Tissue, nv = 12): void =>
  addGrid(
    b,
    steps(b, 4),
    steps(b, nv, 6),
    (u, v, out) => {
      const a = (u * Math.PI) / 2
      const s = r * Math.sin(a)
      const [x, y, up] = [s * Math.cos(v * TAU), s * Math.sin(v * TAU), z + h * Math.cos(a)]
      for (let k = 0; k < 3; k++) out[k] = f.o[k]! + f.u[k]! * x + f.v[k]! * y + f.w[k]! * up
    },
    tissue,
    { closed: true, uv: [0.1, 0.5] },
  )

/** A round body about the axis: `radius` and `height` by u (0 … 1). */
export const addTurned = (
  b: Builder,
  f: Frame,
  radius: (u: number) => number,
  height: (u: number) => number,
  tissue: Tissue,
  nu = 6,
  nv = 10,
): void =>
  addGrid(
    b,
    steps(b, nu, 3),
    steps(b, nv, 5),
    (u, v, out) => {
      const s = radius(u)
      const [x, y, up] = [s * Math.cos(v * TAU), s * Math.sin(v * TAU), height(u)]
      for (let k = 0; k < 3; k++) out[k] = f.o[k]! + f.u[k]! * x + f.v[k]! * y + f.w[k]! * up
    },
    tissue,
    { closed: true },
  )

/** The green cup under a head with its sepals; `top` is the height of its rim, r its radius. */
export const addCalyx = (
  b: Builder,
  f: Frame,
  r: number,
  top: number,
  sepals: number,
  angle: number,
  long: number,
): void => {
  addTurned(
    b,
    f,
    (u) => r * Math.sin(0.12 + u * 1.45),
    (u) => top - 1.9 * r * (1 - u),
    'green',
    5,
    8,
  )
  for (let i = 0; i < sepals; i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / sepals + 0.4,
        out: r * 0.85,
        up: top - 0.35 * r,
        length: long,
        width: long * 0.34,
        base: Math.min(70, angle),
        tip: angle,
        outline: 'lance',
        nu: 5,
        nv: 2,
        fold: 0.25,
      },
      'green',
    )
  }
}

/** A stamen: a thread from local a to b with a pollen tip of radius r. */
export const addStamen = (
  b: Builder,
  f: Frame,
  from: [number, number, number],
  to: [number, number, number],
  r: number,
  tissue: Tissue,
): void => {
  const p = at(f, ...from)
  const q = at(f, ...to)
  addTube(b, [p, q], r * 0.38, r * 0.38, tissue, 3)
  const g = { ...f, o: q }
  addTurned(
    b,
    g,
    (u) => r * Math.sin(u * Math.PI),
    (u) => -r * 1.3 * Math.cos(u * Math.PI),
    'pollen',
    3,
    5,
  )
}

/** A ball at a local place: half width r, half height h. */
export const addBallAt = (
  b: Builder,
  f: Frame,
  place: [number, number, number],
  r: number,
  h: number,
  tissue: Tissue,
): void =>
  addTurned(
    b,
    { ...f, o: at(f, ...place) },
    (u) => r * Math.sin(u * Math.PI),
    (u) => -h * Math.cos(u * Math.PI),
    tissue,
    5,
    7,
  )
