import type { OrderLine } from '../../../stem-list/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import type { EventDesign } from '../../../work-plan/index.ts'
import { count } from '../words.ts'

/** So many uses are written out; the others are counted. Ours. */
const MOST = 2

/** Where what is left over would go, as `1 more of 18.5 cm, in 8 of 24: Cup`. */
export const usesWords = ({ uses }: OrderLine, designs: readonly EventDesign[], units: Units): string[] => {
  const known = uses.flatMap((use) => {
    const design = designs.find((d) => d.design === use.design)
    return design ? [{ ...use, title: design.title, of: design.copies }] : []
  })
  const said = known.slice(0, MOST).map(({ each, length_mm, copies, of, title }) => {
    const where = copies === of ? 'each' : `${copies} of ${of}`
    return `${each} more of ${formatLength(length_mm, units)}, in ${where}: ${title}`
  })
  return known.length > MOST ? [...said, `in ${known.length - MOST} others`] : said
}

/** Side stems that no piece takes, and how long they are; '' where there are none. */
export const sidesLeftWords = ({ sidesLeft, given }: OrderLine, units: Units): string =>
  sidesLeft > 0 ? `${count(sidesLeft, 'side stem', 'side stems')} of at most ${formatLength(given.side_mm, units)}` : ''
