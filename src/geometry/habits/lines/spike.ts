import { addDome, addTube, type Builder, steps } from '../builder.ts'
import { addFloret } from '../heads/floret.ts'
import { addBallAt, addStamen } from '../heads/parts.ts'
import { frameAt } from '../line.ts'
import { num, type RopeMaker, word } from '../organs.ts'
import { addPetal, type PetalForm } from '../petal.ts'
import { at, type Frame, frameIn, GOLDEN, lerp, type Random, smooth, TAU } from '../vector.ts'

type Floret = (b: Builder, f: Frame, size: number, petals: number, random: Random, i: number) => void

const whorl = (b: Builder, f: Frame, n: number, form: Omit<PetalForm, 'turn'>, phase: number): void => {
  for (let q = 0; q < n; q++) addPetal(b, f, { ...form, turn: (q * TAU) / n + phase }, 'petal')
}

/** The florets of spikes, each facing f.w with f.v about upward; size is their width. */
const FLORETS: Record<string, Floret> = {
  open: (b, f, s, petals, _, i) => {
    whorl(
      b,
      f,
      petals,
      { out: s * 0.05, length: s * 0.56, width: s * 0.52, base: 40, tip: 88, hollow: s * 0.8, nu: 3, nv: 2 },
      0.3,
    )
    if (i % (s < 12 ? 5 : 2) === 0) {
      for (const q of [-0.14, 0.14]) addStamen(b, f, [0, 0, 0], [q * s, 0, s * 0.5], s * 0.05, 'pollen')
    }
  },
  // Delphinium: five broad sepals and a small pale or dark bee in the middle.
  bee: (b, f, s, petals, random) => {
    whorl(
      b,
      f,
      petals,
      { out: s * 0.04, length: s * 0.5, width: s * 0.5, base: 55, tip: 92, hollow: s * 0.7, nu: 5, nv: 4 },
      random(),
    )
    for (let q = 0; q < 3; q++) {
      addPetal(
        b,
        f,
        { turn: q * 2.1, length: s * 0.2, width: s * 0.16, base: 5, tip: 50, up: s * 0.04, nu: 3, nv: 2 },
        'petal-second',
      )
    }
  },
  // Stock: a small loose rose.
  double: (b, f, s, petals, random) => {
    whorl(
      b,
      f,
      petals,
      { out: s * 0.04, length: s * 0.5, width: s * 0.5, base: 50, tip: 100, hollow: s * 0.6, nu: 4, nv: 3 },
      random() * 6,
    )
    whorl(
      b,
      f,
      4,
      { up: s * 0.04, length: s * 0.34, width: s * 0.34, base: 15, tip: 60, hollow: s * 0.3, nu: 3, nv: 2 },
      random() * 6,
    )
  },
  // Gladiolus and its like: six tepals in a funnel.
  trumpet: (b, f, s, _, random) => {
    for (let row = 1; row >= 0; row--) {
      for (let q = 0; q < 3; q++) {
        addPetal(
          b,
          f,
          {
            turn: ((2 * q + row) / 6) * TAU,
            out: s * 0.04,
            up: -s * 0.25,
            length: s * 0.68,
            width: s * (row ? 0.4 : 0.48),
            base: 14,
            tip: 88,
            late: 1.2,
            hollow: s * 0.45,
            ruffle: s * 0.03,
            waves: 6,
            phase: random() * 6,
            nu: 4,
            nv: 3,
          },
          'petal',
        )
      }
    }
    for (const q of [-0.08, 0, 0.08]) addStamen(b, f, [0, 0, -s * 0.2], [q * s, s * 0.1, s * 0.2], s * 0.03, 'pollen')
  },
  // Snapdragon: a tube with two lips, the mouth closed by a paler palate.
  snap: (b, f, s) => {
    addTube(b, [at(f, 0, 0, -s * 0.5), at(f, 0, 0, s * 0.05)], s * 0.12, s * 0.2, 'petal', 5)
    for (const q of [0.45, -0.45]) {
      addPetal(
        b,
        f,
        {
          turn: Math.PI / 2 + q,
          out: s * 0.1,
          length: s * 0.46,
          width: s * 0.42,
          base: 10,
          tip: 105,
          hollow: s * 0.4,
          nu: 4,
          nv: 3,
        },
        'petal',
      )
    }
    for (const q of [-0.75, 0, 0.75]) {
      addPetal(
        b,
        f,
        {
          turn: -Math.PI / 2 + q,
          out: s * 0.1,
          length: s * 0.42,
          width: s * 0.32,
          base: 30,
          tip: 125,
          hollow: s * 0.4,
          nu: 4,
          nv: 3,
        },
        'petal',
      )
    }
    addBallAt(b, f, [0, -s * 0.06, s * 0.12], s * 0.15, s * 0.13, 'petal-second')
  },
  // Liatris: a tuft of threads.
  thread: (b, f, s, _, random) => {
    for (let q = 0; q < 7; q++) {
      const a = (q / 7) * TAU + random()
      const k = q === 0 ? 0.1 : 0.34
      const end = at(f, s * k * Math.cos(a), s * k * Math.sin(a), s * (0.5 + 0.2 * random()))
      addTube(b, [at(f, 0, 0, 0), end], s * 0.05, s * 0.03, q % 3 ? 'petal' : 'petal-second', 3)
    }
  },
  bell: (b, f, s, _, random) => {
    whorl(
      b,
      f,
      5,
      {
        out: s * 0.06,
        up: -s * 0.2,
        length: s * 0.7,
        width: s * 0.44,
        base: 30,
        tip: 40,
        hollow: s * 0.32,
        nu: 5,
        nv: 3,
      },
      random(),
    )
  },
  star: (b, f, s, petals) => addFloret(b, f, s * 0.5, petals, 0.2, 0.75, 'petal', 'pollen'),
}
const PETALS: Record<string, number> = { bee: 5, double: 6, star: 5 }

/**
 * Florets in a spiral round the end of a stem (or in two rows to one side): open below, buds above, green at the tip.
 * shape: floret (name above), florets (count), petals, taper (0 even … 1 to a point), oneSided (1), floretSize (mm),
 * fill (size of florets over what just covers the stem), tinted (share of the spike that shows colour before it opens).
 */
export const spike: RopeMaker = (b, line, from, to, width, { open, shape, random }) => {
  const name = word(shape, 'floret', 'open')
  const floret = FLORETS[name] ?? FLORETS.open!
  const sided = num(shape, 'oneSided', 0) > 0
  const n = Math.max(
    4,
    Math.round(
      num(
        shape,
        'florets',
        name === 'bee' || name === 'snap' || name === 'double'
          ? 44
          : name === 'open' || name === 'star'
            ? 90
            : name === 'thread'
              ? 60
              : sided
                ? 12
                : 34,
      ),
    ),
  )
  const petals = Math.round(num(shape, 'petals', PETALS[name] ?? 4))
  const taper = num(shape, 'taper', name === 'open' ? 0.86 : name === 'thread' ? 0.45 : 0.7)
  const opened = lerp(0.04, 0.85, open)
  const tinted = num(shape, 'tinted', 0.25)
  const long = to - from
  // Many florets cover the stem by their number, few by their size.
  const natural = Math.sqrt((Math.PI * width * long * 1.5) / n)
  const size = num(shape, 'floretSize', sided ? width * 0.8 : Math.min(width * 0.62, natural * num(shape, 'fill', 1)))
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    // From the top down the spiral of thread florets opens; everywhere else from below.
    const first = name === 'thread' ? 1 - k : k
    const f = frameAt(line, lerp(from, to, k * (1 - 0.02)))
    const turn = sided ? Math.PI / 2 + (i % 2 ? 0.42 : -0.42) : i * GOLDEN
    const r = (width / 2) * (1 - k ** 1.7 * taper) * smooth(-0.12, 0.1, k)
    const rise = lerp(0.25, 1.5, k)
    const out: [number, number, number] = [Math.cos(turn), Math.sin(turn), rise]
    const l = Math.hypot(...out)
    const isOpen = first < opened
    const s = isOpen
      ? size * lerp(1, 0.6, k) * lerp(1, 0.75, smooth(opened - 0.3, opened, first))
      : size * (sided || name === 'trumpet' ? lerp(0.36, 0.16, k) : lerp(0.6, 0.26, k))
    const reach = Math.max(0.08 * width, r - s * (isOpen ? 0.34 : 0.5)) / l
    const place: [number, number, number] = [out[0] * reach, out[1] * reach, out[2] * reach]
    addTube(b, [f.o, at(f, ...place)], width * 0.02, width * 0.02, 'green', 3)
    if (isOpen) {
      const g = frameIn(f, place, out)
      floret(b, g, s, petals, random, i)
    } else if (name === 'thread') addDome(b, f, place, out, Math.max(width * 0.07, s * 0.42), 'green', 1)
    else addDome(b, f, place, out, Math.max(width * 0.03, s * 0.5), first < opened + tinted ? 'petal' : 'green', 1.5)
    if (sided) {
      // Each floret of a comb sits in a green sheath.
      const side: [number, number, number] = [out[0], out[1], 2.2]
      const g = frameIn(f, [0, 0, 0], side)
      addPetal(
        b,
        g,
        {
          turn: 0,
          length: s * (isOpen ? 0.6 : 1.3),
          width: s * 0.3,
          base: 2,
          tip: 8,
          hollow: s * 0.2,
          outline: 'sword',
          nu: steps(b, 4),
          nv: 2,
        },
        'green',
      )
    }
  }
}
