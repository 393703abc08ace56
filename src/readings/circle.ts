/** The widest circle within the free part of a square picture: where its middle lies, and its radius squared, columns. */
export interface Widest {
  at: number
  squared: number
}

/**
 * Distances along columns first, then a search along the row, as in the gaps of the outline. It runs from the middle of a
 * pixel to the middle of the first that is not free; outside of the picture nothing is.
 * @param free 1 where a pixel is free, 0 elsewhere, `side` × `side`; gets the rows to the nearest that is not
 * @param deep height of a row over the width of a column, squared
 */
export const widestCircle = (free: Uint8Array, side: number, deep: number): Widest => {
  const size = side * side
  for (let i = side; i < size; i++) if (free[i] !== 0) free[i] = free[i - side]! + 1
  for (let i = size - 1; i >= 0; i--) {
    const below = i + side < size ? free[i + side]! : 0
    if (free[i]! > below + 1) free[i] = below + 1
  }
  const widest = { at: 0, squared: 0 }
  for (let i = 0; i < size; i++) {
    let d = deep * free[i]! ** 2
    const c = i % side
    for (let k = 1; k * k < d && d > widest.squared; k++) {
      const left = c - k < 0 ? 0 : free[i - k]!
      const right = c + k >= side ? 0 : free[i + k]!
      d = Math.min(d, k * k + deep * Math.min(left, right) ** 2)
    }
    if (d > widest.squared) {
      widest.at = i
      widest.squared = d
    }
  }
  return widest
}
