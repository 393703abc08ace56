import { addDome, addTube, steps } from '../builder.ts'
import { frameAt, stretch } from '../line.ts'
import { num, type RopeMaker, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { at, frameIn, GOLDEN, lerp, smooth } from '../vector.ts'
import { FLORETS } from './florets.ts'

const PETALS: Record<string, number> = { bee: 5, spur: 5, double: 6, star: 5 }

/**
 * Florets in a spiral round the end of a stem (or in two rows to one side): open below, buds above, green at the tip.
 * shape: floret (name above), florets (count), petals, taper (0 even … 1 to a point), oneSided (1), floretSize (mm),
 * fill (size of florets over what just covers the stem), tinted (share of the spike that shows colour before it opens),
 * opens (share that is open at openness 1), crest (size of the topmost florets over the lowest), core (width of the
 * green stem within, over the spike's), pairs (1: two by two).
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
  const opened = lerp(0.04, num(shape, 'opens', 0.85), open)
  const crest = num(shape, 'crest', 0.6)
  const core = num(shape, 'core', 0)
  const tinted = num(shape, 'tinted', 0.25)
  // Buds of a tuberose are flushed.
  const budTissue = name === 'wax' ? 'petal-second' : 'petal'
  const long = to - from
  if (core > 0) {
    const at = (k: number): number => (width / 2) * core * (1 - k ** 1.7 * taper)
    addTube(b, stretch(line, from, lerp(from, to, 0.97), 6), at(0), at(1), 'green', 8)
  }
  // Many florets cover the stem by their number, few by their size.
  const natural = Math.sqrt((Math.PI * width * long * 1.5) / n)
  const size = num(shape, 'floretSize', sided ? width * 0.8 : Math.min(width * 0.62, natural * num(shape, 'fill', 1)))
  const pairs = num(shape, 'pairs', 0) > 0
  const ranks = pairs ? Math.ceil(n / 2) : n
  for (let i = 0; i < n; i++) {
    const rank = pairs ? i >> 1 : i
    const k = rank / (ranks - 1)
    // From the top down the spiral of thread florets opens; everywhere else from below.
    const first = name === 'thread' ? 1 - k : k
    const f = frameAt(line, lerp(from, to, k * (1 - 0.02)))
    // Comb and ranks look the way the stem leans; crowded florets do not stand in a lattice.
    const loose = name === 'star' ? random() - 0.5 : 0
    const apart = sided || pairs ? (i % 2 ? 0.42 : -0.42) : 0.5 * loose
    const turn = (sided ? -Math.PI / 2 : rank * GOLDEN) + apart
    const r = (width / 2) * (1 - k ** 1.7 * taper) * smooth(-0.12, 0.1, k)
    const rise = lerp(0.25, 1.5, k)
    const out: [number, number, number] = [Math.cos(turn), Math.sin(turn), rise]
    const l = Math.hypot(...out)
    const isOpen = first < opened
    const fresh = smooth(opened - 0.3, opened, first)
    const s = isOpen
      ? size * lerp(1, crest, k) * lerp(1, sided ? 0.62 : 0.75, fresh)
      : size * (sided || name === 'trumpet' ? lerp(0.36, 0.16, k) : lerp(0.6, 0.43 * crest, k))
    const reach = (Math.max(0.08 * width, r - s * (isOpen ? 0.34 : 0.5)) / l) * (1 + 0.3 * loose)
    const place: [number, number, number] = [out[0] * reach, out[1] * reach, out[2] * reach]
    addTube(b, [f.o, at(f, ...place)], width * 0.02, width * 0.02, 'green', 3)
    if (isOpen) {
      const g = frameIn(f, place, out, 9 * loose)
      floret(b, g, s, petals, random, i, fresh)
    } else if (name === 'thread') addDome(b, f, place, out, Math.max(width * 0.07, s * 0.42), 'green', 1)
    else
      addDome(
        b,
        f,
        place,
        out,
        Math.max(width * 0.03, s * 0.5),
        first < opened + tinted ? budTissue : 'green',
        name === 'wax' ? 2 : 1.5,
      )
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
