import type { Habit, Plant } from '../catalogue/index.ts'
import { TISSUES, type Tissue } from '../geometry/index.ts'
import { createCache, remembered } from './cache.ts'
import { hexToLch, type Lch } from './oklch.ts'
import { TABLE_BYTES, type Tint, tintFrom } from './tint.ts'
import { type OwnColours, WELL_KNOWN } from './well-known.ts'

/*
 * The colours of every tissue, from the colour asked for and the plant's green. All figures here are ours, by eye against
 * hand-tinted plates; that the mean of a head stays near the asked colour is held by a test.
 */

/** Number of veins across a petal and their strength, by habit; florets too small for veins have none. */
const VEINS: Partial<Record<Habit, [count: number, strength: number]>> = {
  rosette: [9, 0.26],
  spray: [6, 0.22],
  quilled: [5, 0.33],
  ray: [6, 0.3],
  pincushion: [7, 0.3],
  cup: [9, 0.26],
  trumpet: [7, 0.26],
  spathe: [7, 0.16],
  orchid: [9, 0.3],
}

const mix = (a: number, b: number, t: number): number => a + (b - a) * t
const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x))

/** Base deeper and fuller, tip paler: less so where there is no room above or below. */
const petalRamp = ([l, c, asked]: Lch): [Lch, Lch, Lch] => {
  // A white without a hue of its own deepens toward the green-yellow of its base.
  const h = c < 0.008 ? 100 : asked
  const below = mix(0.04, 0.1, clamp((0.96 - l) / 0.3, 0, 1)) * clamp(l / 0.3, 0.5, 1)
  const above = Math.min(0.058, Math.max(0.012, (0.985 - l) * 0.5)) + 0.03 * clamp((0.35 - l) / 0.15, 0, 1)
  // Folds and veins take light away: the colour itself starts a little above the one asked for.
  const lift = 0.03 * clamp((l - 0.25) / 0.3, 0, 1) * clamp((1.02 - l) / 0.12, 0, 1)
  return [
    [l - below + lift, c * 1.22 + (l > 0.85 ? 0.012 : 0), h - 2],
    [Math.min(0.99, l + 0.012 + lift), c * 1.04, h],
    [Math.min(0.993, l + above + lift), c * 0.88, h + 3],
  ]
}
const around = ([l, c, h]: Lch, below: number, above: number): [Lch, Lch, Lch] => [
  [Math.max(0.08, l - below), c * 1.05, h],
  [l, c, h],
  [Math.min(0.985, l + above), c * 0.95, h],
]
/** A leaf's own green; turned a little to yellow toward the tip, as young tissue is. */
const greenRamp = ([l, c, h]: Lch, lift: number): [Lch, Lch, Lch] => [
  [l - 0.06 + lift, c * 0.92, h + 3],
  [l + 0.01 + lift, c, h],
  [l + 0.06 + lift, c * 1.02, h - 4],
]

const POLLEN: Lch = [0.8, 0.13, 88]
const BARK: Lch = [0.44, 0.045, 62]
/** Dark eye of ray flowers; pale green cushions and centres elsewhere. */
const DISC: Partial<Record<Habit, Lch>> = { ray: [0.38, 0.06, 55], pincushion: [0.7, 0.055, 130] }

const colourIn = (plant: Plant, part: keyof OwnColours): Lch | null => {
  const value = plant.shape[`${part}Colour`] ?? WELL_KNOWN[plant.id]?.[part]
  return typeof value === 'string' && /^#[0-9a-f]{6}$/i.test(value) ? hexToLch(value) : null
}

/**
 * What tells one leaf from another by its face: as the plant's shape says it, else six pairs of laterals.
 * shape: laterals (pairs), rib, lateral, margin, under (how much lighter), veins (lengthwise ones, instead), soft (ink).
 */
const leafMarks = ({ shape, formClass }: Plant) => {
  const of = (key: string, otherwise: number): number =>
    formClass === 'foliage' && typeof shape[key] === 'number' ? shape[key] : otherwise
  return {
    leaf: of('laterals', 6),
    rib: of('rib', 0.066),
    lateral: of('lateral', -0.066),
    margin: of('margin', 0),
    under: of('under', 0),
    veins: of('veins', 0),
    veinStrength: 0.3,
    ink: 1 - of('soft', 0),
    petalEdge: 1 - of('soft', 0),
  }
}

const tintOf = (tissue: Tissue, plant: Plant, asked: Lch, stem: number): Tint => {
  const foliage = plant.formClass === 'foliage'
  const leaf = foliage ? asked : hexToLch(plant.leafColour)
  const [veins, veinStrength] = VEINS[plant.habit] ?? [0, 0]
  const soft = plant.habit === 'umbel' || plant.habit === 'cloud' || plant.habit === 'dome' ? 0.6 : 1
  const many = plant.habit === 'plume' || plant.habit === 'spike'
  // Outlines on both sides of a thread would make a cloud grey.
  const thready = plant.habit === 'cloud'
  // White and cream turn to grey quickly: less depth of shade keeps them white, and what there is has a hue.
  const whiteness = clamp((asked[0] - 0.82) / 0.14, 0, 1)
  const pale = mix(1, 0.5, whiteness)
  const glow = 0.075 * whiteness * clamp(1 - asked[1] / 0.08, 0, 1)
  // Near black has no room below: more depth of light keeps its form.
  const dark = mix(1, 1.5, clamp((0.38 - asked[0]) / 0.2, 0, 1))
  const plain = { veins: 0, veinStrength: 0, leaf: 0, rib: 0.066, lateral: -0.066, margin: 0, under: 0 }
  const own = { ...plain, ink: 1, petalEdge: 1, hueTurn: -14, glow: 0, strength: 1, stem }
  switch (tissue) {
    case 'petal':
      return tintFrom({
        ...own,
        ramp: petalRamp(asked),
        veins,
        veinStrength: veinStrength * mix(1, 0.75, clamp((asked[0] - 0.85) / 0.1, 0, 1)),
        strength: soft * pale * dark,
        glow,
        hueTurn: glow > 0 ? mix(-14, 60, whiteness) : -14,
        ink: soft < 1 ? mix(0.5, 0.28, whiteness) : many ? mix(plant.habit === 'plume' ? 0.5 : 0.9, 0.5, whiteness) : 1,
        petalEdge: soft,
        jitter: [0.05, 0.12, 5],
      })
    case 'petal-second': {
      const second = colourIn(plant, 'second')
      const [l, c, h] = second ?? asked
      const ramp = second ? petalRamp(second) : petalRamp([l - 0.035, c * 1.04, h - 5])
      return tintFrom({ ...own, ramp, strength: soft * pale * dark, glow: second ? 0 : glow, jitter: [0.05, 0.12, 6] })
    }
    case 'disc': {
      const disc = colourIn(plant, 'disc') ?? DISC[plant.habit] ?? [0.66, 0.09, 112]
      return tintFrom({
        ...own,
        ramp: around(disc, 0.08, 0.08),
        strength: 0.9,
        petalEdge: 0.7,
        jitter: [0.08, 0.12, 5],
      })
    }
    case 'pollen': {
      const pollen = colourIn(plant, 'pollen') ?? POLLEN
      return tintFrom({ ...own, ramp: around(pollen, 0.07, 0.06), strength: 0.8, ink: 0.7, jitter: [0.06, 0.12, 5] })
    }
    case 'leaf':
      return tintFrom({
        ...own,
        ramp: greenRamp(leaf, 0.02),
        ...leafMarks(plant),
        hueTurn: 8,
        strength: 0.95,
        jitter: [0.07, 0.2, 8],
      })
    case 'stem':
      return tintFrom({
        ...own,
        ramp: greenRamp(foliage ? [leaf[0] - 0.05, leaf[1], leaf[2]] : leaf, 0.05),
        hueTurn: 8,
        ink: thready ? 0.4 : 1,
        jitter: [0.02, 0.1, 3],
      })
    case 'green':
      return tintFrom({
        ...own,
        ramp: greenRamp(leaf, 0.03),
        hueTurn: 8,
        ink: thready ? 0.25 : 1,
        jitter: [0.05, 0.15, 6],
      })
    case 'bark':
      return tintFrom({ ...own, ramp: around(BARK, 0.05, 0.06), hueTurn: 8, jitter: [0.04, 0.15, 6] })
  }
}

/** Colour tables that are kept, bytes, as if every tissue were seen: more than a large design in its palette needs. Ours. */
const LIMIT = 96 * 1024 * 1024
const SET_BYTES = TISSUES.length * TABLE_BYTES
const kept = createCache(LIMIT)

/**
 * The tint of every tissue of a stem, by the number in TISSUES.
 * @param colour #rrggbb asked for
 * @param seed of the stem; one of four small shifts of lightness and hue is taken by it
 */
export const tintsOf = (plant: Plant, colour: string, seed: number): Tint[] => {
  const stem = seed & 3
  const key = `${plant.id} ${colour} ${stem}`
  const make = (): Tint[] => {
    const asked = hexToLch(colour)
    return TISSUES.map((tissue) => tintOf(tissue, plant, asked, stem))
  }
  return remembered(kept, key, make, () => SET_BYTES)
}
