import type { Plant } from '../../../catalogue/index.ts'
import { MECHANICS_ROWS } from '../../../catalogue/index.ts'
import { waterlineZ } from '../../../geometry/index.ts'
import { cautionLines } from '../../../telling/index.ts'
import { formatLength } from '../../../units/index.ts'
import { placeDaysOf, placingOf } from '../../../work-plan/index.ts'
import { cut } from '../../picture/text.ts'
import type { Box, Item, Laid } from '../../picture/types.ts'
import type { EventDesign } from '../use-worked-event.ts'
import { type BenchWords, madeWords, mouthWords, nameIn, orderWords } from './bench-words.ts'
import { allAre, DEFER } from './care.ts'
import { bodyOf, numberedPages } from './frame.ts'
import { HEAD, type Pen, paragraph, TEXT, words } from './pen.ts'
import { rowsOf, stemRow, UNDER_ROW, UNIT_WORDS } from './stem-rows.ts'
import { headsPlan, mouthPlan } from './where.ts'

/** Height of the two plans at the foot of the last page, px. */
const PLANS = 980
/** Rows of stems that go above the plans, and on a page of their own. Ours. */
const ABOVE_PLANS = 3
const ALONE = 5

/** Where the two plans and the cautions stand. */
interface Plans {
  heads: Box
  enter: Box
  careAt: Box
}

/** Beside each other at the foot, under the stems. */
const plansBeside = ({ x, y, w, h }: Box): Plans => {
  const top = y + h - PLANS
  const wide = w * 0.4
  return {
    heads: { x, y: top, w: wide, h: PLANS },
    enter: { x: x + wide + 40, y: top, w: wide * 0.92, h: PLANS },
    careAt: { x: x + wide * 1.92 + 90, y: top + 24, w: w - wide * 1.92 - 90, h: PLANS - 24 },
  }
}

/** One under the other on a page of their own: many numbers need the room. */
const plansBelow = ({ x, y, w, h }: Box): Plans => {
  const wide = w * 0.74
  const high = (h - 60) / 2
  return {
    heads: { x, y, w: wide, h: high },
    enter: { x, y: y + high + 60, w: wide, h: high },
    careAt: { x: x + wide + 40, y: y + 24, w: w - wide - 40, h: h - 24 },
  }
}

/** Lettering of the cautions, as large as they go, px. */
const CARE_SIZES = [32, 28, 24]

/** What hands, pets and food are kept from, in a column. @param withCare the sheet Take care is printed too */
const care = (pen: Pen, design: EventDesign, { x, y, w, h }: Box, withCare: boolean): Item[] => {
  const plants: Plant[] = [...new Map(design.resolved.stems.map((s) => [s.plant.id, s.plant])).values()]
  const mechanics = MECHANICS_ROWS.find((row) => row.id === design.resolved.vessel.mechanics)
  const before = [
    'Knife away from the hand. Mop up spilt water.',
    ...(mechanics?.cautions.map((c) => c.text) ?? []).slice(0, 2),
  ]
  const after = [...(withCare ? ['More, and by whom it is said, on the sheet Take care.'] : []), DEFER]
  const lay = (said: readonly string[], size: number): { items: Item[]; y: number } => {
    const items: Item[] = []
    let at = y + 62
    for (const text of said.filter((words) => words !== '')) {
      const block = paragraph(pen, text, { ...TEXT, size }, { x, y: at, width: w })
      items.push(...block.items)
      at = block.y + 14
    }
    return { items, y: at - 14 }
  }
  const laid = cautionLines(plants, withCare ? '' : allAre(false)).flatMap((line) =>
    CARE_SIZES.map((size) => lay([...before, line, ...after], size)),
  )
  const fits = laid.find((l) => l.y <= y + h) ?? laid.at(-1)
  return [words(pen, 'Take care', HEAD, x, y), ...(fits?.items ?? [])]
}

/**
 * The sheets of one design for whoever makes it: every stem to scale in the order of placing, with its cut length and how far
 * it is stripped, and where its head and its crossing are.
 */
export const benchPages = (pen: Pen, design: EventDesign, said: BenchWords): Laid[] => {
  const { resolved, document } = design
  const { units } = said
  const days = placeDaysOf(said.plan, resolved)
  const placings = placingOf(resolved, days)
  const nameOf = nameIn(resolved, said.colourOf)
  const rows = rowsOf(placings)
  const body = bodyOf(pen.sheet)
  const longest = Math.max(1, ...placings.map((p) => p.cut_mm))
  const water = formatLength(waterlineZ(resolved.vessel) + resolved.vessel.height, units)
  const mechanics = MECHANICS_ROWS.find((row) => row.id === resolved.vessel.mechanics)
  const held = mechanics?.id === 'none' ? 'held by nothing else' : (mechanics?.name.toLowerCase() ?? '')
  const head = {
    title: 'Bench sheet',
    aside: design.title,
    facts: `${placings.length} stems, ${held}, water up to ${water} from the table`,
    lines: [
      cut(madeWords(design, said.title), TEXT, body.w, pen.measure),
      orderWords(placings, days, said.plan),
      `Lengths in ${UNIT_WORDS[units]}, from the cut to the middle of the head or to the tip. Strip what is below the dashes.`,
      // Common practice; the plan says the same where it is bound.
      ...(mechanics?.id === 'none'
        ? ['Where it is bound in the hand: leave the stems longer, bind, then cut all level.']
        : []),
    ],
    inches: units === 'in',
  }
  const single = rows.length <= ABOVE_PLANS
  const pages: Item[][] = []
  const lay = (some: typeof rows, height: number): Item[] => {
    const each = height / Math.max(1, some.length)
    const scale = Math.min((each - UNDER_ROW - 60) / longest, 2.4)
    return some.flatMap((row, i) =>
      stemRow(pen, row, { x: body.x, width: body.w, base: body.y + each * (i + 1) - UNDER_ROW, scale }, units, nameOf),
    )
  }
  if (!single) for (let i = 0; i < rows.length; i += ALONE) pages.push(lay(rows.slice(i, i + ALONE), body.h))
  const mouth = mouthWords(document.vessel, units)
  const { heads, enter, careAt } = single ? plansBeside(body) : plansBelow(body)
  const last: Item[] = [
    ...(single ? lay(rows, body.h - PLANS - 60) : []),
    ...headsPlan(pen, resolved, placings, heads),
    ...mouthPlan(pen, resolved, placings, enter, mouth),
    ...care(pen, design, careAt, said.withCare),
  ]
  pages.push(last)
  return numberedPages(pen, pages, head)
}
