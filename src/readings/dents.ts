import type { Point2 } from '../arrangement/index.ts'
import { type Layer, type ResolvedStem, VESSEL_PIXEL } from '../geometry/index.ts'
import { widestCircle } from './circle.ts'
import type { Engine } from './engine.ts'
import { type Ready, SIDE } from './extents.ts'

/**
 * Holes as they are seen from above: where water that is poured over the piece would stand. A dip that is open to a side
 * lets it run off and is air; a crater that blooms and leaves ring keeps it. Heights are those of the plan, over the rim.
 */

/** Cells along a side; each is two pixels of the plan wide, so that a chink between two petals is no way out. */
const CELLS = SIDE / 2
/** From so deep on, as a share of the greatest height over the rim, a dip is a hole. Ours. */
const DENT_DEPTH = 0.25
/** Levels of water; finer makes no difference that is seen. Ours. */
const LEVELS = 64

const wall = new Uint8Array(CELLS * CELLS)
const floor = new Uint8Array(CELLS * CELLS)
const water = new Uint8Array(CELLS * CELLS)
const next = new Int16Array(CELLS * CELLS)
const first = new Int16Array(LEVELS + 1)
/** 1 where a cell lies deep. */
const deep = new Uint8Array(CELLS * CELLS)
const NOT_YET = 255

export interface Dent {
  /** Pixels of the plan from its corner, column and row. */
  column: number
  row: number
  /** Pixels of the plan; 0 where there is none. */
  radius: number
}

/** Heights of the cells: `wall` is what closes, the highest of four pixels; `floor` what lies open, the lowest. mm. */
const high = new Float32Array(CELLS * CELLS)
const low = new Float32Array(CELLS * CELLS)

/** The low bits of a bare stem's owner code (ownerCode in geometry/raster.ts). */
const BARE = 3
/** What is seen from above. Bare stems close nothing and are looked through: where nothing else is, down to the rim. */
const heights = ({ depth, owner }: Layer, top: number): void => {
  high.fill(0)
  low.fill(top)
  for (let i = 0; i < SIDE * SIDE; i++) {
    if ((owner[i]! & 3) === BARE && owner[i] !== VESSEL_PIXEL) continue
    const to = ((i / SIDE) >> 1) * CELLS + ((i % SIDE) >> 1)
    const z = Math.max(depth[i]!, 0)
    if (z > high[to]!) high[to] = z
    if (z < low[to]!) low[to] = z
  }
}

/** A flower's own cup is no hole: where a single head lies, its middle is as high as its brim. */
const fillCups = (stems: readonly ResolvedStem[], ready: readonly Ready[], mm: number): void => {
  for (let n = 0; n < stems.length; n++) {
    const { plant, head_mm, stem } = stems[n]!
    const brim = ready[n]!.high
    if (!ready[n]!.bloom || plant.manyHeaded || plant.formClass === 'line') continue
    const [x, y] = [stem.tip[0] / mm + SIDE / 2, stem.tip[1] / mm + SIDE / 2]
    const reach = head_mm / 2 / mm
    for (let r = Math.max(0, Math.floor((y - reach) / 2)); r < Math.min(CELLS, (y + reach) / 2); r++)
      for (let c = Math.max(0, Math.floor((x - reach) / 2)); c < Math.min(CELLS, (x + reach) / 2); c++) {
        const i = r * CELLS + c
        if ((2 * c + 1 - x) ** 2 + (2 * r + 1 - y) ** 2 > reach * reach || high[i] === 0) continue
        if (high[i]! < brim) high[i] = brim
        if (low[i]! < brim) low[i] = brim
      }
  }
}

const toLevels = (top: number): void => {
  const per = LEVELS / top
  for (let i = 0; i < high.length; i++) {
    wall[i] = Math.min(LEVELS, Math.round(high[i]! * per))
    floor[i] = Math.min(wall[i]!, Math.round(low[i]! * per))
  }
}

/** A cell that is reached over `over`: noted with the lowest level at which one gets from it to the edge. */
const reach = (i: number, over: number): void => {
  if (water[i] !== NOT_YET) return
  const level = Math.max(wall[i]!, over)
  water[i] = level
  next[i] = first[level]!
  first[level] = i
}

/** The lowest way out of each cell: from the edge inward, lowest first, in one list for each level. */
const flood = (): void => {
  water.fill(NOT_YET)
  first.fill(-1)
  for (let k = 0; k < CELLS; k++) {
    reach(k, 0)
    reach((CELLS - 1) * CELLS + k, 0)
    reach(k * CELLS, 0)
    reach(k * CELLS + CELLS - 1, 0)
  }
  for (let level = 0; level <= LEVELS; level++)
    while (first[level] !== -1) {
      const i = first[level]!
      first[level] = next[i]!
      const c = i % CELLS
      if (c > 0) reach(i - 1, level)
      if (c < CELLS - 1) reach(i + 1, level)
      if (i >= CELLS) reach(i - CELLS, level)
      if (i < CELLS * (CELLS - 1)) reach(i + CELLS, level)
    }
}

/**
 * The largest circle that is deeper than a quarter of the whole height below the lowest way out: from the middle of a cell
 * to the nearest that is not, less a cell, so that a chink of one is none.
 */
export const largestDent = ({ layers, ready, resolved, frame }: Engine): Dent => {
  let top = 0
  for (const r of ready) top = Math.max(top, r.high)
  if (top === 0) return { column: 0, row: 0, radius: 0 }
  heights(layers.at(-1)!, top)
  fillCups(resolved.stems, ready, frame.plan.mm)
  toLevels(top)
  flood()
  const least = Math.ceil(DENT_DEPTH * LEVELS)
  for (let i = 0; i < deep.length; i++) deep[i] = water[i]! - floor[i]! >= least ? 1 : 0
  const { at, squared } = widestCircle(deep, CELLS, 1)
  return {
    column: 2 * (at % CELLS) + 1,
    row: 2 * Math.floor(at / CELLS) + 1,
    radius: 2 * Math.max(0, Math.sqrt(squared) - 1),
  }
}

/** Its middle in the plan, mm. */
export const dentCentre = ({ column, row }: Dent, mm: number): Point2 => [
  (column - SIDE / 2) * mm,
  (row - SIDE / 2) * mm,
]
