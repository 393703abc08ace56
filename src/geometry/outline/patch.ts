/** What a pixel and its eight neighbours say on the mean has to be this clear, of −1 … 1. Ours. */
const CLEARLY = 0.1

/**
 * Which pixels stand off, by what each of them and its surround say (above 0: stands off): a speck on the wall, or a seam, has
 * its neighbours against it, a corner of something has enough of them on its side.
 */
export const standingOff = (off: Float64Array, width: number): Uint8Array => {
  const [right, bottom] = [width - 1, off.length / width - 1]
  return Uint8Array.from(off, (own, i) => {
    if (own <= 0) return 0
    const [x, y] = [i % width, Math.floor(i / width)]
    let [sum, n] = [0, 0]
    for (let v = Math.max(0, y - 1); v <= Math.min(bottom, y + 1); v++)
      for (let u = Math.max(0, x - 1); u <= Math.min(right, x + 1); u++) {
        sum += off[v * width + u]!
        n++
      }
    return sum > CLEARLY * n ? 1 : 0
  })
}

/** Pixels of the largest patch that hangs together, by index; empty where there is none. */
export const largestPatch = (is: Uint8Array, width: number): number[] => {
  const left = Uint8Array.from(is)
  let best: number[] = []
  for (let start = 0; start < left.length; start++) {
    if (!left[start]) continue
    const patch = [start]
    left[start] = 0
    for (let k = 0; k < patch.length; k++) {
      const i = patch[k]!
      const x = i % width
      for (const to of [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width])
        if (to >= 0 && left[to]) {
          left[to] = 0
          patch.push(to)
        }
    }
    if (patch.length > best.length) best = patch
  }
  return best
}
