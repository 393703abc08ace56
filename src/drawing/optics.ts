/**
 * Refractive indices for yellow light at 20 °C: water 1.333, glass about 1.5 (E. Hecht, Optics, table 4.1; water also in the CRC
 * Handbook of Chemistry and Physics, index of refraction of water).
 */
export const WATER_INDEX = 1.333
export const GLASS_INDEX = 1.5

/**
 * The index by which a ray that comes in at a slope is turned as seen from above, water or glass in upright walls
 * (Bravais: n' = √(n² − sin² h) / cos h; W. J. Humphreys, Physics of the Air, on halos).
 * @param cos cosine of the slope, over 0
 */
export const levelIndex = (index: number, cos: number): number => Math.sqrt(index * index - (1 - cos * cos)) / cos

/** Tangent of the angle at which a ray goes on, its sine outside given (Snell's law). */
export const tanInside = (sinOutside: number, index: number): number => {
  const sin = sinOutside / index
  return sin / Math.sqrt(1 - sin * sin)
}

const BARE_SHARE = ((GLASS_INDEX - 1) / (GLASS_INDEX + 1)) ** 2

/**
 * Share of light that both faces of a pane throw back: Fresnel's law as C. Schlick has it (An inexpensive BRDF model for
 * physically-based rendering, 1994), twice over.
 * @param facing cosine between the pane's normal and the eye, 0 … 1
 */
export const paneShare = (facing: number): number => {
  const one = BARE_SHARE + (1 - BARE_SHARE) * (1 - facing) ** 5
  return (2 * one) / (1 + one)
}
