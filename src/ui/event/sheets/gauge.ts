import type { Item, Sheet } from '../../picture/types.ts'
import { INK } from '../../picture/types.ts'
import { type Pen, pxOf, rule, SMALL, words } from './pen.ts'

/** mm from one tick to the next, ticks from one number to the next, and what a number counts. */
const TICKS = {
  metric: { step: 1, each: 10 },
  inches: { step: 25.4 / 8, each: 8 },
} as const

const ticksOf = (inches: boolean): { step: number; each: number } => (inches ? TICKS.inches : TICKS.metric)

/** Ticks at true size, level: 0 to 100 mm, or 0 to 4 in, to be checked with a ruler before one cuts by it. */
export const checkScale = (pen: Pen, inches: boolean, right: number, y: number): Item[] => {
  const { step, each } = ticksOf(inches)
  const count = each * (inches ? 4 : 10)
  const left = right - pxOf(pen.sheet, step * count)
  const items: Item[] = [rule([left, y], [right, y], 3, INK)]
  for (let i = 0; i <= count; i += 1) {
    const x = left + pxOf(pen.sheet, step * i)
    const high = i % each === 0 ? 34 : i % (each / 2) === 0 ? 24 : 14
    items.push(rule([x, y], [x, y - high], i % each === 0 ? 3 : 2, INK))
    if (i % each === 0) items.push(words(pen, `${inches ? i / each : i}`, SMALL, x, y - 44, 'centre'))
  }
  items.push(words(pen, inches ? 'in' : 'mm', SMALL, right + 12, y, 'left'))
  return items
}

/** How far the gauge at the edge reaches, whole cm or inches of it. */
export const gaugeReach = ({ height, inset, ...sheet }: Sheet, inches: boolean): number => {
  const frame_mm = (height - 2 * inset) / pxOf({ height, inset, ...sheet }, 1)
  return Math.floor(frame_mm / (inches ? 25.4 : 10))
}

/**
 * A gauge up the right edge of the frame at true size, from its lower line: a stem laid along it with its cut end on that line
 * is measured by it.
 */
export const edgeGauge = (pen: Pen, inches: boolean): Item[] => {
  const { sheet } = pen
  const { step, each } = ticksOf(inches)
  const right = sheet.width - sheet.inset
  const foot = sheet.height - sheet.inset
  const count = gaugeReach(sheet, inches) * each
  return Array.from({ length: count + 1 }, (_, i) => i).flatMap((i): Item[] => {
    const y = foot - pxOf(sheet, step * i)
    const whole = i % each === 0
    const tick = rule([right, y], [right - (whole ? 34 : i % (each / 2) === 0 ? 24 : 14), y], whole ? 3 : 2, INK)
    const number = i > 0 && i < count && whole
    return number ? [tick, words(pen, `${i / each}`, { ...SMALL, size: 28 }, right - 40, y + 10, 'right')] : [tick]
  })
}
