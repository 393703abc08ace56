import type { Light } from '../../arrangement/index.ts'
import { underLight } from '../../colour/index.ts'
import { type Item, PAPER } from './types.ts'

/**
 * The paper of the sheet by lamps and candles: white turned to cream as stationers have it, paler than the light itself would
 * make it. The light is seen on wall, cloth and flowers; a sheet as pink as a candlelit wall looks like a fault. Ours.
 */
const PAPERS: Record<Light, string> = {
  daylight: PAPER,
  overcast: '#ebecee',
  'warm-lamp': '#f1ece2',
  candle: '#f2e8dc',
}

/** The paper, and everything with a colour of its own as seen in a light. Views and plates are painted in it later. */
export const inLight = (items: readonly Item[], light: Light): { paper: string; items: Item[] } => {
  const lit = (hex: string): string => underLight(hex, light)
  return {
    paper: PAPERS[light],
    items: items.map((item) => {
      if (item.kind === 'text' || item.kind === 'line' || item.kind === 'path')
        return { ...item, colour: lit(item.colour) }
      if (item.kind === 'shape') return { ...item, fill: lit(item.fill) }
      if (item.kind === 'box') return { ...item, fill: item.fill && lit(item.fill), stroke: lit(item.stroke) }
      return item
    }),
  }
}
