import { contrastRatio } from '../../colour/index.ts'

/** The wall: the paper of the sheet, a grey without a hue. */
export const WALL = '#ededed'
const INK = '#191919'
/** Porcelain and wax over the linen. Ours. */
const CHINA = '#f7f5f0'
/** Of which a line can be, from dark to light. Ours. */
const PENS = ['#5c5c5c', '#757575', '#8f8f8f', '#dcdcdc']

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
  return PENS.reduce((best, pen) => (worst(pen) > worst(best) ? pen : best))
}

export interface Tones {
  linen: string
  /** Cloth that hangs gets less light. */
  hanging: string
  china: string
  wax: string
  /** Lines on china, on the cloth, and on what stands before cloth and wall. */
  onChina: string
  onLinen: string
  over: string
  flame: string
  flameHeart: string
  /** Shade on the cloth: hatching, darker than it. */
  shade: string
  closeShade: string
}

/** Colours of the room on a linen #rrggbb, in daylight: its light comes later, as with the flowers. All ours. */
export const tonesOn = (linen: string): Tones => {
  const china = mixed(linen, CHINA, 0.85)
  const pale = contrastRatio(linen, '#000000') > 3
  return {
    linen,
    hanging: mixed(linen, INK, pale ? 0.07 : 0.2),
    china,
    wax: '#f4ead2',
    onChina: penOn([china]),
    onLinen: penOn([linen]),
    over: penOn([linen, WALL]),
    flame: '#f6b455',
    flameHeart: '#fff1c4',
    shade: mixed(linen, pale ? INK : '#000000', 0.5),
    closeShade: mixed(linen, pale ? INK : '#000000', 0.65),
  }
}
