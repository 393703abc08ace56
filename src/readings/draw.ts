import type { Engine } from './engine.ts'
import { HALF_WAYS, WAYS } from './extents.ts'
import type { Seen } from './seen.ts'

/** How a stem, or the vessel, draws the eye, over the half turn (six neighbouring ways round) in which it draws most. */
export interface Draw {
  /** Place in the resolved list; −1 the vessel. */
  place: number
  /** Visible pixels, mean of the half turn. */
  pixels: number
  /** Mean Lab distance to the surround. */
  contrast: number
  /** Mean factor for place and for being one patch, 0–1. */
  where: number
  /** How unlike in colour to all else that is seen, 0–1. */
  unlike: number
  /** Visible area in pixels, less the part by which it is more than a glance takes in. */
  size: number
  /** 1 for blooms, less for what is ground. */
  weight: number
  /** size × contrast × unlikeness × place × weight, the mean of the half turn. */
  strength: number
}

/** Greens and vessel are the ground on which flowers are seen and draw half as much. Ours; see Schloss and Palmer 2011. */
export const GROUND = 0.5

/**
 * A patch as wide as a quarter of the picture fills a glance: what is larger draws more, but ever less so. Share of the
 * picture's square. Ours.
 */
const GLANCE = Math.PI / 64

const each = new Float64Array(WAYS)

/** The six neighbouring ways round whose values sum to most: the sum and the first way. */
export const bestHalf = (of: (way: number) => number): { sum: number; first: number } => {
  for (let way = 0; way < WAYS; way++) each[way] = of(way)
  let best = { sum: Number.NEGATIVE_INFINITY, first: 0 }
  for (let first = 0; first < WAYS; first++) {
    let sum = 0
    for (let j = 0; j < HALF_WAYS; j++) sum += each[(first + j) % WAYS]!
    if (sum > best.sum + 1e-9) best = { sum, first }
  }
  return best
}

/** Code by which a stem is judged: its blooms, or its leaves where it has no bloom. */
export const judgedCode = (engine: Engine, place: number): number => place * 4 + (engine.ready[place]!.bloom ? 1 : 2)

/** What one owner draws in one way round. */
const drawn = (seen: Seen, code: number, way: number, square: number): number =>
  seen.pullByWay[way]![code]! / (1 + seen.byWay[way]![code]! / (GLANCE * square))

const drawOf = (seen: Seen, place: number, code: number, weight: number, square: number): Draw => {
  const { sum, first } = bestHalf((way) => drawn(seen, code, way, square))
  let [pixels, contrast, pull] = [0, 0, 0]
  for (let j = 0; j < HALF_WAYS; j++) {
    const way = (first + j) % WAYS
    pixels += seen.byWay[way]![code]!
    contrast += seen.contrastByWay[way]![code]!
    pull += seen.pullByWay[way]![code]!
  }
  return {
    place,
    pixels: pixels / HALF_WAYS,
    contrast: pixels > 0 ? contrast / pixels : 0,
    where: contrast > 0 && seen.unlike[code]! > 0 ? pull / contrast / seen.unlike[code]! : 0,
    unlike: seen.unlike[code]!,
    size: pull > 0 ? ((pixels / HALF_WAYS) * sum) / pull : 0,
    weight,
    strength: (weight * sum) / HALF_WAYS,
  }
}

/** Every stem, strongest first, and the vessel. */
export const drawsOf = (engine: Engine): { stems: Draw[]; vessel: Draw } => {
  const seen = engine.seen()
  const square = (engine.frame.side / engine.frame.grid.mm) ** 2
  const stems = engine.resolved.stems.map((_, i) =>
    drawOf(seen, i, judgedCode(engine, i), engine.ready[i]!.bloom ? 1 : GROUND, square),
  )
  return {
    stems: stems.sort((a, b) => b.strength - a.strength || a.place - b.place),
    vessel: drawOf(seen, -1, seen.vesselCode, GROUND, square),
  }
}

/**
 * Part of these stems' blooms in what all blooms, leaves and the vessel draw, over the half turn in which it is largest;
 * leaves and vessel count half. 0–1.
 */
export const shareOf = (engine: Engine, places: readonly number[]): number => {
  const seen = engine.seen()
  const all = seen.pullByWay.map((pull) => {
    let sum = GROUND * pull[seen.vesselCode]!
    for (let i = 0; i < engine.ready.length; i++) sum += pull[i * 4 + 1]! + GROUND * pull[i * 4 + 2]!
    return sum
  })
  const own = seen.pullByWay.map((pull) => places.reduce((sum, i) => sum + pull[i * 4 + 1]!, 0))
  let best = 0
  for (let first = 0; first < WAYS; first++) {
    let [a, b] = [0, 0]
    for (let j = 0; j < HALF_WAYS; j++) {
      a += own[(first + j) % WAYS]!
      b += all[(first + j) % WAYS]!
    }
    if (b > 0) best = Math.max(best, a / b)
  }
  return best
}
