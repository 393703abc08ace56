import { bulgeOf, flatten } from './bulge.ts'
import { type Frame, pointAt } from './frame.ts'
import { distance, evidenceInRow, median, middleOf, sampleInto, stepOf, toOklab } from './ground.ts'
import type { Photo } from './types.ts'

/** What is seen along each height, from the axis outward to one side. */
export interface Side {
  /** Pixels from the axis to the end. */
  reach: number
  /** Row after row, `reach` long: −1 wall … 1 vessel. */
  evidence: Float64Array
  /** How far the colours right inside and right outside differ, Oklab. */
  edge: Float64Array
}
export interface Scan {
  heights: number[]
  left: Side
  right: Side
  /** From how far on a colour stands off from the wall, Oklab. */
  step: number
}

/** Rows: about one for two pixels of height, within what is quick and what is enough. Ours. */
const ROWS = { least: 24, most: 160, each_px: 2 } as const
/** Each row is the mean of so many lines, against the grain of the camera. */
const LINES = 3
/** The wall is looked for in this share of what lies to a side, at its far end. Ours. */
const WALL = 0.1
/** At least so much wall has to lie beside the rim, pixels. Ours. */
const LEAST_WALL = 8
/** An edge is looked for between the means of so many pixels on both sides of a place. Ours. */
const KERNEL = 3
/** Nothing beyond this is looked at, in half mouths: a profile may be no wider than five. */
const FARTHEST = 5.6

/** How far one can go from the axis to a side (1 right, −1 left) at every height and still be on the photo, pixels. */
const reachTo = ({ width, height }: Photo, frame: Frame, side: 1 | -1): number => {
  const ends = [0, 1].map((at) => {
    const [x, y] = pointAt(frame, at, 0)
    const room = (p: number, d: number, size: number) =>
      d > 1e-9 ? (size - 1 - p) / d : d < -1e-9 ? -p / d : Number.POSITIVE_INFINITY
    return Math.min(room(x, side * frame.across[0], width), room(y, side * frame.across[1], height))
  })
  return Math.floor(Math.min(...ends, frame.half * FARTHEST + 24))
}

const edgeAt = (row: Float64Array, first: number, way: number, at: number, reach: number): number => {
  let square = 0
  for (let c = 0; c < 3; c++) {
    let [inner, outer] = [0, 0]
    for (let k = 0; k < KERNEL; k++) {
      inner += row[(first + way * Math.max(0, at - 1 - k)) * 3 + c]!
      outer += row[(first + way * Math.min(reach - 1, at + k)) * 3 + c]!
    }
    square += ((inner - outer) / KERNEL) ** 2
  }
  return Math.sqrt(square)
}

/**
 * Looks along each height of the vessel, square to its axis. The ground of a row is what is seen at its own two ends, one
 * shading into the other: so a table below the wall, and light that falls off to one side, do no harm.
 * @returns null where less than a few pixels of the photo lie beside the rim
 */
export const scanRows = (photo: Photo, frame: Frame): Scan | null => {
  const [l, r] = [reachTo(photo, frame, -1), reachTo(photo, frame, 1)]
  if (Math.min(l, r) < frame.half + LEAST_WALL) return null
  const n = Math.round(Math.min(ROWS.most, Math.max(ROWS.least, frame.height / ROWS.each_px)))
  const heights = Array.from({ length: n }, (_, i) => (i + 0.5) / n)
  const [wallLeft, wallRight] = [Math.max(3, Math.round(l * WALL)), Math.max(3, Math.round(r * WALL))]
  const bulge = bulgeOf(photo)
  const rows = heights.map((at) => {
    const row = new Float64Array((l + r) * 3)
    for (let line = 0; line < LINES; line++)
      for (let i = 0; i < l + r; i++) {
        const [x, y] = pointAt(frame, at + ((line + 0.5) / LINES - 0.5) / n, i - l + 0.5)
        sampleInto(photo, x - 0.5, y - 0.5, row, i * 3)
      }
    toOklab(row, LINES)
    flatten(row, bulge, (i) => pointAt(frame, at, i - l + 0.5)[0] / photo.width)
    return { row, ends: [middleOf(row, 0, wallLeft), middleOf(row, l + r - wallRight, l + r)] as const }
  })
  const spread = rows.flatMap(({ row, ends }) => [
    ...Array.from({ length: wallLeft }, (_, i) => distance(row, i, ...ends[0])),
    ...Array.from({ length: wallRight }, (_, i) => distance(row, l + r - 1 - i, ...ends[1])),
  ])
  const step = stepOf(median(spread))
  const side = (reach: number, way: 1 | -1): Side => {
    const out = { reach, evidence: new Float64Array(n * reach), edge: new Float64Array(n * reach) }
    const first = way === 1 ? l : l - 1
    rows.forEach(({ row, ends }, j) => {
      for (let d = 0; d < reach; d++) {
        const i = first + way * d
        out.evidence[j * reach + d] = evidenceInRow(row, i, ends, i / (l + r - 1), step)
        out.edge[j * reach + d] = edgeAt(row, first, way, d, reach)
      }
    })
    return out
  }
  return { heights, left: side(l, -1), right: side(r, 1), step }
}
