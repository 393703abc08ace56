import type { Light } from '../../arrangement/index.ts'
import { contrastRatio } from '../../colour/index.ts'

/** The wall: the paper of the sheet, a grey without a hue. */
export const WALL = '#ededed'
/** The wall by lamps and by candles is farther from the light than the table; of a stone grey, which in their light is brown and not mauve. Ours. */
const WALLS: Record<Light, string> = { daylight: WALL, overcast: '#e6e6e6', 'warm-lamp': '#cfcdc4', candle: '#96948a' }
/** The wall behind a table in a light, #rrggbb as in daylight. */
export const wallIn = (light: Light): string => WALLS[light]
const INK = '#191919'
/** Porcelain and wax over the linen. Ours. */
const CHINA = '#f7f5f0'
const WAX = '#f4ead2'
/** Of which a line can be, from dark to light. Ours. */
const PENS = ['#5c5c5c', '#757575', '#8f8f8f', '#dcdcdc']
/** Where all of these are weak, as on white cloth before a dusky wall: under the 3 : 1 of WCAG 2.2, 1.4.11. */
const STRONG_PENS = ['#262626', '#f2f2f2']
const WEAK = 3

const part = (hex: string, k: number): number => Number.parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16)

/** Between two colours #rrggbb, so far (0–1) from the first to the second. Shares of bytes: for lines, not for judging. */
export const mixed = (from: string, to: string, share: number): string =>
  `#${[0, 1, 2]
    .map((k) => Math.round(part(from, k) + (part(to, k) - part(from, k)) * share))
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')}`

/** The pen that is seen best on the worst of these grounds. */
const penOn = (grounds: readonly string[]): string => {
  const worst = (pen: string): number => Math.min(...grounds.map((ground) => contrastRatio(pen, ground)))
  const best = (pens: readonly string[]): string => pens.reduce((one, pen) => (worst(pen) > worst(one) ? pen : one))
  const soft = best(PENS)
  return worst(soft) >= WEAK ? soft : best([soft, ...STRONG_PENS])
}

export interface Tones {
  linen: string
  /** Cloth that hangs gets less light. */
  hanging: string
  china: string
  chinaShade: string
  wax: string
  waxShade: string
  /** Lines on china, on wax, on the cloth, and on what stands before cloth and wall. */
  onChina: string
  onWax: string
  onLinen: string
  over: string
  flame: string
  flameHeart: string
  /** Shade on the cloth: hatching, darker than it. */
  shade: string
  closeShade: string
}

/** Colours of the room on a linen #rrggbb before a wall, in daylight: its light comes later, as with the flowers. All ours. */
export const tonesOn = (linen: string, wall: string = WALL): Tones => {
  const china = mixed(linen, CHINA, 0.85)
  const pale = contrastRatio(linen, '#000000') > 3
  return {
    linen,
    hanging: mixed(linen, INK, pale ? 0.13 : 0.2),
    china,
    chinaShade: mixed(china, INK, 0.07),
    wax: WAX,
    waxShade: mixed(WAX, '#a8672c', 0.16),
    onChina: penOn([china]),
    onWax: penOn([WAX]),
    onLinen: penOn([linen]),
    over: penOn([linen, wall]),
    flame: '#f6b455',
    flameHeart: '#fff1c4',
    shade: mixed(linen, pale ? INK : '#000000', 0.5),
    closeShade: mixed(linen, pale ? INK : '#000000', 0.65),
  }
}
