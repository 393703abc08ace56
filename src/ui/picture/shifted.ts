import type { Item } from './types.ts'

/** The same item lower on its sheet, px. */
export const shifted = (item: Item, dy: number): Item => {
  if (item.kind === 'text') return { ...item, y: item.y + dy, box: { ...item.box, y: item.box.y + dy } }
  if (item.kind === 'line')
    return { ...item, from: [item.from[0], item.from[1] + dy], to: [item.to[0], item.to[1] + dy] }
  if (item.kind === 'shape' || item.kind === 'path')
    return { ...item, points: item.points.map(([x, y]) => [x, y + dy]) }
  return { ...item, box: { ...item.box, y: item.box.y + dy } }
}
