import type { Lab } from '../colour/index.ts'

/** How fast colours farther away count for less, as the square of a share of the picture's side. Cheng et al. use 0.4. */
export const PUBLISHED_SCALE = 0.4
/** The published scale and two local ones, each half as wide as the one before. The halving is ours. */
export const SCALES = [PUBLISHED_SCALE, PUBLISHED_SCALE / 4, PUBLISHED_SCALE / 16] as const

export interface Region {
  /** Middle, as shares of the picture's width and height. */
  x: number
  y: number
  /** Share of the picture. */
  area: number
  lab: Lab
}

const distance = (p: Lab, q: Lab): number => Math.sqrt((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2)

/**
 * How much each region stands out by colour: Σ over the others of area × Lab distance × exp(−d²/0.4).
 * Source: Cheng, Zhang, Mitra, Huang and Hu, Global contrast based salient region detection, CVPR 2011 (region
 * contrast), in the form of IEEE TPAMI 37(3), 2015, without its factor for place (see `placeFactor`).
 */
export const regionContrast = (regions: readonly Region[], scale = PUBLISHED_SCALE): number[] =>
  regions.map((k) => {
    let sum = 0
    for (const i of regions)
      if (i !== k) sum += Math.exp(-((i.x - k.x) ** 2 + (i.y - k.y) ** 2) / scale) * i.area * distance(k.lab, i.lab)
    return sum
  })

/**
 * The middle of a picture draws the eye more than its edge: exp(−9 (|dx|² + |dy|²)), offsets from the middle as shares
 * of the side. Source: Cheng et al., TPAMI 2015.
 */
export const placeFactor = (x: number, y: number): number => Math.exp(-9 * ((x - 0.5) ** 2 + (y - 0.5) ** 2))

/** Cells along a side of the coarse picture on which contrast is worked out. */
export const CELLS = 12
export const CELL_COUNT = CELLS * CELLS

const KERNELS = SCALES.map((scale) =>
  Float64Array.from({ length: CELLS }, (_, d) => Math.exp(-((d / CELLS) ** 2) / scale)),
)
/** What the kernel sums to around a cell of a row. */
const SUMS = KERNELS.map((k) =>
  Float64Array.from({ length: CELLS }, (_, c) => {
    let sum = 0
    for (let i = 0; i < CELLS; i++) sum += k[Math.abs(i - c)]!
    return sum
  }),
)
const PLACE = Float64Array.from({ length: CELL_COUNT }, (_, i) =>
  placeFactor(((i % CELLS) + 0.5) / CELLS, (Math.floor(i / CELLS) + 0.5) / CELLS),
)
export const placeOfCell = (cell: number): number => PLACE[cell]!

/** The three scales together: what a unit of area in one cell counts in every other (cell × cell). */
const WEIGHTS = Float64Array.from({ length: CELL_COUNT * CELL_COUNT }, (_, i) => {
  const [from, to] = [Math.floor(i / CELL_COUNT), i % CELL_COUNT]
  const [r0, c0, r, c] = [Math.floor(from / CELLS), from % CELLS, Math.floor(to / CELLS), to % CELLS]
  return SCALES.reduce((sum, _scale, s) => {
    const [k, sums] = [KERNELS[s]!, SUMS[s]!]
    return sum + (k[Math.abs(r - r0)]! * k[Math.abs(c - c0)]!) / (sums[r]! * sums[c]! * SCALES.length)
  }, 0)
})

/** Adds the mean over the scales of `area` seen from every cell to `out`. Most colours are seen in few cells. */
const surround = (area: Float64Array, from: number, out: Float64Array): void => {
  for (let cell = 0; cell < CELL_COUNT; cell++) {
    const a = area[from + cell]!
    if (a === 0) continue
    const w = cell * CELL_COUNT
    for (let i = 0; i < CELL_COUNT; i++) out[from + i]! += a * WEIGHTS[w + i]!
  }
}

/**
 * Contrast of every colour, were it seen in every cell: the mean over three scales of the mean Lab distance to what
 * surrounds it. It is region contrast with each cell's share of each colour as a region, divided by the weights' sum,
 * so that one number of ΔE is meant at every scale.
 * @param labs colour 0 is the ground
 * @param area colour × cell: area in units of a cell (cell i = row × 12 + column); the ground's part is what is left
 * @returns colour × cell, in Lab distance; 0 for colours that are nowhere in the picture
 */
export const contrastField = (labs: readonly Lab[], area: Float64Array): Float64Array => {
  const n = labs.length
  const field = new Float64Array(n * CELL_COUNT)
  // Colours that are not in the picture surround nothing, and nothing is asked of them.
  const there: number[] = [0]
  for (let c = 1; c < n; c++) {
    let any = false
    for (let i = c * CELL_COUNT; i < (c + 1) * CELL_COUNT && !any; i++) any = area[i] !== 0
    if (!any) continue
    there.push(c)
    surround(area, c * CELL_COUNT, field)
  }
  for (let i = 0; i < CELL_COUNT; i++) {
    let rest = 1
    for (const c of there) if (c > 0) rest -= field[c * CELL_COUNT + i]!
    field[i] = Math.max(0, rest)
  }
  const out = new Float64Array(field.length)
  for (const p of there)
    for (const q of there) {
      if (p === q) continue
      const d = distance(labs[p]!, labs[q]!)
      const [to, from] = [p * CELL_COUNT, q * CELL_COUNT]
      for (let i = 0; i < CELL_COUNT; i++) out[to + i]! += d * field[from + i]!
    }
  return out
}
