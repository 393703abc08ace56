import type { Lab } from './lab.ts'

const DEGREES = 180 / Math.PI
const rad = (degrees: number): number => degrees / DEGREES
const P25 = 25 ** 7

const pow7 = (x: number): number => {
  const x3 = x * x * x
  return x3 * x3 * x
}
// Math.hypot guards against overflow that colours never see, and is several times slower.
const chromaOf = (a: number, b: number): number => Math.sqrt(a * a + b * b)

/** Hue in degrees, 0 ≤ h < 360; 0 for no chroma. */
const hueOf = (a: number, b: number): number => {
  const h = Math.atan2(b, a) * DEGREES
  return h < 0 ? h + 360 : h
}

/** What was worked out last. Handed back by a function as long as these, each number would be boxed. */
const worked = new Float64Array(1)

/**
 * Colour difference CIEDE2000 with kL = kC = kH = 1: 0 the same, about 1 just seen, 5 plainly different.
 * After Sharma, Wu & Dalal, Color Res. Appl. 30(1):21–30 (2005), whose 34 pairs it reproduces. Exactly symmetric.
 * Own, because chroma-js clips colours to sRGB and the result to 100.
 */
export const deltaE2000 = (first: Readonly<Lab>, second: Readonly<Lab>): number => {
  workOut(first, second)
  return worked[0]!
}

const workOut = (first: Readonly<Lab>, second: Readonly<Lab>): void => {
  const L1 = first[0]
  const a1 = first[1]
  const b1 = first[2]
  const L2 = second[0]
  const a2 = second[1]
  const b2 = second[2]
  const mean7 = pow7((chromaOf(a1, b1) + chromaOf(a2, b2)) / 2)
  const g = 1.5 - 0.5 * Math.sqrt(mean7 / (mean7 + P25))
  const C1 = chromaOf(a1 * g, b1)
  const C2 = chromaOf(a2 * g, b2)
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
  const C7 = pow7(C)
  const RT = -2 * Math.sqrt(C7 / (C7 + P25)) * Math.sin(rad(60 * Math.exp(-(((h - 275) / 25) ** 2))))
  const [l, c, hh] = [dL / SL, dC / SC, dH / SH]
  worked[0] = Math.sqrt(Math.max(0, l * l + c * c + hh * hh + RT * c * hh))
}

/** Toward hue 275°, where CIEDE2000 turns its ellipses; far from it is 60° away or more. */
const [BLUE_A, BLUE_B] = [Math.cos(rad(275)), Math.sin(rad(275))]
const TURN_FAR = 2 * Math.sin(rad(60 * Math.exp(-((60 / 25) ** 2))))

/**
 * No more than `deltaE2000`, and quick, without a sine: to leave out pairs that are plainly far apart. In the formula's
 * own terms dC² + dH² is the squared way between (a′, b) and (a′, b); S_H is at most S_C, for T is at most 1.93; and the
 * rotation takes away at most |R_T| / 2 of dC² + dH², with |R_T| at most 2 R_C sin 60°, next to nothing far from blue.
 */
export const leastDifference = (first: Readonly<Lab>, second: Readonly<Lab>): number => {
  workOutLeast(first, second)
  return worked[0]!
}

const workOutLeast = (first: Readonly<Lab>, second: Readonly<Lab>): void => {
  const mean7 = pow7((chromaOf(first[1], first[2]) + chromaOf(second[1], second[2])) / 2)
  const g = 1.5 - 0.5 * Math.sqrt(mean7 / (mean7 + P25))
  const a1 = first[1] * g
  const a2 = second[1] * g
  const b1 = first[2]
  const b2 = second[2]
  const C1 = chromaOf(a1, b1)
  const C2 = chromaOf(a2, b2)
  const C = (C1 + C2) / 2
  const L50 = ((first[0] + second[0]) / 2 - 50) ** 2
  const l = (first[0] - second[0]) / (1 + (0.015 * L50) / Math.sqrt(20 + L50))
  // The mean hue lies along the sum of both directions, each as long as the other.
  const a = a1 * C2 + a2 * C1
  const b = b1 * C2 + b2 * C1
  const far = a * BLUE_A + b * BLUE_B < 0.49 * chromaOf(a, b)
  const C7 = pow7(C)
  const turn = far ? TURN_FAR : Math.sqrt(3 * (C7 / (C7 + P25)))
  const SC = 1 + 0.045 * C
  const apart = ((a1 - a2) ** 2 + (b1 - b2) ** 2) / (SC * SC)
  // A hair less, for rounding.
  worked[0] = Math.max(0, Math.sqrt(l * l + (1 - turn / 2) * apart) * (1 - 1e-9) - 1e-12)
}
