import { VESSEL_PIXEL } from '../geometry/index.ts'
import { CELL_COUNT, CELLS } from './contrast.ts'
import { type Frame, SIDE } from './extents.ts'

/** Twelve columns and rows of cells laid over the pixels of the elevations. */
export interface Cells {
  /** Column and row of cells of each column and row of pixels. */
  columns: Uint8Array
  rows: Uint8Array
  /** Where the columns of cells begin; the last is the picture's end. */
  edges: number[]
}

const along = (middle: number, side: number, zero: number, mm: number): Uint8Array => {
  const cells = new Uint8Array(SIDE)
  for (let i = 0; i < SIDE; i++) {
    const at = ((i + 0.5 - zero) * mm - middle) / side + 0.5
    cells[i] = Math.min(CELLS - 1, Math.max(0, Math.floor(at * CELLS)))
  }
  return cells
}

export const cellsOf = ({ grid, side, middle }: Frame): Cells => {
  const columns = along(0, side, SIDE / 2, grid.mm)
  const edges = [0]
  for (let c = 1; c < SIDE; c++) if (columns[c] !== columns[c - 1]) edges.push(c)
  edges.push(SIDE)
  return { columns, rows: along(middle, side, grid.zeroRow, grid.mm), edges }
}

/**
 * One picture taken apart into stretches of its rows with one owner in one cell, and what they sum to. The stretches of
 * row r are at r × SIDE and on. Kept from look to look: only rows that changed are taken apart anew.
 */
export interface Runs {
  /** How many stretches each row has. */
  inRow: Uint8Array
  /** Of each stretch: owner code, cell, first pixel of its row, length. */
  code: Uint16Array
  cell: Uint8Array
  from: Uint8Array
  length: Uint8Array
  /** Pixels by owner code, and by colour × cell: whole numbers, so that what is taken off and put back leaves no trace. */
  own: Float64Array
  area: Float64Array
  /** The picture as it was at the last look. */
  owner: Uint16Array
}

export const createRuns = (): Runs => {
  const bytes = () => new Uint8Array(SIDE * SIDE)
  return {
    inRow: new Uint8Array(SIDE),
    code: new Uint16Array(SIDE * SIDE),
    cell: bytes(),
    from: bytes(),
    length: bytes(),
    own: new Float64Array(0),
    area: new Float64Array(0),
    owner: new Uint16Array(SIDE * SIDE),
  }
}

/** An empty picture of so many owner codes and colours. */
export const clearRuns = (runs: Runs, codes: number, colours: number): void => {
  if (runs.own.length < codes) runs.own = new Float64Array(codes)
  if (runs.area.length < colours * CELL_COUNT) runs.area = new Float64Array(colours * CELL_COUNT)
  runs.own.fill(0)
  runs.area.fill(0)
  runs.inRow.fill(0)
  runs.owner.fill(0)
}

/** Puts the stretches of a row to the sums (1), or takes them off (−1). */
const count = ({ inRow, code, cell, length, own, area }: Runs, r: number, toneOf: Uint8Array, sign: number): void => {
  for (let k = r * SIDE, end = k + inRow[r]!; k < end; k++) {
    const pixels = sign * length[k]!
    own[code[k]!]! += pixels
    area[toneOf[code[k]!]! * CELL_COUNT + cell[k]!]! += pixels
  }
}

const findRuns = (
  owner: Uint16Array,
  r: number,
  { columns, rows, edges }: Cells,
  vesselCode: number,
  to: Runs,
): void => {
  let left = r * SIDE
  let right = left + SIDE - 1
  while (left <= right && owner[left] === 0) left += 1
  while (right >= left && owner[right] === 0) right -= 1
  let n = r * SIDE
  for (let e = 1; e < edges.length; e++) {
    const end = r * SIDE + edges[e]!
    let i = r * SIDE + edges[e - 1]!
    if (end <= left || i > right) continue
    const cell = rows[r]! * CELLS + columns[edges[e - 1]!]!
    while (i < end) {
      const o = owner[i]!
      const from = i
      do i += 1
      while (i < end && owner[i] === o)
      if (o === 0) continue
      to.code[n] = o === VESSEL_PIXEL ? vesselCode : o
      to.cell[n] = cell
      to.from[n] = from - r * SIDE
      to.length[n] = i - from
      n += 1
    }
  }
  to.inRow[r] = n - r * SIDE
}

/**
 * Takes a picture apart where it is another than at the last look. Says whether it is.
 * @param toneOf colour of each owner code, the same as at the last look
 */
export const follow = (
  owner: Uint16Array,
  cells: Cells,
  vesselCode: number,
  toneOf: Uint8Array,
  runs: Runs,
): boolean => {
  // Two pixels at a time: most of a picture stays.
  const now = new Int32Array(owner.buffer, owner.byteOffset, owner.length / 2)
  const before = new Int32Array(runs.owner.buffer, runs.owner.byteOffset, runs.owner.length / 2)
  let changed = false
  for (let r = 0; r < SIDE; r++) {
    let i = (r * SIDE) / 2
    const end = i + SIDE / 2
    while (i < end && now[i] === before[i]) i += 1
    if (i === end) continue
    changed = true
    for (; i < end; i++) before[i] = now[i]!
    count(runs, r, toneOf, -1)
    findRuns(owner, r, cells, vesselCode, runs)
    count(runs, r, toneOf, 1)
  }
  return changed
}
