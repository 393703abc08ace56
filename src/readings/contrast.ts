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

export const distance = (p: Lab, q: Lab): number =>
  Math.sqrt((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2)

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

/** Lab distances of all colours to all, colour × colour. */
export const distancesOf = (labs: readonly Lab[]): Float64Array =>
  Float64Array.from({ length: labs.length ** 2 }, (_, i) =>
    distance(labs[Math.floor(i / labs.length)]!, labs[i % labs.length]!),
  )

/** What a picture's contrast was worked out from, kept for the next time: a colour that stayed surrounds as it did. */
export interface Surround {
  /** The cells with any colour in them, and how many. */
  taken: Uint8Array
  count: number
  /** Colours × cells. */
  size: number
  /** Colour × cell, and what of each colour surrounds each cell, colour × place among the taken ones. */
  area: Float64Array
  around: Float64Array
}

export const createSurround = (): Surround => ({
  taken: new Uint8Array(CELL_COUNT),
  count: 0,
  size: 0,
  area: new Float64Array(0),
  around: new Float64Array(0),
})

// Used again for every picture: the weights between the taken cells, one after another, and the colours that there are.
const between = new Float64Array(CELL_COUNT * CELL_COUNT)
const there = new Uint8Array(256)

/** Notes which cells have any colour in them; says whether they are others than before. */
const takeCells = (area: Float64Array, size: number, s: Surround): boolean => {
  const before = s.count
  let changed = false
  s.count = 0
  for (let cell = 0; cell < CELL_COUNT; cell++) {
    let any = false
    for (let i = CELL_COUNT + cell; i < size && !any; i += CELL_COUNT) any = area[i] !== 0
    if (!any) continue
    if (s.taken[s.count] !== cell) changed = true
    s.taken[s.count++] = cell
  }
  return changed || s.count !== before
}

/** Is one colour where it was? Notes where it is now. */
const stayed = (area: Float64Array, colour: number, known: Float64Array): boolean => {
  let same = true
  for (let i = colour * CELL_COUNT; i < (colour + 1) * CELL_COUNT; i++) {
    if (area[i] === known[i]) continue
    known[i] = area[i]!
    same = false
  }
  return same
}

/** The mean over the scales of one colour's area as seen from the cells that are taken. Most are seen in few cells. */
const surround = (colour: number, { taken, count, area, around }: Surround): void => {
  const to = colour * CELL_COUNT
  around.fill(0, to, to + count)
  for (let k = 0; k < count; k++) {
    const a = area[to + taken[k]!]!
    if (a === 0) continue
    const w = k * count
    for (let i = 0; i < count; i++) around[to + i]! += a * between[w + i]!
  }
}

/** Brings what surrounds up to date; gives how many colours there are, the ground among them, and notes which. */
const bringUp = (area: Float64Array, size: number, s: Surround): number => {
  let anew = takeCells(area, size, s)
  if (s.size !== size) anew = true
  s.size = size
  if (s.area.length < size) {
    s.area = new Float64Array(size)
    s.around = new Float64Array(size)
  }
  const { taken, count } = s
  let ready = false
  let colours = 1
  for (let c = 1; c < size / CELL_COUNT; c++) {
    const same = stayed(area, c, s.area) && !anew
    let any = false
    for (let k = 0; k < count && !any; k++) any = area[c * CELL_COUNT + taken[k]!] !== 0
    // Colours that are not in the picture surround nothing, and nothing is asked of them.
    if (any) there[colours++] = c
    if (same) continue
    if (!ready)
      for (let k = 0; k < count; k++)
        for (let i = 0; i < count; i++) between[k * count + i] = WEIGHTS[taken[k]! * CELL_COUNT + taken[i]!]!
    ready = true
    surround(c, s)
  }
  return colours
}

/**
 * Contrast with the ground and with all else that stands around, as one: their mean of roots by share, squared, so that the
 * lesser counts for more. A bloom is lost where it is lost against either, however far it stands off the other; region
 * contrast itself adds them up. The exponent is ours: of 1, ½, 0 and −1, which were tried, at a half blooms washed out to the
 * cloth always lose and a loud vessel still costs (tests/unit/readings/prominence.test.ts).
 * @param share of the ground in what surrounds, 0–1
 * @param toGround Lab distance to it
 * @param toRest Lab distance to each other colour times its share, summed
 * @param figure how far it is figure and no ground itself, 0–1: what stands off the ground counts by this
 */
export const jointContrast = (share: number, toGround: number, toRest: number, figure: number): number => {
  const mean = share < 1 ? toRest / (1 - share) : 0
  return (share * figure * Math.sqrt(toGround) + (1 - share) * Math.sqrt(mean)) ** 2
}

/**
 * The room behind, of which nobody knows the colour: a middle grey, as the mean of a scene is taken to be (Buchsbaum, A
 * spatial processor model for object colour perception, J. Franklin Institute 310, 1980).
 */
export const ROOM: Lab = [50, 0, 0]

/** How much of a piece lies before the cloth to a seated guest: a low one wholly, a taller one by half. Ours. */
const BEFORE_CLOTH = 0.75

/**
 * How far a colour stands off its grounds, Lab: the cloth, and above a guest's line over the table's edge the room. Joined as
 * in jointContrast: what is lost against either counts more.
 */
export const offGrounds = (toCloth: number, toRoom: number): number =>
  (BEFORE_CLOTH * Math.sqrt(toCloth) + (1 - BEFORE_CLOTH) * Math.sqrt(toRoom)) ** 2

/**
 * Contrast of every colour in every cell where it is: the mean over three scales of the mean Lab distance to what
 * surrounds it, ground and rest joined (jointContrast). It is region contrast with each cell's share of each colour as a
 * region, divided by the weights' sum, so that one number of ΔE is meant at every scale.
 * @param apart distances of the colours (see `distancesOf`); colour 0 is the ground
 * @param area colour × cell: area in units of a cell (cell i = row × 12 + column); the ground's part is what is left
 * @param figure of each colour, 0–1 (see jointContrast): as many as there are colours
 * @param known what was worked out for this picture before, if anything; the result is the same without
 * @param out colour × cell: gets the contrast, in Lab distance, where the colour has area; 0 everywhere else
 */
export const contrastField = (
  apart: Float64Array,
  area: Float64Array,
  figure: Float64Array,
  out: Float64Array,
  known: Surround = createSurround(),
): void => {
  const n = figure.length
  const size = n * CELL_COUNT
  const colours = bringUp(area, size, known)
  const { taken, count, around } = known
  out.fill(0, 0, size)
  for (let i = 0; i < count; i++) {
    let rest = 1
    for (let q = 1; q < colours; q++) rest -= around[there[q]! * CELL_COUNT + i]!
    around[i] = Math.max(0, rest)
  }
  for (let k = 1; k < colours; k++) {
    const p = there[k]!
    for (let i = 0; i < count; i++) {
      const at = p * CELL_COUNT + taken[i]!
      if (area[at] === 0) continue
      let sum = 0
      // Its distance to itself is 0.
      for (let j = 1; j < colours; j++) sum += apart[p * n + there[j]!]! * around[there[j]! * CELL_COUNT + i]!
      out[at] = jointContrast(around[i]!, apart[p * n]!, sum, figure[p]!)
    }
  }
}
