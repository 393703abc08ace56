import type { Facts } from './facts.ts'
import { listColumn, listHeight, listsBelow, paletteColumn, paletteHeight, SIDE } from './side-lists.ts'
import { textLine } from './text.ts'
import { type Box, type Font, INK, INK2, type Item, LINE, MARGIN, type Measure, type Place, SHEET } from './types.ts'

const WIDTH = SHEET.width - 2 * MARGIN
const MIDDLE = SHEET.width / 2
const CAPTION: Font = { face: 'capt', size: 38, weight: 400, italic: true }
const FIGURE: Font = { face: 'lett', size: 38, weight: 620 }
const WORD: Font = { face: 'lett', size: 34, weight: 470 }

/** A petal may reach a few mm farther than the box says; ours. */
const PAD_mm = 6
/** Room at either side of the view from the front for its heights, px. */
const SIDE_DIMENSION = 250
/** Heights under the view from the front: for its width and its caption; and under the one from above: its caption. */
const UNDER_FRONT = 164
const UNDER_ABOVE = 76
const GAP = 34
/** px per mm; at 300 dots to the inch the size of life is 11.8. Larger than this nothing is gained. Ours. */
const MOST_SCALE = 8

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
  const y = (top + bottom) / 2
  const align = side > 0 ? 'left' : 'right'
  return [
    ...dimensionLine([x, bottom], [x, top]),
    textLine(figure, FIGURE, INK, align, x + side * 20, y - 4, measure),
    textLine(word, WORD, INK2, align, x + side * 20, y + 36, measure),
  ]
}

interface Size {
  /** mm, padded */
  left: number
  right: number
  bottom: number
  top: number
  low: number
  back: number
}

const sizeOf = ({ front, above, vesselHeight }: Facts): Size => ({
  left: Math.min(front.left, above.left) - PAD_mm,
  right: Math.max(front.right, above.right) + PAD_mm,
  bottom: Math.min(front.bottom, -vesselHeight) - PAD_mm,
  top: front.top + PAD_mm,
  low: above.bottom - PAD_mm,
  back: above.top + PAD_mm,
})

/** Scale, px per mm, of both views when lists stand beside the plan or below it, and which of the two is larger. */
const scaleOf = (facts: Facts, size: Size, height: number, below: number): { scale: number; beside: boolean } => {
  const [w, eh, ph] = [size.right - size.left, size.top - size.bottom, size.back - size.low]
  const room = height - UNDER_FRONT - UNDER_ABOVE - GAP
  const widest = Math.min(MOST_SCALE, (WIDTH - 2 * SIDE_DIMENSION) / w)
  const column = Math.max(paletteHeight(facts), listHeight(facts)) - UNDER_ABOVE
  const side = Math.min(widest, (WIDTH - 2 * SIDE - 80) / w, room / (eh + ph), (room - column) / eh)
  const under = Math.min(widest, (room - below - 40) / (eh + ph))
  return side >= under ? { scale: side, beside: true } : { scale: under, beside: false }
}

/** Both views at one scale with x in line, their three dimensions, the colours and the list, between two heights, px. */
export const viewsBand = (facts: Facts, top: number, bottom: number, measure: Measure): Item[] => {
  const size = sizeOf(facts)
  const lists = listsBelow(facts, measure)
  const { scale, beside } = scaleOf(facts, size, bottom - top, lists.height)
  const [w, eh, ph] = [size.right - size.left, size.top - size.bottom, size.back - size.low].map((mm) =>
    Math.floor(mm * scale),
  ) as [number, number, number]
  const column = beside ? Math.max(paletteHeight(facts), listHeight(facts)) : 0
  const low = Math.max(ph + UNDER_ABOVE, column)
  const below = beside ? 0 : lists.height + 40
  const spare = Math.max(0, bottom - top - (eh + UNDER_FRONT + GAP + low + below)) / 3
  const left = Math.round(MIDDLE - w / 2)
  const toX = (mm: number): number => left + (mm - size.left) * scale

  const front: Box = { x: left, y: Math.round(top + spare), w, h: eh }
  const toY = (mm: number): number => front.y + (size.top - mm) * scale
  const [table, rim, crown] = [toY(-facts.vesselHeight), toY(0), toY(facts.front.top)]
  const [from, to] = [toX(facts.front.left), toX(facts.front.right)]
  const [leftX, rightX] = [front.x - 36, front.x + w + 36]
  const wideY = front.y + eh + 40

  const lowY = Math.round(front.y + eh + UNDER_FRONT + GAP + spare)
  const above: Box = { x: left, y: Math.round(lowY + (low - UNDER_ABOVE - ph) / (beside ? 2 : 1)), w, h: ph }
  const frame = (bottomMm: number, topMm: number) => ({
    left: size.left,
    right: size.right,
    bottom: bottomMm,
    top: topMm,
    scale,
  })

  return [
    { kind: 'line', from: [MARGIN, table], to: [SHEET.width - MARGIN, table], weight: 2.4, colour: INK2 },
    extension([leftX - 12, rim], [MIDDLE, rim]),
    extension([MIDDLE, crown], [rightX + 12, crown]),
    extension([from, toY((facts.front.top - facts.vesselHeight) / 2)], [from, wideY + 12]),
    extension([to, toY((facts.front.top - facts.vesselHeight) / 2)], [to, wideY + 12]),
    { kind: 'view', view: 'front', box: front, frame: frame(size.bottom, size.top) },
    ...heightDimension(leftX, rim, table, -1, facts.vesselHigh, facts.vessel, measure),
    ...heightDimension(rightX, crown, table, 1, facts.high, 'high', measure),
    ...dimensionLine([from, wideY], [to, wideY]),
    ...wideWords(facts, wideY + 46, measure),
    textLine('from the front', CAPTION, INK2, 'centre', MIDDLE, wideY + 108, measure),
    { kind: 'view', view: 'above', box: above, frame: frame(size.low, size.back) },
    textLine('from above', CAPTION, INK2, 'centre', MIDDLE, above.y + ph + 52, measure),
    ...(beside
      ? [
          ...paletteColumn(facts, MARGIN, lowY, measure),
          ...listColumn(facts, SHEET.width - MARGIN - SIDE, lowY, measure),
        ]
      : lists.at(bottom - lists.height)),
  ]
}

/** `41.0 cm wide`, the figure heavier than the word, centred. */
const wideWords = (facts: Facts, y: number, measure: Measure): Item[] => {
  const [a, b] = [measure(`${facts.wide} `, FIGURE), measure('wide', WORD)]
  const x = MIDDLE - (a + b) / 2
  return [
    textLine(facts.wide, FIGURE, INK, 'left', x, y, measure),
    textLine('wide', WORD, INK2, 'left', x + a, y, measure),
  ]
}
