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

/** What one owner draws in each way round, for one owner at a time. */
const each = new Float64Array(WAYS)

const halfFrom = (first: number): number => {
  let sum = 0
  for (let j = 0; j < HALF_WAYS; j++) sum += each[(first + j) % WAYS]!
  return sum
}

/** The first of the six neighbouring ways round that sum to most. */
const bestHalf = (): number => {
  let best = 0
  let most = Number.NEGATIVE_INFINITY
  for (let first = 0; first < WAYS; first++) {
    const sum = halfFrom(first)
    if (sum <= most + 1e-9) continue
    most = sum
    best = first
  }
  return best
}

/** Code by which a stem is judged: its blooms, or its leaves where it has no bloom. */
export const judgedCode = (engine: Engine, place: number): number => place * 4 + (engine.ready[place]!.bloom ? 1 : 2)

const drawOf = (seen: Seen, place: number, code: number, weight: number, square: number): Draw => {
  for (let way = 0; way < WAYS; way++)
    each[way] = seen.pullByWay[way]![code]! / (1 + seen.byWay[way]![code]! / (GLANCE * square))
  const first = bestHalf()
  const sum = halfFrom(first)
  let pixels = 0
  let contrast = 0
  let pull = 0
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

/** Whole numbers are handed back: differences would be boxed. */
const strongestFirst = (a: Draw, b: Draw): number =>
  a.strength === b.strength ? a.place - b.place : a.strength > b.strength ? -1 : 1

/** Every stem, strongest first, and the vessel. */
export const drawsOf = (engine: Engine): { stems: Draw[]; vessel: Draw } => {
  const seen = engine.seen()
  const square = (engine.frame.side / engine.frame.grid.mm) ** 2
  const stems = engine.resolved.stems.map((_, i) =>
    drawOf(seen, i, judgedCode(engine, i), engine.ready[i]!.bloom ? 1 : GROUND, square),
  )
  return {
    stems: stems.sort(strongestFirst),
    vessel: drawOf(seen, -1, seen.vesselCode, GROUND, square),
  }
}

/**
 * Part of these stems' blooms in what all blooms, leaves and the vessel draw, over the half turn in which it is largest;
 * leaves and vessel count half. 0–1.
 */
export const shareOf = (engine: Engine, places: readonly number[]): number => {
  const seen = engine.seen()
  const [all, own] = [new Float64Array(WAYS), new Float64Array(WAYS)]
  for (let way = 0; way < WAYS; way++) {
    const pull = seen.pullByWay[way]!
    let sum = GROUND * pull[seen.vesselCode]!
    for (let i = 0; i < engine.ready.length; i++) sum += pull[i * 4 + 1]! + GROUND * pull[i * 4 + 2]!
    all[way] = sum
    for (let k = 0; k < places.length; k++) own[way]! += pull[places[k]! * 4 + 1]!
  }
  let best = 0
  for (let first = 0; first < WAYS; first++) {
    let a = 0
    let b = 0
    for (let j = 0; j < HALF_WAYS; j++) {
      a += own[(first + j) % WAYS]!
      b += all[(first + j) % WAYS]!
    }
    if (b > 0) best = Math.max(best, a / b)
  }
  return best
}
