import type { Arrangement } from '../../arrangement/index.ts'
import { footBand } from './band-foot.ts'
import { plantsBand } from './band-plants.ts'
import { titleBand } from './band-title.ts'
import { viewsBand } from './band-views.ts'
import { type Facts, factsOf, type PictureOptions } from './facts.ts'
import { INK, INSET, type Item, type Measure, SHEET } from './types.ts'

/** Everything on the sheet with its place, px of the full size; what comes later lies over what came before. */
export const layoutFacts = (facts: Facts, measure: Measure): Item[] => {
  const title = titleBand(facts, measure)
  const foot = footBand(facts, measure)
  const plants = plantsBand(facts, foot.top, measure)
  const frame = { x: INSET, y: INSET, w: SHEET.width - 2 * INSET, h: SHEET.height - 2 * INSET }
  return [
    { kind: 'box', box: frame, fill: null, stroke: INK, weight: 3 },
    ...title.items,
    ...viewsBand(facts, title.bottom + 30, plants.top - 24, measure),
    ...plants.items,
    ...foot.items,
  ]
}

/**
 * The picture for the partner: what stands where on a sheet of 2480 × 3508 px. Pure: the same document, options and
 * measure of letters give the same sheet.
 * @param measure width of a line of text, px
 */
export const layoutPicture = (document: Arrangement, options: PictureOptions, measure: Measure): Item[] =>
  layoutFacts(factsOf(document, options), measure)
