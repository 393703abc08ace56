import {
  type ColourArea,
  deltaE2000,
  harmonyScale,
  type Lab,
  labUnderLight,
  type PaletteHarmony,
  paletteHarmony,
  type Vision,
} from '../colour/index.ts'
import type { Engine } from './engine.ts'
import { type OtherEyes, type Patch, throughOtherEyes } from './other-eyes.ts'
import { colourNumber, labOnce, partColour } from './tones.ts'
import type { Because, Held, Mark, ReadingResult } from './types.ts'
import { notApplicable, shown } from './words.ts'

export interface Colours {
  /** Blooms alone, blooms and leaves, and the vessel as well: each merged onto the one before. */
  flowers: PaletteHarmony
  plants: PaletteHarmony
  all: PaletteHarmony
  /** And the cloth it stands on. */
  linen: PaletteHarmony
  /** Blooms in daylight, whatever the light of the setting. */
  daylight: PaletteHarmony
  lightnessRange: number
  chromaMean: number
  /** ΔE00 of the blooms to the linen, mean by visible area. */
  groundContrast: number
  eyes: OtherEyes
}

/** A colour that is seen, how much of it, and its name among those that are merged: `bloom #rrggbb`. */
interface SeenColour extends Patch {
  id: string
}

// By number of the colour: its place in the list that is being made, 1 and up.
let places = new Uint16Array(64)

/** Visible areas of blooms (0) or leaves (1) by colour; pixels of all views. */
const coloursOf = (engine: Engine, kind: 0 | 1): SeenColour[] => {
  const { stems } = engine.resolved
  const { pixels } = engine.seen()
  const tag = kind === 0 ? 'bloom ' : 'leaf '
  const found: SeenColour[] = []
  for (let i = 0; i < stems.length; i++) {
    const area = pixels[i * 4 + kind + 1]!
    if (!(area > 0)) continue
    const hex = partColour(stems[i]!, kind)
    const n = colourNumber(hex)
    if (n >= places.length) {
      const wider = new Uint16Array(2 * n)
      wider.set(places)
      places = wider
    }
    if (places[n] === 0) places[n] = found.push({ hex, area, id: tag + hex })
    else found[places[n]! - 1]!.area += area
  }
  for (let i = 0; i < found.length; i++) places[colourNumber(found[i]!.hex)] = 0
  return found
}

/** The colours that are seen from all sides, and how much of each: blooms, and leaves with stems; pixels of all views. */
export const coloursSeen = (engine: Engine): { blooms: Patch[]; leaves: Patch[] } => {
  const plain = (kind: 0 | 1): Patch[] => coloursOf(engine, kind).map(({ hex, area }) => ({ hex, area }))
  return { blooms: plain(0), leaves: plain(1) }
}

const sumOf = (items: readonly ColourArea[]): number => items.reduce((sum, { area }) => sum + area, 0)

/** What is merged already, of this area in all, seen together with more colours. */
const grown = (before: PaletteHarmony, area: number, more: readonly ColourArea[]): PaletteHarmony =>
  paletteHarmony([...before.groups.map(({ lab, share }) => ({ lab, area: share * area })), ...more])

/** Null when neither bloom nor leaf is seen. */
export const measureColours = (engine: Engine): Colours | null => {
  const { document, vessel } = engine.resolved
  const { light, linen } = document.setting
  const blooms = coloursOf(engine, 0)
  const leaves = coloursOf(engine, 1)
  if (blooms.length + leaves.length === 0) return null
  const lit = (hex: string): Lab => (light === 'daylight' ? labOnce(hex) : labUnderLight(hex, light))
  const items = (colours: readonly SeenColour[], of: (hex: string) => Lab): ColourArea[] =>
    colours.map(({ hex, area, id }) => ({ lab: of(hex), area, id }))
  const bloomItems = items(blooms, lit)
  const leafItems = items(leaves, lit)
  const flowers = paletteHarmony(bloomItems)
  const seen = sumOf(bloomItems)
  const plants = leafItems.length > 0 ? grown(flowers, seen, leafItems) : flowers
  const { pixels, vesselCode } = engine.seen()
  const body = { lab: lit(vessel.colour), area: pixels[vesselCode]! }
  const all = body.area > 0 ? grown(plants, seen + sumOf(leafItems), [body]) : plants
  // Greens alone are still colours: range and chroma are then theirs.
  const of = (flowers.groups.length > 0 ? flowers : plants).groups
  const ground = lit(linen)
  let [darkest, lightest, chromaMean, groundContrast] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0]
  for (const { lab, share } of of) {
    darkest = Math.min(darkest, lab[0])
    lightest = Math.max(lightest, lab[0])
    chromaMean += share * Math.sqrt(lab[1] * lab[1] + lab[2] * lab[2])
    groundContrast += share * deltaE2000(lab, ground)
  }
  return {
    flowers,
    plants,
    all,
    // Cloth counts as much as all that stands on it: how much of it is seen depends on where one sits. Ours.
    linen: grown(all, 1, [{ lab: ground, area: 1 }]),
    daylight: light === 'daylight' ? flowers : paletteHarmony(items(blooms, labOnce)),
    lightnessRange: lightest - darkest,
    chromaMean,
    groundContrast,
    eyes: throughOtherEyes(blooms, leaves),
  }
}

/** Stems behind a merged colour, those that are seen: its ids are `bloom #rrggbb`. */
export const stemsOfGroup = (engine: Engine, ids: readonly string[]): string[] => {
  const { stems } = engine.resolved
  const { pixels } = engine.seen()
  const found: string[] = []
  for (const id of ids) {
    if (!id.startsWith('bloom ')) continue
    const hex = id.slice(6)
    for (let i = 0; i < stems.length; i++)
      if (pixels[i * 4 + 1]! > 0 && partColour(stems[i]!, 0) === hex) found.push(stems[i]!.id)
  }
  return found
}

const OU_LUO =
  'Ou and Luo, A colour harmony model for two-colour combinations, Color Research and Application 31(3), 2006'

/** 0 vivid … 100 quiet, by the flowers. Null with fewer than two flower colours. */
const scaleOf = (c: Colours): number | null =>
  c.flowers.mean ? harmonyScale(c.flowers.mean.harmony, c.flowers.colours) : null

const MACHADO = 'CIEDE2000; colour vision after Machado, Oliveira and Fernandes, IEEE TVCG 15(6), 2009'
const WHO: Record<Vision, string> = {
  protan: 'guests without red cones',
  deutan: 'guests without green cones',
  tritan: 'guests without blue cones',
}

/** Flowers are seen on their greens: figure and ground, apart from how the colours go together. */
const eyesHeld = ({ againstGreens, againstGreensLeast, leastFor, alike }: OtherEyes): Held[] => {
  const held: Held[] = []
  if (againstGreens !== null)
    held.push(
      shown(
        'againstGreens',
        'Against the greens',
        againstGreens,
        'ΔE00',
        [0, 100],
        'How far the flowers stand off the leaves, by visible area, in daylight.',
        'CIEDE2000, ISO/CIE 11664-6',
      ),
    )
  if (againstGreensLeast !== null && leastFor !== null)
    held.push(
      shown(
        'againstGreensLeast',
        'Against the greens, for fewest',
        againstGreensLeast,
        'ΔE00',
        [0, 100],
        `The same for those to whom it is least: ${WHO[leastFor]}. About one man in twelve does not see red and green apart as others do (from memory).`,
        MACHADO,
      ),
    )
  const first = alike[0]
  held.push(
    shown(
      'alikeToSome',
      'Flower colours that run together for some',
      alike.length,
      'pairs',
      [0, 10],
      first
        ? `Plainly two to most and hardly so to some (limits ours); first ${first.first} and ${first.second} for ${WHO[first.vision]}.`
        : 'Plainly two to most and hardly so to some (limits ours).',
      MACHADO,
    ),
  )
  return held
}

const because = (c: Colours, scale: number | null): Because => {
  const main = c.flowers.mean
    ? shown(
        'harmonyFlowers',
        'Flowers together',
        c.flowers.mean.harmony,
        '',
        [-1.3, 1.6],
        'From vivid to quiet: the mean over all pairs of flower colours, weighted by visible area, in the light of the setting. Neither end is better.',
        OU_LUO,
      )
    : shown(
        'chromaMean',
        'Mean chroma',
        c.chromaMean,
        '',
        [0, 100],
        'How strong the colours are, by visible area.',
        'CIELAB, CIE 15',
      )
  const others: Held[] = []
  if (c.all.mean)
    others.push(
      shown(
        'harmony',
        'With greens and vessel',
        c.all.mean.harmony,
        '',
        [-1.3, 1.6],
        'The same with leaves and vessel. The model was not made for a ground, so it does not make the score.',
        OU_LUO,
      ),
    )
  if (c.linen.mean)
    others.push(
      shown(
        'harmonyWithLinen',
        'With greens, vessel and linen',
        c.linen.mean.harmony,
        '',
        [-1.3, 1.6],
        'The same with the cloth, which counts as much as all that stands on it (ours). Not part of the score either.',
        OU_LUO,
      ),
    )
  if (c.plants.mean)
    others.push(
      shown(
        'harmonyPlants',
        'With greens',
        c.plants.mean.harmony,
        '',
        [-1.3, 1.6],
        'The same with leaves, without the vessel.',
        OU_LUO,
      ),
    )
  if (c.daylight.mean)
    others.push(
      shown(
        'harmonyDaylight',
        'Flowers in daylight',
        c.daylight.mean.harmony,
        '',
        [-1.3, 1.6],
        'The same by day.',
        OU_LUO,
      ),
    )
  others.push(
    shown(
      'lightnessRange',
      'From dark to light',
      c.lightnessRange,
      'L*',
      [0, 100],
      'Lightest less darkest of the flowers (of the greens where there is no flower).',
      'CIELAB, CIE 15',
    ),
    shown(
      'groundContrast',
      'Against the linen',
      c.groundContrast,
      'ΔE00',
      [0, 100],
      'How far the flowers stand off the cloth, by visible area.',
      'CIEDE2000, ISO/CIE 11664-6',
    ),
  )
  others.push(...eyesHeld(c.eyes))
  if (main.key !== 'chromaMean')
    others.push(
      shown(
        'chromaMean',
        'Mean chroma',
        c.chromaMean,
        '',
        [0, 100],
        'How strong the flower colours are, by visible area.',
        'CIELAB, CIE 15',
      ),
    )
  return {
    main,
    others,
    how:
      scale === null
        ? 'With fewer than two flower colours there is no pair to judge.'
        : 'The number is where the flowers stand among some ten thousand palettes that people made, from vivid (0) to quiet (100): O’Donovan et al., ACM Transactions on Graphics 30(4), 2011.',
    trust:
      'Advice, never a verdict: the model explains about half of what people say of pairs, and less of several colours.',
  }
}

export const readColours = (engine: Engine): ReadingResult => {
  const c = measureColours(engine)
  if (!c) {
    const why = engine.resolved.stems.length === 0 ? 'There are no stems yet.' : 'Neither bloom nor leaf can be seen.'
    return notApplicable('palette-harmony', why, {
      harmony: null,
      harmonyFlowers: null,
      lightnessRange: null,
      chromaMean: null,
      groundContrast: null,
      againstGreens: null,
      againstGreensLeast: null,
      alikeToSome: null,
    })
  }
  const values: ReadingResult['values'] = {
    harmony: c.all.mean?.harmony ?? null,
    harmonyFlowers: c.flowers.mean?.harmony ?? null,
    harmonyWithLinen: c.linen.mean?.harmony ?? null,
    harmonyPlants: c.plants.mean?.harmony ?? null,
    harmonyDaylight: c.daylight.mean?.harmony ?? null,
    lightnessRange: c.lightnessRange,
    chromaMean: c.chromaMean,
    groundContrast: c.groundContrast,
    flowerColours: c.flowers.colours,
    againstGreens: c.eyes.againstGreens,
    againstGreensLeast: c.eyes.againstGreensLeast,
    alikeToSome: c.eyes.alike.length,
  }
  const scale = scaleOf(c)
  const reason = because(c, scale)
  if (scale === null) {
    const why =
      c.flowers.colours === 0
        ? 'Greens alone: there is no flower colour to judge.'
        : 'Single colour: there is no pair to judge.'
    return notApplicable('palette-harmony', why, values, reason)
  }
  const marks: Mark[] = []
  const { worst } = c.flowers
  if (worst)
    for (const group of [worst.first, worst.second])
      marks.push({ kind: 'stems', ids: stemsOfGroup(engine, group.ids), label: 'pair that agrees least' })
  return { id: 'palette-harmony', score: scale, notApplicable: '', values, because: reason, advice: [], marks }
}
