import { type Picture, VESSEL_OWNER } from '../../drawing/index.ts'

/**
 * The stem seen at a pixel, or the nearest one within `tolerance` px; the picture's own depth decides what is in front.
 * @returns place in the painted document's stems, −1 for none
 */
export const stemIndexAt = (picture: Picture, x: number, y: number, tolerance: number): number => {
  const [cx, cy] = [Math.round(x), Math.round(y)]
  const far = Math.ceil(tolerance)
  let best = -1
  let nearest = tolerance * tolerance + 1e-9
  for (let dy = -far; dy <= far; dy++)
    for (let dx = -far; dx <= far; dx++) {
      const d = dx * dx + dy * dy
      if (d > nearest || (best >= 0 && d === nearest)) continue
      const [px, py] = [cx + dx, cy + dy]
      if (px < 0 || py < 0 || px >= picture.width || py >= picture.height) continue
      const owner = picture.owner[py * picture.width + px]!
      if (owner === 0 || owner === VESSEL_OWNER) continue
      best = owner - 1
      nearest = d
    }
  return best
}

/** Whether any part of a rectangle (pixels) is covered by something painted. Looks at every third pixel. */
export const isCovered = (picture: Picture, x0: number, y0: number, x1: number, y1: number): boolean => {
  const [left, right] = [Math.max(0, Math.floor(x0)), Math.min(picture.width - 1, Math.ceil(x1))]
  const [top, bottom] = [Math.max(0, Math.floor(y0)), Math.min(picture.height - 1, Math.ceil(y1))]
  for (let y = top; y <= bottom; y += 3)
    for (let x = left; x <= right; x += 3) if (picture.owner[y * picture.width + x] !== 0) return true
  return false
}

/** Stems whose painted pixels lie in a rectangle (pixels), as places in the painted document's stems. */
export const stemIndicesIn = (picture: Picture, x0: number, y0: number, x1: number, y1: number): number[] => {
  const found = new Set<number>()
  for (let y = Math.max(0, Math.floor(y0)); y <= Math.min(picture.height - 1, y1); y++)
    for (let x = Math.max(0, Math.floor(x0)); x <= Math.min(picture.width - 1, x1); x++) {
      const owner = picture.owner[y * picture.width + x]!
      if (owner !== 0 && owner !== VESSEL_OWNER) found.add(owner - 1)
    }
  return [...found].sort((a, b) => a - b)
}
