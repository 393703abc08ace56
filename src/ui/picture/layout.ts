import type { Arrangement } from '../../arrangement/index.ts'
import { footBand } from './band-foot.ts'
import { plantsBand } from './band-plants.ts'
import { leftOver, quarterBand, sidesBand } from './band-quarter.ts'
import { titleBand } from './band-title.ts'
import { viewsBand } from './band-views.ts'
import { type Facts, factsOf, type PictureOptions } from './facts.ts'
import { inLight } from './light.ts'
import { phoneItems } from './phone.ts'
import { listsBelow } from './side-lists.ts'
import { INK, type Item, type Laid, type Measure, SHEETS, type Sheet, type SizeName } from './types.ts'

/** Level and from above at one scale, with dimensions; or as it stands on its table, from a little above. */
export const COMPOSITIONS = ['drawn', 'standing'] as const
export type Composition = (typeof COMPOSITIONS)[number]

export interface Wanted {
  size: SizeName
  composition: Composition
}

/** Small views are as high as this, or as the second if the large one would get less than LEAST; px, ours. */
const SIDES_HIGH = [390, 260] as const
const LEAST = 1000
/** So much higher the plants stand on a sheet with room to spare, px. Ours. */
const PLANTS_LARGER = 150
/** What the small views take besides their own height, px: words under them and air. */
const SIDES_TAKE = 136
/** Between the plants and the colours, px. Ours. */
const OVER_LISTS = 14

const drawn = (facts: Facts, sheet: Sheet, measure: Measure): Item[] => {
  const title = titleBand(facts, sheet, measure)
  const foot = footBand(facts, sheet, measure)
  const plants = plantsBand(facts, sheet, foot.top, 'counts', measure)
  return [
    ...title.items,
    ...viewsBand(facts, sheet, title.bottom + 30, plants.top - 24, measure),
    ...plants.items,
    ...foot.items,
  ]
}

const standing = (facts: Facts, sheet: Sheet, measure: Measure): Item[] => {
  const title = titleBand(facts, sheet, measure)
  const foot = footBand(facts, sheet, measure)
  const lists = listsBelow(facts, sheet, measure)
  const listTop = foot.top - 34 - lists.height
  const plantsBottom = lists.height > 0 ? listTop - OVER_LISTS : foot.top
  const bare = plantsBand(facts, sheet, plantsBottom, 'names only', measure)
  const spare = leftOver(facts, sheet, bare.top - SIDES_TAKE - SIDES_HIGH[0] - title.bottom)
  const larger = Math.min(PLANTS_LARGER, Math.round(spare))
  const plants = larger > 0 ? plantsBand(facts, sheet, plantsBottom, 'names only', measure, larger) : bare
  const [high, less] = SIDES_HIGH
  const large = sidesBand(facts, sheet, plants.top, high, measure)
  const sides = large.top - title.bottom < LEAST ? sidesBand(facts, sheet, plants.top, less, measure) : large
  return [
    ...quarterBand(facts, sheet, Math.round(title.bottom), sides.top - 20),
    ...title.items,
    ...sides.items,
    ...plants.items,
    ...lists.at(listTop),
    ...foot.items,
  ]
}

/** Everything on the sheet with its place, px of the full size. A phone's has one composition of its own. */
export const layoutFacts = (facts: Facts, { size, composition }: Wanted, measure: Measure): Laid => {
  const sheet = SHEETS[size]
  const { inset } = sheet
  const items =
    size === 'phone'
      ? phoneItems(facts, sheet, measure)
      : (composition === 'drawn' ? drawn : standing)(facts, sheet, measure)
  const box = { x: inset, y: inset, w: sheet.width - 2 * inset, h: sheet.height - 2 * inset }
  const weight = size === 'phone' ? 2 : 3
  // Last: what is seen of the table ends at the frame.
  const framed: Item[] = [...items, { kind: 'box', box, fill: null, stroke: INK, weight }]
  return { sheet, light: facts.light, ...inLight(framed, facts.light) }
}

/**
 * The picture for the partner: what stands where on its sheet. Pure: the same document, options and measure of letters give
 * the same sheet.
 * @param measure width of a line of text, px
 */
export const layoutPicture = (document: Arrangement, options: PictureOptions, wanted: Wanted, measure: Measure): Laid =>
  layoutFacts(factsOf(document, options), wanted, measure)
