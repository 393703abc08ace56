import { SOLIDS, wallIn } from '../../drawing/index.ts'
import { type Facts, QUARTER, SIDES } from './facts.ts'
import { nearEdge, tableItems } from './table.ts'
import { textLine } from './text.ts'
import { type Box, type Font, INK2, type Item, LINE, type Measure, PAPER, type Sheet, widthOf } from './types.ts'

const CAPTION: Font = { face: 'capt', size: 38, weight: 400, italic: true }
/** A petal may reach a few mm farther than the box says; ours. */
const PAD_mm = 6
/** px per mm, large and in the small views; at 300 dots to the inch the size of life is 11.8. Ours. */
const MOST_SCALE = 6.4
const MOST_SMALL = 4
/** What is left free over the flowers, and of the table before the foot, of the window's height. Ours. */
const OVER = 0.055
const BEFORE = 0.1
/** A wide piece wants more air over it than its height needs. Ours. */
const WIDE_AIR = 1.25
/** No less than this of it, or else the table's end is shown. Ours. */
const LESS = 0.6
/** Of the cloth that hangs from a table that is seen to its end, of the window's height. Ours. */
const CLOTH = 0.075
/** A picture ends before the table does, not where it does: so much of what lies before the foot. Ours. */
const SHORT = 0.92

type Rect = Facts['front']

const padded = ({ left, right, bottom, top }: Rect): Rect => ({
  left: left - PAD_mm,
  right: right + PAD_mm,
  bottom: bottom - PAD_mm,
  top: top + PAD_mm,
})

/** A table's edge is seen well inside the picture or not at all: between these shares of its width it is neither. Ours. */
const TABLE = { inside: 0.88, beyond: 1.08 }
/** So much smaller the flowers may get for a candle or the next piece of a row beside them; ours. */
const FOR_COMPANY = 0.72
/** Air beyond it, mm. Ours. */
const AIR_mm = 24

/** By how much the largest scale is brought down, so that what belongs to the piece is seen with it; 1 for not at all. */
const smaller = (facts: Facts, scale: number, { w, h }: Box): number => {
  const { table, things, copies } = facts.room.scene
  const across = (table.shape === 'round' ? table.diameter : table.length) * scale
  const rect = padded(facts.quarter)
  const whole = rect.top - nearEdge(facts, QUARTER)
  const inside = Math.min((TABLE.inside * w) / across, ((1 - OVER - CLOTH) * h) / (whole * scale))
  if (across < TABLE.beyond * w && inside >= FOR_COMPANY) return Math.min(1, inside)
  const { left, right } = facts.reach
  const beside = [
    ...things.flatMap(({ kind, at }) =>
      kind === 'candle' && at[1] > 0 ? [Math.abs(at[0]) + SOLIDS.candle.radius] : [],
    ),
    ...copies.map(([x]) => Math.abs(x) + Math.max(right, -left)),
  ]
  const wanted = beside.map((far) => w / 2 / (far + AIR_mm) / scale).filter((share) => share >= FOR_COMPANY)
  return Math.min(1, ...wanted)
}

/** What is left over where the flowers can't be larger, because they are wide and low, px. */
export const leftOver = (facts: Facts, sheet: Sheet, high: number): number => {
  const rect = padded(facts.quarter)
  const scale = (sheet.width - sheet.inset - sheet.margin) / (rect.right - rect.left)
  return Math.max(0, high - (WIDE_AIR * (rect.top - rect.bottom) * scale) / (1 - OVER - BEFORE))
}

const isWhole = ({ room: { scene } }: Facts, scale: number, width: number): boolean =>
  (scene.table.shape === 'round' ? scene.table.diameter : scene.table.length) * scale < width

const wallItem = ({ x, y, w, h }: Box, fill: string): Item => ({
  kind: 'shape',
  points: [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ],
  fill,
})

/** The arrangement on its table, from a little above, as large as it goes between two heights of the sheet, px. */
export const quarterBand = (facts: Facts, sheet: Sheet, top: number, bottom: number): Item[] => {
  const { inset } = sheet
  const box: Box = { x: inset, y: top, w: sheet.width - 2 * inset, h: bottom - top }
  const rect = padded(facts.quarter)
  const [wide, high] = [rect.right - rect.left, rect.top - rect.bottom]
  const room = box.w - (sheet.margin - inset)
  const largest = Math.min((MOST_SCALE * sheet.width) / 2480, room / wide, (box.h * (1 - OVER - BEFORE)) / high)
  const scale = largest * smaller(facts, largest, box)
  const [w, h] = [Math.floor(wide * scale), Math.floor(high * scale)]
  const spare = box.h * (1 - OVER - BEFORE) - h
  // A table is seen to its end with the cloth that hangs there, or the picture ends on it.
  const table = (rect.bottom - nearEdge(facts, QUARTER)) * scale
  const below = box.h * BEFORE + spare / 2
  const end = table + box.h * CLOTH
  const most = box.h * (1 - OVER) - h
  const free =
    below >= end
      ? below
      : end <= most && isWhole(facts, scale, box.w)
        ? end
        : table > box.h * BEFORE * LESS
          ? Math.min(below, SHORT * table)
          : below
  const view: Box = {
    x: Math.round(box.x + (box.w - w) / 2),
    y: Math.floor(box.y + box.h - free - h),
    w,
    h,
  }
  const left = rect.left - (view.x - box.x) / scale
  const upper = rect.top + (view.y - box.y) / scale
  const frame = { left, right: left + box.w / scale, top: upper, bottom: upper - box.h / scale, scale }
  const { behind, before } = tableItems(facts, { box, frame, angle: QUARTER }, sheet.width)
  const line = (y: number): Item => ({
    kind: 'line',
    from: [box.x, y],
    to: [box.x + box.w, y],
    weight: sheet.width / 1240,
    colour: LINE,
  })
  const wall = wallIn(facts.light)
  return [
    ...(wall === PAPER ? [] : [wallItem(box, wall), line(box.y)]),
    ...behind,
    { kind: 'view', angle: QUARTER, box: view, frame: { ...rect, scale } },
    ...before,
    line(box.y + box.h),
  ]
}

const standing = (from: number, to: number, y: number): Item => ({
  kind: 'line',
  from: [from, y],
  to: [to, y],
  weight: 2.4,
  colour: INK2,
})

/** So far a stem may hang below the line of a small view before the line goes up, px. Ours. */
const HANG = 12

/** Four small views in a row above `bottom`, all at one scale, at most `most` px high, the upright ones standing on their line. */
export const sidesBand = (
  facts: Facts,
  sheet: Sheet,
  bottom: number,
  most: number,
  measure: Measure,
): { items: Item[]; top: number } => {
  const cell = widthOf(sheet) / 4
  const all = [
    ...SIDES.map(({ words, angle }, i) => ({ words, angle, rect: padded(facts.sides[i]!) })),
    { words: 'from above', angle: { turn: 0, pitch: 90 }, rect: padded(facts.above) },
  ]
  const tallest = Math.max(...all.map(({ rect }) => rect.top - rect.bottom))
  const widest = Math.max(...all.map(({ rect }) => rect.right - rect.left))
  const scale = Math.min(MOST_SMALL, (cell - 50) / widest, most / tallest)
  const high = Math.min(most, Math.ceil(tallest * scale))
  // All on one line; what hangs below the table keeps off the words.
  const hanging = Math.max(...facts.sides.map((rect) => (-facts.vesselHeight - rect.bottom) * scale))
  const stand = bottom - 112 - Math.max(0, Math.ceil(hanging) - HANG)
  const items = all.flatMap(({ words, angle, rect }, i): Item[] => {
    const middle = sheet.margin + cell * (i + 0.5)
    const [w, h] = [Math.floor((rect.right - rect.left) * scale), Math.floor((rect.top - rect.bottom) * scale)]
    const level = angle.pitch === 0
    // The foot of the vessel stands on the line, whatever hangs below it.
    const table = Math.round(stand - (rect.top + facts.vesselHeight) * scale)
    const y = level ? table : Math.round(bottom - 102 - high / 2 - h / 2)
    const x = Math.round(level ? middle + rect.left * scale : middle - w / 2)
    const box: Box = { x: Math.max(middle - cell / 2 + 4, Math.min(x, middle + cell / 2 - 4 - w)), y, w, h }
    return [
      ...(level ? [standing(middle - cell / 2 + 20, middle + cell / 2 - 20, stand)] : []),
      { kind: 'view', angle, box, frame: { ...rect, scale } },
      textLine(words, CAPTION, INK2, 'centre', middle, bottom - 42, measure),
    ]
  })
  return { items, top: bottom - 112 - high - 24 }
}
