import type { Facts } from './facts.ts'
import { listColumn, listHeight, listsBelow, paletteColumn, paletteHeight, sideWidth } from './side-lists.ts'
import { textLine } from './text.ts'
import {
  type Box,
  type Font,
  INK,
  INK2,
  type Item,
  LINE,
  type Measure,
  middleOf,
  type Place,
  type Sheet,
  widthOf,
} from './types.ts'

const FROM_FRONT = 'from the front'
const CAPTION: Font = { face: 'capt', size: 38, weight: 400, italic: true }
const FIGURE: Font = { face: 'lett', size: 38, weight: 620 }
const WORD: Font = { face: 'lett', size: 34, weight: 470 }

/** A petal may reach a few mm farther than the box says; ours. */
const PAD_mm = 6
/** From a view to the line of a height, and from there to its words, px. */
const OUT = 36
const TO_WORDS = 20
/** Heights under the view from the front, for its width, and under the one from above, for its caption. */
const UNDER_FRONT = 104
const UNDER_ABOVE = 76
const GAP = 34
/** px per mm; at 300 dots to the inch the size of life is 11.8. Larger than this nothing is gained. Ours. */
const MOST_SCALE = 5

/** Between the columns and what they flank, px. Ours. */
const FLANK_GAP = 20
/** A way that makes the views larger by less than this is not taken before an earlier one. Ours. */
const NO_GAIN = 1.02

/** Slim filled arrow, after the habit of ISO 129-1: length and width, px. */
const ARROW = { long: 26, wide: 10 }
const DIMENSION = 2

const arrow = ([x, y]: Place, dx: number, dy: number): Item => {
  const [ax, ay] = [x - dx * ARROW.long, y - dy * ARROW.long]
  const [nx, ny] = [(-dy * ARROW.wide) / 2, (dx * ARROW.wide) / 2]
  return {
    kind: 'shape',
    points: [
      [x, y],
      [ax + nx, ay + ny],
      [ax - nx, ay - ny],
    ],
    fill: INK2,
  }
}

const dimensionLine = (from: Place, to: Place): Item[] => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy) || 1
  const [ux, uy] = [dx / length, dy / length]
  const line: Item = { kind: 'line', from, to, weight: DIMENSION, colour: INK2 }
  // Too short for two arrows: the line alone says it.
  return length < 2.2 * ARROW.long ? [line] : [line, arrow(to, ux, uy), arrow(from, -ux, -uy)]
}

const extension = (from: Place, to: Place): Item => ({ kind: 'line', from, to, weight: 1.6, colour: LINE })

/** A height at the side of a view: its figure over its word, left or right of the line. */
const heightDimension = (
  x: number,
  top: number,
  bottom: number,
  side: -1 | 1,
  figure: string,
  word: string,
  measure: Measure,
): Item[] => {
  // A low vessel in a tall design: the words stay above the table.
  const y = Math.min((top + bottom) / 2, bottom - 50)
  const align = side > 0 ? 'left' : 'right'
  return [
    ...dimensionLine([x, bottom], [x, top]),
    textLine(figure, FIGURE, INK, align, x + side * TO_WORDS, y - 4, measure),
    textLine(word, WORD, INK2, align, x + side * TO_WORDS, y + 36, measure),
  ]
}

/** Room that the heights and the caption of the view from the front need at either side of it, px. */
const besideFront = (facts: Facts, measure: Measure): number => {
  const figures = [facts.high, facts.vesselHigh].map((text) => measure(text, FIGURE))
  const words = ['high', facts.vessel].map((text) => measure(text, WORD))
  return 16 + Math.max(measure(FROM_FRONT, CAPTION), OUT + TO_WORDS + Math.max(...figures, ...words))
}

const columnHeight = (facts: Facts): number => Math.max(paletteHeight(facts), listHeight(facts))

interface Size {
  /** mm, padded */
  left: number
  right: number
  bottom: number
  top: number
  low: number
  back: number
}

const sizeOf = ({ front, above, reach, vesselHeight }: Facts): Size => ({
  left: Math.min(front.left, above.left, reach.left) - PAD_mm,
  right: Math.max(front.right, above.right, reach.right) + PAD_mm,
  bottom: Math.min(front.bottom, -vesselHeight) - PAD_mm,
  top: Math.max(front.top, reach.top) + PAD_mm,
  low: above.bottom - PAD_mm,
  back: above.top + PAD_mm,
})

/**
 * Where the colours and the list stand: beside the view from above; outside of both views and their dimensions; or below.
 */
type Lists = 'beside' | 'flank' | 'below'

/** Of the three ways the one that gives the largest views, and its scale, px per mm. */
const scaleOf = (
  facts: Facts,
  size: Size,
  width: number,
  height: number,
  sides: number,
  below: number,
  dimension: number,
): { scale: number; lists: Lists } => {
  const [w, eh, ph] = [size.right - size.left, size.top - size.bottom, size.back - size.low]
  const room = height - UNDER_FRONT - UNDER_ABOVE - GAP
  const widest = Math.min(MOST_SCALE, (width - 2 * dimension) / w)
  const column = columnHeight(facts)
  const ways: [Lists, number][] = [
    ['beside', Math.min(widest, (width - 2 * sides - 60) / w, room / (eh + ph), (room - column + UNDER_ABOVE) / eh)],
    ['below', Math.min(widest, (room - below - 40) / (eh + ph))],
  ]
  if (column <= height) {
    const between = width - 2 * (sides + dimension + FLANK_GAP)
    ways.push(['flank', Math.min(MOST_SCALE, between / w, room / (eh + ph))])
  }
  const [lists, scale] = ways.reduce((best, way) => (way[1] > best[1] * NO_GAIN ? way : best))
  return { scale, lists }
}

/** Both views at one scale with x in line, their three dimensions, the colours and the list, between two heights, px. */
export const viewsBand = (facts: Facts, sheet: Sheet, top: number, bottom: number, measure: Measure): Item[] => {
  const [margin, middle] = [sheet.margin, middleOf(sheet)]
  const size = sizeOf(facts)
  const rows = listsBelow(facts, sheet, measure)
  const sides = sideWidth(facts, measure)
  const { scale, lists } = scaleOf(
    facts,
    size,
    widthOf(sheet),
    bottom - top,
    sides,
    rows.height,
    besideFront(facts, measure),
  )
  const [w, eh, ph] = [size.right - size.left, size.top - size.bottom, size.back - size.low].map((mm) =>
    Math.floor(mm * scale),
  ) as [number, number, number]
  const column = lists === 'beside' ? columnHeight(facts) : 0
  const low = Math.max(ph + UNDER_ABOVE, column)
  const below = lists === 'below' ? rows.height + 40 : 0
  const spare = Math.max(0, bottom - top - (eh + UNDER_FRONT + GAP + low + below)) / 3
  const left = Math.round(middle - w / 2)
  const toX = (mm: number): number => left + (mm - size.left) * scale

  const front: Box = { x: left, y: Math.round(top + spare), w, h: eh }
  const toY = (mm: number): number => front.y + (size.top - mm) * scale
  const [table, rim, crown] = [toY(-facts.vesselHeight), toY(0), toY(Math.max(0, facts.reach.top))]
  const [from, to] = [toX(facts.reach.left), toX(facts.reach.right)]
  const [leftX, rightX] = [front.x - OUT, front.x + w + OUT]
  const wideY = front.y + eh + 40

  const lowY = Math.round(front.y + eh + UNDER_FRONT + GAP + spare)
  const above: Box = {
    x: left,
    y: Math.round(lowY + (low - UNDER_ABOVE - ph) / (lists === 'beside' ? 2 : 1)),
    w,
    h: ph,
  }
  // In the middle of what they stand beside.
  const columnY = lists === 'flank' ? Math.round(top + (bottom - top - columnHeight(facts)) / 2) : lowY
  const inner = lists === 'flank' ? margin + sides + FLANK_GAP : margin
  const frame = (bottomMm: number, topMm: number) => ({
    left: size.left,
    right: size.right,
    bottom: bottomMm,
    top: topMm,
    scale,
  })

  const bare = facts.plants.length === 0

  return [
    { kind: 'line', from: [inner, table], to: [sheet.width - inner, table], weight: 2.4, colour: INK2 },
    extension([leftX - 12, rim], [middle, rim]),
    ...(bare ? [] : [extension([middle, crown], [rightX + 12, crown])]),
    extension([from, toY((facts.front.top - facts.vesselHeight) / 2)], [from, wideY + 12]),
    extension([to, toY((facts.front.top - facts.vesselHeight) / 2)], [to, wideY + 12]),
    { kind: 'view', angle: { turn: 0, pitch: 0 }, box: front, frame: frame(size.bottom, size.top) },
    ...heightDimension(leftX, rim, table, -1, facts.vesselHigh, facts.vessel, measure),
    // Without flowers the vessel's own height says it all.
    ...(bare ? [] : heightDimension(rightX, crown, table, 1, facts.high, 'high', measure)),
    ...dimensionLine([from, wideY], [to, wideY]),
    ...wideWords(facts, middle, wideY + 46, measure),
    textLine(FROM_FRONT, CAPTION, INK2, 'left', inner, table + 50, measure),
    { kind: 'view', angle: { turn: 0, pitch: 90 }, box: above, frame: frame(size.low, size.back) },
    textLine('from above', CAPTION, INK2, 'centre', middle, above.y + ph + 52, measure),
    ...(lists !== 'below'
      ? [
          ...paletteColumn(facts, margin, columnY, sides, measure),
          ...listColumn(facts, sheet.width - margin - sides, columnY, sides, measure),
        ]
      : rows.at(bottom - rows.height)),
  ]
}

/** `41.0 cm wide`, the figure heavier than the word, centred. */
const wideWords = (facts: Facts, middle: number, y: number, measure: Measure): Item[] => {
  const [a, b] = [measure(`${facts.wide} `, FIGURE), measure('wide', WORD)]
  const x = middle - (a + b) / 2
  return [
    textLine(facts.wide, FIGURE, INK, 'left', x, y, measure),
    textLine('wide', WORD, INK2, 'left', x + a, y, measure),
  ]
}
