import { expect } from 'vitest'
import type { Arrangement, Stem } from '../../../src/arrangement/index.ts'
import { newArrangement } from '../../../src/arrangement/index.ts'
import { PLANTS } from '../../../src/catalogue/index.ts'
import type { PictureOptions } from '../../../src/ui/picture/facts.ts'
import type { Box, Item, Measure, Sheet } from '../../../src/ui/picture/types.ts'

/** About the mean advance of the letters of both faces; wide letters count more. Ours, for tests without a canvas. */
export const measure: Measure = (text, font) =>
  [...text].reduce((sum, c) => sum + (/[mwMW—]/.test(c) ? 0.85 : /[ilj.,'’ ]/.test(c) ? 0.26 : 0.52), 0) * font.size

export const OPTIONS: PictureOptions = {
  units: 'cm',
  language: 'en-GB',
  colourNames: new Map([['#edb898', 'apricot blush']]),
  generalName: () => 'moderate reddish orange',
  prices: { currency: 'EUR', perBunch: {} },
  withCost: true,
}

/** `count` stems of `kinds` plants, spread over an area so wide, deep and high, mm. */
export const stems = (count: number, kinds: number, wide: number, deep: number, high: number): Stem[] =>
  Array.from({ length: count }, (_, i) => {
    const plant = PLANTS[((i % kinds) * 5 + 1) % PLANTS.length]!
    const [a, r] = [i * 2.4, Math.sqrt((i + 1) / count)]
    return {
      id: `s${i}`,
      plant: plant.id,
      role: plant.role,
      colour: i % 2 === 0 ? '#edb898' : '#6a4a7c',
      openness: 0.8,
      mouth: [20 * r * Math.cos(a), 20 * r * Math.sin(a)],
      tip: [(wide / 2) * r * Math.cos(a), (deep / 2) * r * Math.sin(a), high * (1 - r * r * 0.9)],
      bend: 0,
      piece: 'whole',
    }
  })

export const design = (over: Partial<Arrangement>): Arrangement => {
  const base = newArrangement()
  return { ...base, ...over, setting: { ...base.setting, ...over.setting } }
}

/** What takes up room: boxes of letters, views, plates and swatches; not the frame, nor lines. */
export const boxes = (items: readonly Item[]): { what: string; box: Box }[] =>
  items.flatMap((item) => {
    if (item.kind === 'text') return [{ what: item.text, box: item.box }]
    if (item.kind === 'view' || item.kind === 'plate') return [{ what: item.kind, box: item.box }]
    return item.kind === 'box' && item.fill ? [{ what: item.fill, box: item.box }] : []
  })

/** Pairs that lie over each other by more than a dot. */
export const overlaps = (items: readonly Item[]): string[] => {
  const all = boxes(items)
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => {
      const across = Math.min(a.box.x + a.box.w, b.box.x + b.box.w) - Math.max(a.box.x, b.box.x)
      const down = Math.min(a.box.y + a.box.h, b.box.y + b.box.h) - Math.max(a.box.y, b.box.y)
      return across > 1 && down > 1 ? [`${a.what} / ${b.what}`] : []
    }),
  )
}

export const texts = (items: readonly Item[]): string[] => items.flatMap((i) => (i.kind === 'text' ? [i.text] : []))

/** Everything that has a place, as corners. */
export const corners = (items: readonly Item[]): [number, number][] =>
  items.flatMap((item): [number, number][] => {
    if (item.kind === 'line') return [[...item.from], [...item.to]]
    if (item.kind === 'shape' || item.kind === 'path') return item.points.map((p): [number, number] => [...p])
    const { x, y, w, h } = item.box
    return [
      [x, y],
      [x + w, y + h],
    ]
  })

/** Nothing leaves the frame, nothing lies over anything else. */
export const expectInFrame = (items: readonly Item[], { width, height, inset }: Sheet): void => {
  const all = corners(items)
  for (const [x, y] of all) if (Number.isNaN(x + y)) throw new Error('a place is not a number')
  expect(Math.min(...all.map(([x]) => x))).toBeGreaterThanOrEqual(inset)
  expect(Math.max(...all.map(([x]) => x))).toBeLessThanOrEqual(width - inset)
  expect(Math.min(...all.map(([, y]) => y))).toBeGreaterThanOrEqual(inset)
  expect(Math.max(...all.map(([, y]) => y))).toBeLessThanOrEqual(height - inset)
  expect(overlaps(items)).toEqual([])
}

const { vessel } = newArrangement()
/** Designs that are hard to lay out. */
export const HARD = {
  tall: design({
    form: 'vertical',
    vessel: { ...vessel, width: 110, depth: 110, height: 420 },
    stems: stems(14, 5, 260, 240, 1100),
  }),
  wide: design({
    form: 'low',
    vessel: { ...vessel, plan: 'rectangular', width: 700, depth: 120, height: 70 },
    stems: stems(60, 9, 1300, 200, 140),
  }),
  longTitle: design({
    title: 'The long midsummer dinner under the plane trees '.repeat(10).trim(),
    stems: stems(12, 6, 300, 300, 150),
  }),
  manyColours: design({
    palette: {
      name: 'windfalls and bramble leaf '.repeat(15),
      slots: Array.from({ length: 64 }, () => ({ colour: '#6d1428', part: 'mass' as const })),
    },
    stems: stems(20, 7, 300, 300, 200),
  }),
}
