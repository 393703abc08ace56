import type { Frame } from './frame.ts'
import { median } from './ground.ts'
import { bestPath } from './path.ts'
import { type Side, scanRows } from './scan.ts'
import type { Outline, Photo } from './types.ts'

/** Wall inside the outline costs less than vessel outside it: glaze mirrors the wall, a wall does not mirror glaze. Ours. */
const WALL_INSIDE = 0.3
/** So much of the half mouth on the wrong side weighs as much as one full edge. Ours. */
const MISPLACED = 0.12
/** An edge of this strength counts half of a full one, Oklab. Ours. */
const HALF_EDGE = 0.06
const EDGE_WEIGHT = 1.5
/** The two sides may differ by this, in half mouths, and some pixels: the hand, and an axis a little off. Ours. */
const APART = { share: 0.12, px: 3 } as const
/** Nearer to the axis than this there is no edge, pixels. */
const LEAST_OUT = 2

interface Worths {
  width: number
  evidence: Float64Array
  edge: Float64Array
}

/** What it is worth to have the edge at each place of each row. */
const worthOf = ({ width, evidence, edge }: Worths, rows: number, half: number): Float64Array => {
  const worth = new Float64Array(rows * width)
  for (let j = 0; j < rows; j++) {
    let wrong = 0
    for (let d = 0; d < width; d++) wrong += Math.max(0, evidence[j * width + d]!)
    for (let d = 0; d < width; d++) {
      const i = j * width + d
      const e = edge[i]!
      worth[i] = d < LEAST_OUT ? -1e6 : (EDGE_WEIGHT * e) / (e + HALF_EDGE) - wrong / Math.max(3, MISPLACED * half)
      const c = evidence[i]!
      wrong += c > 0 ? -c : -WALL_INSIDE * c
    }
  }
  return worth
}

/** Both sides laid over each other; an edge of one counts where the other has one within reach of `apart` pixels. */
const together = (left: Side, right: Side, rows: number, apart: number): Worths => {
  const width = Math.min(left.reach, right.reach)
  const evidence = new Float64Array(rows * width)
  const edge = new Float64Array(rows * width)
  const strongest = ({ reach, edge: e }: Side, j: number, d: number): number => {
    let most = 0
    for (let k = Math.max(0, d - apart); k <= Math.min(reach - 1, d + apart); k++)
      most = Math.max(most, e[j * reach + k]! * (1 - Math.abs(k - d) / (2 * apart + 2)))
    return most
  }
  for (let j = 0; j < rows; j++)
    for (let d = 0; d < width; d++) {
      evidence[j * width + d] = (left.evidence[j * left.reach + d]! + right.evidence[j * right.reach + d]!) / 2
      edge[j * width + d] = (strongest(left, j, d) + strongest(right, j, d)) / 2
    }
  return { width, evidence, edge }
}

/** One side by itself, no farther than `apart` from where both together were. Whole pixels. */
const alone = (side: Side, common: Int32Array, half: number, apart: number, start: number): Int32Array => {
  const rows = common.length
  const worth = worthOf({ width: side.reach, ...side }, rows, half)
  for (let j = 0; j < rows; j++)
    for (let d = 0; d < side.reach; d++)
      if (Math.abs(d - common[j]!) > apart) worth[j * side.reach + d] = Number.NEGATIVE_INFINITY
  return bestPath(worth, rows, side.reach, start)
}

/** Between pixels: the middle of the edge's strength about the place. */
const between = ({ reach, edge }: Side, j: number, d: number): number => {
  let [sum, moment] = [0, 0]
  for (let k = Math.max(0, d - 2); k <= Math.min(reach - 1, d + 2); k++) {
    const w = edge[j * reach + k]! ** 2
    sum += w
    moment += w * k
  }
  return sum > 0 ? moment / sum : d
}

/** Median of five: a single row that went astray is put right, a ledge stays. */
const steady = (values: number[]): number[] =>
  values.map((v, i) => (i < 2 || i > values.length - 3 ? v : median(values.slice(i - 2, i + 3))))

/** The vessel begins where four rows of five have an edge on both sides; 0 where none do. */
const lowestOf = (seen: readonly number[]): number => {
  const row = seen.findIndex((s, j) => s === 1 && seen.slice(j, j + 5).filter((t) => t === 1).length >= 4)
  return Math.max(0, row) / seen.length
}

/**
 * Proposes the outline of a vessel on a photo. A vessel is alike on both sides, so both are first looked at together: what
 * shadow or gloss hides on one side, the other shows. Then each side is followed by itself near to that. A place is good
 * where the colour changes at once (a shadow has a soft edge), with wall outside and no wall inside; the best way from the
 * rim to the base over all rows is taken, so that one bad row has no say.
 * @returns null where there is too little of the photo beside the vessel
 */
export const traceOutline = (photo: Photo, frame: Frame): Outline | null => {
  const scan = scanRows(photo, frame)
  if (!scan) return null
  // From the rim down: where the rim is, the person has marked.
  const down = (side: Side): Side => {
    const turned = (values: Float64Array) => {
      const out = new Float64Array(values.length)
      for (let j = 0; j < rows; j++)
        out.set(values.subarray(j * side.reach, (j + 1) * side.reach), (rows - 1 - j) * side.reach)
      return out
    }
    return { reach: side.reach, evidence: turned(side.evidence), edge: turned(side.edge) }
  }
  const rows = scan.heights.length
  const [left, right] = [down(scan.left), down(scan.right)]
  const apart = Math.round(APART.share * frame.half + APART.px)
  const slack = Math.max(1, Math.round(apart / 4))
  const both = together(left, right, rows, slack)
  const common = bestPath(worthOf(both, rows, frame.half), rows, both.width, frame.half)
  const seen = new Array<number>(rows).fill(0)
  const ends = [left, right].map((side) => {
    const path = alone(side, common, frame.half, apart, frame.half)
    const fine = Array.from(path, (d, j) => {
      if (side.edge[j * side.reach + d]! > scan.step && d > LEAST_OUT) seen[rows - 1 - j]! += 0.5
      return Math.max(LEAST_OUT, between(side, j, d))
    })
    return steady(fine).reverse()
  })
  const clear = seen.reduce((sum, s) => sum + s, 0) / rows
  return { heights: scan.heights, left: ends[0]!, right: ends[1]!, clear, lowest: lowestOf(seen) }
}
