import { type Mesh, viewAxes } from '../geometry/index.ts'
import type { Occlusion } from './occlusion.ts'
import { EMPTY_DEPTH, type Raster } from './raster.ts'
import { ALONG, mixTint, SHADE_FROM, SHADE_TO, SHADES, type Tint, VARIANTS } from './tint.ts'
import type { Sprite, ViewAngle } from './types.ts'

/** Light from the upper left, in front: right, up, toward the eye. Ours. */
export const LIGHT = [-0.5, 0.62, 0.61] as const
/** The light at which a tissue shows its own colour, and how much light and hollows change it. Ours. */
const PIVOT = 0.62
const LIGHT_DEPTH = 0.3
const HOLLOW_DEPTH = 0.3
/** Where hollows are not measured, they are guessed from how near the base of a petal a place is. Ours. */
const GUESSED_HOLLOW = 0.34
/** One petal covers another where it is nearer by this, mm; a fold of the same petal by that. Ours. */
const OVER_PETAL = 0.25
const OVER_FOLD = 3.2

export interface Inks {
  /** Width of the outline and of the edges between petals, subpixels. */
  outline: number
  petal: number
  /** Strengths, 0–1. */
  outlineStrength: number
  petalStrength: number
}

/** Lines keep about half a screen pixel at ordinary scales and fade in small pictures. Ours, by eye. */
export const inksFor = (subpixels: number): Inks => ({
  outline: Math.max(1, Math.min(5, Math.round(subpixels * 0.42))),
  petal: Math.max(1, Math.min(3, Math.round(subpixels * 0.21))),
  outlineStrength: 0.85 * Math.min(1, (subpixels / 2.2) ** 0.8),
  petalStrength: 0.85 * Math.min(1, (subpixels / 3.6) ** 0.7),
})

const hash = (n: number): number => {
  let h = Math.imul(n ^ (n >>> 15), 0x2c1b3c6d)
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39)
  return (h ^ (h >>> 15)) >>> 0
}

/** How much of a contour lies on a subpixel: it is in front of a neighbour that is another thing, or nothing. */
const edgeAt = (raster: Raster, parts: Uint16Array, i: number, inks: Inks, petalEdge: number): number => {
  const { depth, triangle, width } = raster
  const z = depth[i]!
  let edge = 0
  for (let r = 1; r <= inks.outline; r++) {
    const [right, left, below, above] = [i + r, i - r, i + r * width, i - r * width]
    if (triangle[right]! < 0 || triangle[left]! < 0 || triangle[below]! < 0 || triangle[above]! < 0)
      return inks.outlineStrength
    if (r > inks.petal) continue
    const farther = z - Math.min(depth[right]!, depth[left]!, depth[below]!, depth[above]!)
    if (farther <= OVER_PETAL) continue
    if (farther > OVER_FOLD) edge = Math.max(edge, 0.55 * inks.petalStrength)
    const least = z - OVER_PETAL
    const part = parts[triangle[i]!]!
    if (
      (depth[right]! < least && parts[triangle[right]!]! !== part) ||
      (depth[left]! < least && parts[triangle[left]!]! !== part) ||
      (depth[below]! < least && parts[triangle[below]!]! !== part) ||
      (depth[above]! < least && parts[triangle[above]!]! !== part)
    )
      edge = Math.max(edge, 0.62 * petalEdge * inks.petalStrength)
  }
  return edge
}

/**
 * A raster in colour, `samples` × `samples` subpixels to a pixel.
 * @param tints by tissue number
 * @param occlusion measured hollows, or null to guess them
 * @returns a sprite; left and top in pixels from the mesh's origin, y downward
 */
export const shadeRaster = (
  raster: Raster,
  mesh: Mesh,
  angle: ViewAngle,
  tints: readonly Tint[],
  seed: number,
  samples: number,
  inks: Inks,
  occlusion: Occlusion | null,
): Sprite => {
  const { normals, uvs, triangles, parts, tissues } = mesh
  const { right, up, toward } = viewAxes(angle)
  const [tx, ty, tz] = toward
  const lx = LIGHT[0] * right[0] + LIGHT[1] * up[0] + LIGHT[2] * tx
  const ly = LIGHT[0] * right[1] + LIGHT[1] * up[1] + LIGHT[2] * ty
  const lz = LIGHT[0] * right[2] + LIGHT[1] * up[2] + LIGHT[2] * tz
  const { width: W, depth, triangle, sx, sy } = raster
  const width = W / samples
  const height = raster.height / samples
  const rgba = new Uint8ClampedArray(width * height * 4)
  const packed = new Uint32Array(rgba.buffer)
  const nearest = new Float32Array(width * height).fill(EMPTY_DEPTH)
  const shadeStep = (SHADES - 1) / (SHADE_TO - SHADE_FROM)
  const full = 255 / (samples * samples)
  const veinFade = 1 / 0.45

  for (let Y = 0; Y < height; Y++) {
    let first = W
    let last = 0
    for (let y = Y * samples; y < (Y + 1) * samples; y++) {
      first = Math.min(first, Math.floor(raster.from[y]! / samples))
      last = Math.max(last, Math.ceil(raster.to[y]! / samples))
    }
    for (let X = first; X < last; X++) {
      let red = 0
      let green = 0
      let blue = 0
      let count = 0
      let near = EMPTY_DEPTH
      for (let s = 0; s < samples * samples; s++) {
        const x = X * samples + (s % samples)
        const y = Y * samples + ((s / samples) | 0)
        const i = y * W + x
        const t = triangle[i]!
        if (t < 0) continue
        const a = triangles[3 * t]!
        const b = triangles[3 * t + 1]!
        const c = triangles[3 * t + 2]!
        const px = x + 0.5
        const py = y + 0.5
        const cx = sx[c]!
        const cy = sy[c]!
        const ax = sx[a]! - cx
        const ay = sy[a]! - cy
        const bx = sx[b]! - cx
        const by = sy[b]! - cy
        const inverse = 1 / (ax * by - bx * ay)
        const wa = ((px - cx) * by - (py - cy) * bx) * inverse
        const wb = ((py - cy) * ax - (px - cx) * ay) * inverse
        const wc = 1 - wa - wb
        const u = wa * uvs[2 * a]! + wb * uvs[2 * b]! + wc * uvs[2 * c]!
        const v = (wa * uvs[2 * a + 1]! + wb * uvs[2 * b + 1]! + wc * uvs[2 * c + 1]!) * 2 - 1
        const nx = wa * normals[3 * a]! + wb * normals[3 * b]! + wc * normals[3 * c]!
        const ny = wa * normals[3 * a + 1]! + wb * normals[3 * b + 1]! + wc * normals[3 * c + 1]!
        const nz = wa * normals[3 * a + 2]! + wb * normals[3 * b + 2]! + wc * normals[3 * c + 2]!
        const facing = nx * tx + ny * ty + nz * tz
        const long = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1
        const side = facing < 0 ? -1 / long : 1 / long
        const lit = 0.5 + 0.5 * side * (nx * lx + ny * ly + nz * lz)
        const q = lit * (0.45 + 0.55 * lit)
        const tint = tints[tissues[t]!]!
        const hollow = occlusion
          ? occlusion.values[occlusion.rows[y >> 1]! + (x >> 1)]!
          : GUESSED_HOLLOW * (1 - u) * (1 - u)
        const grazing = 1 - facing * side
        let shade =
          ((q - PIVOT) * LIGHT_DEPTH - hollow * HOLLOW_DEPTH - grazing * grazing * grazing * 0.05) * tint.strength
        if (tint.veins > 0) {
          // Veins run along the petal at even places across it, and are lost toward the tip.
          const across = (v * 0.5 + 0.5) * tint.veins
          if (Math.abs(across - Math.floor(across) - 0.5) < 0.11) {
            const tip = u < 0.55 ? 0 : (u - 0.55) * veinFade
            shade -= 0.3 * tint.veinStrength * (1 - 0.6 * tip) * (shade < 0 ? 1 : 0.55)
          }
        } else if (tint.leaf > 0) {
          const off = Math.abs(v)
          if (off < 0.055) shade += tint.rib
          else if (tint.margin !== 0 && off > 0.8) shade += tint.margin
          else {
            const lateral = u * tint.leaf - off * 1.1
            const place = lateral - Math.floor(lateral)
            if (place < 0.07 || place > 0.93) shade += tint.lateral
          }
        }
        // Leaves are laid with their normals away from the light; see addBlade.
        if (facing > 0) shade += tint.under
        const variant = hash(parts[t]! * 7 + seed * 131) & (VARIANTS - 1)
        const along = u <= 0 ? 0 : u >= 1 ? ALONG - 1 : (u * (ALONG - 1) + 0.5) | 0
        const step = ((shade - SHADE_FROM) * shadeStep + 0.5) | 0
        const at = step < 0 ? 0 : step >= SHADES ? SHADES - 1 : step
        const colour = tint.table[(variant * ALONG + along) * SHADES + at] || mixTint(tint, variant, along, at)
        const edge = edgeAt(raster, parts, i, inks, tint.petalEdge) * tint.ink
        const line = tint.line
        red += (colour & 255) + ((line & 255) - (colour & 255)) * edge
        green += ((colour >> 8) & 255) + (((line >> 8) & 255) - ((colour >> 8) & 255)) * edge
        blue += ((colour >> 16) & 255) + (((line >> 16) & 255) - ((colour >> 16) & 255)) * edge
        count++
        if (depth[i]! > near) near = depth[i]!
      }
      if (count === 0) continue
      const o = Y * width + X
      packed[o] =
        (Math.round(red / count) |
          (Math.round(green / count) << 8) |
          (Math.round(blue / count) << 16) |
          (Math.round(full * count) << 24)) >>>
        0
      nearest[o] = near
    }
  }
  return { left: raster.left / samples, top: raster.top / samples, width, height, rgba, depth: nearest }
}
