import { type Lch, packOklch } from './oklch.ts'

/** Steps of a tint's table: small differences from petal to petal, along the petal, and from shade to light. */
export const VARIANTS = 8
export const ALONG = 24
export const SHADES = 128
/** The darkest and the lightest shade that the table holds. */
export const SHADE_FROM = -0.68
export const SHADE_TO = 0.3

/** What a tissue's colour is made of. All numbers ours. */
export interface Recipe {
  /** Colour at base, middle and tip. */
  ramp: [Lch, Lch, Lch]
  /** Depth of light and shade, 1 ordinary. */
  strength: number
  /** Degrees by which hue turns in full shade. */
  hueTurn: number
  /** Chroma that full shade adds to what has hardly any: a white petal is cream or green in its folds, not grey. */
  glow: number
  /** Full spread from part to part of lightness, chroma (as a share) and hue. */
  jitter: [lightness: number, chroma: number, hue: number]
  /** Veins across, 0 for none, and how dark. */
  veins: number
  veinStrength: number
  /** Pairs of laterals of a leaf; 0 where it is no leaf. */
  leaf: number
  /** By how much a leaf's midrib, its laterals, its margin and its underside are lighter than the rest of it. */
  rib: number
  lateral: number
  margin: number
  under: number
  /** Strength of the outline, and of the edge of one petal over another. */
  ink: number
  petalEdge: number
  /** Which of four small shifts the whole stem has. */
  stem: number
}

/** A recipe with its table of screen colours, mixed as they are first asked for. */
export interface Tint extends Recipe {
  /** Packed `r | g << 8 | b << 16 | 255 << 24` by (variant · ALONG + along) · SHADES + shade; 0 until mixed. */
  table: Uint32Array
  /** Packed colour of the contour. */
  line: number
}

/** Even spreads over −½ … ½ in three orders, so that lightness, chroma and hue do not go together. */
const SPREAD = [-0.5, 0.21, -0.21, 0.5, -0.07, 0.36, -0.36, 0.07]
const spread = (variant: number, turn: number): number => SPREAD[(variant * turn + turn) % VARIANTS]!
/** Lightness and hue of the four shifts of whole stems. */
const STEM_SHIFT: [lightness: number, hue: number][] = [
  [-0.012, -1.4],
  [0.004, 1.8],
  [0.012, -0.6],
  [-0.004, 0.7],
]

/** A tissue that no triangle is of takes no room: its table is made when the first shade is mixed. */
const UNMIXED = new Uint32Array(0)
const ENTRIES = VARIANTS * ALONG * SHADES
/** What a table takes, bytes. */
export const TABLE_BYTES = 4 * ENTRIES

export const tintFrom = (recipe: Recipe): Tint => {
  const [l, c, h] = recipe.ramp[1]
  // A contour has the hue of what it bounds; of a dark flower it is darker still.
  const lightness = Math.min(0.22 + 0.08 * l + 0.5 * recipe.glow, l * 0.62)
  const line = packOklch(lightness, Math.min(0.07, c * 0.55 + 0.3 * recipe.glow), h)
  return { ...recipe, line, table: UNMIXED }
}

/**
 * Mix one entry of the table. In shade lightness falls by `s (.55 + .6 L)`, chroma rises and hue turns; in light it
 * rises by what room there is, and chroma falls. Ours, by eye.
 */
export const mixTint = (tint: Tint, variant: number, along: number, shade: number): number => {
  const u = (along / (ALONG - 1)) * 2
  const [from, to, t] = u < 1 ? [tint.ramp[0], tint.ramp[1], u] : [tint.ramp[1], tint.ramp[2], u - 1]
  const shift = STEM_SHIFT[tint.stem & 3]!
  let l = from[0] + (to[0] - from[0]) * t + spread(variant, 1) * tint.jitter[0] + shift[0]
  let c = (from[1] + (to[1] - from[1]) * t) * (1 + spread(variant, 3) * tint.jitter[1])
  let h = from[2] + (to[2] - from[2]) * t + spread(variant, 5) * tint.jitter[2] + shift[1]
  const s = SHADE_FROM + ((SHADE_TO - SHADE_FROM) * shade) / (SHADES - 1)
  if (s < 0) {
    l += s * (0.55 + 0.6 * l)
    c = c * (1 - 0.55 * s) - s * tint.glow
    h -= s * tint.hueTurn
  } else {
    l += s * ((1.05 - l) * 1.5 + 0.12)
    c *= 1 - 0.5 * s
  }
  const packed = (packOklch(Math.min(0.995, Math.max(0.02, l)), c, h) | 0xff000000) >>> 0
  if (tint.table.length === 0) tint.table = new Uint32Array(ENTRIES)
  tint.table[(variant * ALONG + along) * SHADES + shade] = packed
  return packed
}
