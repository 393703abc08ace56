import type { Point3 } from '../../../arrangement/index.ts'
import type { Tissue } from '../../types.ts'
import { addDome, addTube, type Builder } from '../builder.ts'
import { addFloret } from '../heads/floret.ts'
import { frameAt, stretch } from '../line.ts'
import { num, type RopeMaker, word } from '../organs.ts'
import { about, at, bow, type Frame, frameIn, frameOf, GOLDEN, lerp, mix, smooth, sub, unit } from '../vector.ts'

/** What stands along a side flame: round florets, tongues of flame (celosia), little daisies (solidaster). */
const BEADS: Record<string, (b: Builder, f: Frame, d: Point3, r: number, tissue: Tissue) => void> = {
  bead: (b, f, d, r, tissue) => addDome(b, f, [0, 0, 0], d, r, tissue, 1.2),
  flame: (b, f, d, r, tissue) => addDome(b, f, [0, 0, 0], [d[0] * 0.5, d[1] * 0.5, 1], r * 0.62, tissue, 6),
  daisy: (b, f, d, r) =>
    addFloret(b, frameIn(f, [0, 0, 0], [d[0] * 0.8, d[1] * 0.8, d[2]], r), r * 1.5, 9, 0.08, 0.62, 'petal', 'pollen'),
}

/**
 * A cone of fine side flames set with florets: astilbe, solidago, feathered celosia.
 * shape: flames, florets, arch (how the flames bow down), bead (name above), fine (width of a floret over what covers
 * the flames), point (0 a column … 1 a cone), sided (1: the flames lean to one side), steep (how far
 * they rise for what they spread when open), bare (share of a flame without florets).
 */
export const plume: RopeMaker = (b, line, from, to, width, { open, shape, random }) => {
  const n = Math.round(num(shape, 'flames', 40))
  const m = Math.round(num(shape, 'florets', 8))
  const arch = num(shape, 'arch', 0)
  const bead = BEADS[word(shape, 'bead', 'bead')] ?? BEADS.bead!
  const fine = num(shape, 'fine', 1)
  const point = num(shape, 'point', 0.72)
  const sided = num(shape, 'sided', 0)
  const bare = num(shape, 'bare', 0.14)
  for (let i = 0; i < n; i++) {
    const k = i / n
    const f = frameAt(line, lerp(from, to, k * 0.97))
    const turn = i * GOLDEN
    const long = width * 0.62 * (1 - k * point) * smooth(-0.14, 0.14, k) * lerp(0.55, 1, open) * about(random, 0.08)
    const steep = lerp(1.5, num(shape, 'steep', 0.85), open)
    const d = unit([Math.cos(turn) * 0.75 + 0.5 * sided, Math.sin(turn) * 0.75, steep])
    const elbow = at(f, d[0] * long * 0.6, d[1] * long * 0.6, d[2] * long * 0.6)
    const end = at(f, d[0] * long, d[1] * long, d[2] * long + long * (0.3 - arch))
    const path = bow(f.o, elbow, end, 5)
    addTube(b, [path[0]!, path[2]!, path[5]!], width * 0.012, width * 0.008, 'green', 3)
    for (let j = 0; j < m; j++) {
      const u = bare + ((1 - bare) * j) / (m - 1)
      const q = Math.min(4, Math.floor(u * 5))
      const p = mix(path[q]!, path[q + 1]!, u * 5 - q)
      const g = frameOf(p, unit(sub(path[q + 1]!, path[q]!), f.w), f.u)
      const a = j * GOLDEN + i
      const radius = width * 0.066 * (1.1 - u * 0.6) * Math.sqrt(320 / (n * m)) * fine
      const tissue = open < 0.3 ? 'petal-second' : (i + j) % 4 ? 'petal' : 'petal-second'
      bead(b, g, [Math.cos(a), Math.sin(a), 0.7], radius, tissue)
    }
  }
}

/** A hanging rope of clusters, lumpy and tapering: amaranthus. shape: clusters. */
export const rope: RopeMaker = (b, line, from, to, width, { open, shape, random }) => {
  const n = Math.round(num(shape, 'clusters', 320))
  const phase = random() * 6
  const lumps = (to - from) / (width * 0.55)
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    const f = frameAt(line, lerp(from, to, k))
    const turn = i * GOLDEN
    const lump = 0.78 + 0.2 * Math.sin(k * lumps * 2 + phase) + 0.08 * Math.sin(k * lumps * 4.3)
    const r = (width / 2) * lump * smooth(-0.04, 0.08, k) * (1 - k ** 2.2 * 0.62) * lerp(0.7, 1, open)
    const l = Math.hypot(1, 0.5)
    const place: [number, number, number] = [
      (Math.cos(turn) / l) * r * 0.72,
      (Math.sin(turn) / l) * r * 0.72,
      (0.5 / l) * r * 0.72,
    ]
    const size = Math.max(width * 0.08, r * 0.44 * (0.8 + 0.4 * random()))
    addDome(b, f, place, [Math.cos(turn), Math.sin(turn), 0.5], size, random() > 0.3 ? 'petal' : 'petal-second')
  }
  addTube(
    b,
    stretch(line, from, to, 16),
    width * 0.07,
    width * 0.05,
    word(shape, 'core', 'petal') === 'green' ? 'green' : 'petal',
    5,
  )
}

/** A short rope of even thickness: catkins and seed heads. shape: clusters. */
export const catkin: RopeMaker = (b, line, from, to, width, { open, shape, random }) => {
  const n = Math.round(num(shape, 'clusters', 160))
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    const f = frameAt(line, lerp(from, to, k))
    const turn = i * GOLDEN
    const r = (width / 2) * Math.sin(Math.PI * lerp(0.12, 0.95, k)) ** 0.5 * lerp(0.75, 1, open)
    const place: [number, number, number] = [Math.cos(turn) * r * 0.7, Math.sin(turn) * r * 0.7, 0]
    addDome(
      b,
      f,
      place,
      [Math.cos(turn), Math.sin(turn), 0.9],
      width * 0.13,
      random() > 0.3 ? 'petal' : 'petal-second',
      1.4,
    )
  }
  addTube(b, stretch(line, from, to, 8), width * 0.25, width * 0.2, 'petal', 5)
}
