/** Costs of one step from row to row: so much a pixel, and never more than a ledge. Ours, against one full edge = 1. */
const BEND = 0.03
const LEDGE = 0.7

/**
 * The best way down through rows of worth: one place a row, neighbours not far apart. Exact (Viterbi, 1967); a step costs
 * by its length up to a bound, so that a shoulder or a foot may stand out like a ledge, which a mean over rows would round
 * off. Steps of that cost are found in one sweep each way (Felzenszwalb and Huttenlocher, Distance transforms of sampled
 * functions, 2012).
 * @param worth rows × width, row after row; −Infinity for places that may not be taken
 * @param start place above the first row that it starts from
 */
export const bestPath = (worth: Float64Array, rows: number, width: number, start: number): Int32Array => {
  const from = new Int32Array(rows * width)
  let total = new Float64Array(width)
  for (let d = 0; d < width; d++) total[d] = -Math.min(LEDGE, BEND * Math.abs(d - start))
  let next = new Float64Array(width)
  const near = new Float64Array(width)
  const cameFrom = new Int32Array(width)
  for (let j = 0; j < rows; j++) {
    let best = 0
    for (let d = 0; d < width; d++) {
      near[d] = total[d]!
      cameFrom[d] = d
      if (total[d]! > total[best]!) best = d
    }
    if (j > 0) {
      for (let d = 1; d < width; d++)
        if (near[d - 1]! - BEND > near[d]!) {
          near[d] = near[d - 1]! - BEND
          cameFrom[d] = cameFrom[d - 1]!
        }
      for (let d = width - 2; d >= 0; d--)
        if (near[d + 1]! - BEND > near[d]!) {
          near[d] = near[d + 1]! - BEND
          cameFrom[d] = cameFrom[d + 1]!
        }
    }
    for (let d = 0; d < width; d++) {
      const leap = j > 0 && total[best]! - LEDGE > near[d]!
      next[d] = (leap ? total[best]! - LEDGE : near[d]!) + worth[j * width + d]!
      from[j * width + d] = leap ? best : cameFrom[d]!
    }
    ;[total, next] = [next, total]
  }
  const path = new Int32Array(rows)
  let at = total.reduce((best, v, d) => (v > total[best]! ? d : best), 0)
  for (let j = rows - 1; j >= 0; j--) {
    path[j] = at
    at = from[j * width + at]!
  }
  return path
}
