import type { Lab } from './lab.ts'

const DEGREES = 180 / Math.PI
const rad = (degrees: number): number => degrees / DEGREES
const P25 = 25 ** 7

/** Hue in degrees, 0 ≤ h < 360; 0 for no chroma. */
const hueOf = (a: number, b: number): number => {
  const h = Math.atan2(b, a) * DEGREES
  return h < 0 ? h + 360 : h
}

/**
 * Colour difference CIEDE2000 with kL = kC = kH = 1: 0 the same, about 1 just seen, 5 plainly different.
 * After Sharma, Wu & Dalal, Color Res. Appl. 30(1):21–30 (2005), whose 34 pairs it reproduces. Exactly symmetric.
 * Own, because chroma-js clips colours to sRGB and the result to 100.
 */
export const deltaE2000 = (first: Readonly<Lab>, second: Readonly<Lab>): number => {
  const [L1, a1, b1] = first
  const [L2, a2, b2] = second
  const mean7 = ((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2) ** 7
  const g = 1.5 - 0.5 * Math.sqrt(mean7 / (mean7 + P25))
  const C1 = Math.hypot(a1 * g, b1)
  const C2 = Math.hypot(a2 * g, b2)
  const h1 = hueOf(a1 * g, b1)
  const h2 = hueOf(a2 * g, b2)
  const coloured = C1 * C2 !== 0
  const apart = Math.abs(h1 - h2) > 180
  const turn = coloured && apart ? (h2 > h1 ? -360 : 360) : 0
  const dh = coloured ? h2 - h1 + turn : 0
  const sum = h1 + h2
  const h = coloured ? (apart ? (sum < 360 ? sum + 360 : sum - 360) / 2 : sum / 2) : sum
  const dL = L2 - L1
  const dC = C2 - C1
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin(rad(dh / 2))
  const L50 = ((L1 + L2) / 2 - 50) ** 2
  const C = (C1 + C2) / 2
  const T =
    1 -
    0.17 * Math.cos(rad(h - 30)) +
    0.24 * Math.cos(rad(2 * h)) +
    0.32 * Math.cos(rad(3 * h + 6)) -
    0.2 * Math.cos(rad(4 * h - 63))
  const SL = 1 + (0.015 * L50) / Math.sqrt(20 + L50)
  const SC = 1 + 0.045 * C
  const SH = 1 + 0.015 * C * T
  const C7 = C ** 7
  const RT = -2 * Math.sqrt(C7 / (C7 + P25)) * Math.sin(rad(60 * Math.exp(-(((h - 275) / 25) ** 2))))
  const [l, c, hh] = [dL / SL, dC / SC, dH / SH]
  return Math.sqrt(Math.max(0, l * l + c * c + hh * hh + RT * c * hh))
}
