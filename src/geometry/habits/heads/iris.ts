import type { HeadMaker } from '../organs.ts'
import { addPetal, type PetalForm } from '../petal.ts'
import { lerp, TAU } from '../vector.ts'
import { addTurned } from './parts.ts'

/**
 * Iris: three falls that arch out and hang, each with its signal, three upright standards, three style arms over the
 * falls. It stands on the end of its stem.
 */
export const iris: HeadMaker = (b, f, D, { open, random }) => {
  const foot = D * lerp(0.4, 0.22, open)
  for (let i = 0; i < 3; i++) {
    const turn = (i / 3) * TAU
    const wave = { ruffle: D * 0.02 * open, waves: 6, phase: random() * 6 }
    const fall: PetalForm = {
      turn,
      up: foot,
      length: D * lerp(0.6, 0.84, open),
      width: D * lerp(0.2, 0.46, open),
      base: lerp(9, 34, open),
      tip: lerp(-10, 182, open),
      late: 1.5,
      hollow: D * lerp(0.14, 0.6, open),
      outline: 'fan',
      nu: 10,
      nv: 5,
      ...wave,
    }
    addPetal(b, f, fall, 'petal')
    // The signal lies on the upper half of the fall, clear of the arm above its base.
    addPetal(
      b,
      f,
      {
        ...fall,
        ruffle: 0,
        over: D * 0.01,
        length: fall.length * lerp(0.3, 0.78, open),
        tip: lerp(-8, 125, open),
        width: D * lerp(0.03, 0.1, open),
        outline: 'lance',
        nu: 7,
        nv: 2,
      },
      'pollen',
    )
    addPetal(
      b,
      f,
      {
        turn: turn + TAU / 6,
        up: foot,
        length: D * 0.66,
        width: D * lerp(0.16, 0.32, open),
        base: lerp(9, 36, open),
        tip: lerp(-8, -6, open),
        hollow: D * lerp(0.1, 0.3, open),
        outline: 'egg',
        nu: 8,
        nv: 5,
        ...wave,
      },
      'petal',
    )
    addPetal(
      b,
      f,
      {
        turn,
        up: foot + D * 0.04,
        length: D * 0.36,
        width: D * 0.13,
        base: lerp(2, 22, open),
        tip: lerp(0, 80, open),
        hollow: -D * 0.08,
        outline: 'strap',
        nu: 6,
        nv: 3,
      },
      'petal-second',
    )
  }
  // The ovary, in two pointed sheaths.
  addTurned(
    b,
    f,
    (u) => D * (0.03 + 0.03 * u),
    (u) => foot * (u * 1.02),
    'green',
    4,
    7,
  )
  for (const turn of [0.4, 0.4 + Math.PI])
    addPetal(
      b,
      f,
      { turn, length: D * 0.46, width: D * 0.14, base: 10, tip: 2, hollow: D * 0.07, outline: 'sword', nu: 5, nv: 3 },
      'green',
    )
}
