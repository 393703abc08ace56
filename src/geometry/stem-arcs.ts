import type { Point2, Stem } from '../arrangement/index.ts'

/** The upright plane of a stem, seen from the mouth point: how far and how high the tip is, how far the rim, mm. */
export interface Plane {
  across: number
  up: number
  rim: number
}

/** Height at which a stem passes over the rim, mm. Ours. */
const OVER_RIM = 10
/** Place of a hanging stem's shoulder beyond and over the rim, mm. Ours. */
const BEYOND = 8
/** The shoulder lies at this part of the way to the tip, and this much higher for each mm beyond the rim. Ours. */
const SHOULDER = 0.72
const RISE = 0.3

const cubic = (t: number, p0: number, p1: number, p2: number, p3: number): number => {
  const u = 1 - t
  return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3
}

/** The same line at equal steps of its length; [across, up] pairs. */
const even = (fine: Float64Array, steps: number): Float64Array => {
  const n = fine.length / 2
  const along = new Float64Array(n)
  for (let i = 1; i < n; i++)
    along[i] = along[i - 1]! + Math.hypot(fine[2 * i]! - fine[2 * i - 2]!, fine[2 * i + 1]! - fine[2 * i - 1]!)
  const total = along[n - 1]!
  const out = new Float64Array(2 * (steps + 1))
  let j = 0
  for (let i = 0; i <= steps; i++) {
    const want = (total * i) / steps
    while (j < n - 2 && along[j + 1]! < want) j += 1
    const gap = along[j + 1]! - along[j]!
    const t = gap > 0 ? Math.min(1, (want - along[j]!) / gap) : 0
    for (let c = 0; c < 2; c++) out[2 * i + c] = fine[2 * j + c]! + (fine[2 * j + 2 + c]! - fine[2 * j + c]!) * t
  }
  return out
}

const FINE = 96

/**
 * One arc from mouth to tip, leaving steeper than it arrives (a quadratic whose middle point lies at 0.3 of the way
 * across and 0.6 of the way up). Raised as a whole where it would run into the rim.
 */
export const raisedArc = (plane: Plane, passes: boolean, steps: number): Float64Array => {
  const { across, up, rim } = plane
  const [s1, s2] = [0.2 * across, (1.6 / 3) * across]
  let [z1, z2] = [0.4 * up, (2.2 / 3) * up]
  if (passes && rim > 0) {
    let [low, high] = [0, 1]
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2
      if (cubic(middle, 0, s1, s2, across) < rim) low = middle
      else high = middle
    }
    // Near either end no lift can help, and none is needed.
    const t = Math.min(0.85, Math.max(0.15, low))
    const lacking = OVER_RIM * Math.min(1, (across - rim) / 20) - cubic(t, 0, z1, z2, up)
    if (lacking > 0) {
      const lift = lacking / (3 * t * (1 - t))
      z1 += lift
      z2 += lift
    }
  }
  const fine = new Float64Array(2 * (FINE + 1))
  for (let i = 0; i <= FINE; i++) {
    const t = i / FINE
    fine[2 * i] = cubic(t, 0, s1, s2, across)
    fine[2 * i + 1] = cubic(t, 0, z1, z2, up)
  }
  return even(fine, steps)
}

/**
 * Two arcs: up and over the rim to a shoulder outside it, then down to the tip in the same direction and, as what hangs
 * does, arriving straight down.
 */
export const hangingArc = (plane: Plane, steps: number): Float64Array => {
  const { across, up, rim } = plane
  const ss = Math.min(across, Math.max(rim + BEYOND, SHOULDER * across))
  const zs = BEYOND + RISE * Math.max(0, ss - rim - BEYOND)
  const [cs, cz] = [0.5 * ss, zs + 18 + 0.2 * ss]
  const slope = (zs - cz) / Math.max(1e-6, ss - cs)
  const [ks, kz] = [across, zs + slope * (across - ss)]
  const fine = new Float64Array(2 * (FINE + 1))
  for (let i = 0; i <= FINE; i++) {
    const first = i <= FINE / 2
    const t = (2 * i) / FINE - (first ? 0 : 1)
    const [a, b, c] = first ? [0, cs, ss] : [ss, ks, across]
    const [d, e, f] = first ? [0, cz, zs] : [zs, kz, up]
    const u = 1 - t
    fine[2 * i] = u * u * a + 2 * u * t * b + t * t * c
    fine[2 * i + 1] = u * u * d + 2 * u * t * e + t * t * f
  }
  return even(fine, steps)
}

/**
 * Level unit direction in which a positive `bend` bows a stem: to the left of the way from mouth to tip as seen from
 * above; for an upright stem to the left of the way out from the axis, and along y for one on the axis.
 */
export const bowDirection = (stem: Stem, ux: number, uy: number): Point2 => {
  if (ux !== 0 || uy !== 0) return [-uy, ux]
  const out = Math.hypot(stem.mouth[0], stem.mouth[1])
  return out > 1e-9 ? [-stem.mouth[1] / out, stem.mouth[0] / out] : [0, 1]
}
