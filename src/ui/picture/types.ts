import type { Frame } from '../../drawing/index.ts'

/** The sheet: A4 upright at 300 dots to the inch, px (210 × 297 mm; ISO 216). */
export const SHEET = { width: 2480, height: 3508 } as const
/** Frame and the text inside it: distance from the edge of the sheet, px. Ours. */
export const INSET = 88
export const MARGIN = 176

/** Greys without a hue, so that they don't tint the judgement of a colour. */
export const PAPER = '#ededed'
export const INK = '#191919'
export const INK2 = '#484848'
export const LINE = '#757575'
export const FAINT = '#b4b4b4'

/** px of the sheet, from its upper left corner. */
export interface Box {
  x: number
  y: number
  w: number
  h: number
}
export type Place = [x: number, y: number]

/** `capt` is the face of titles, `lett` that of all other lettering. */
export interface Font {
  face: 'capt' | 'lett'
  /** px */
  size: number
  weight: number
  italic?: boolean
}
export type Align = 'left' | 'centre' | 'right'

export type Item =
  /** `y` is the base line, `x` the end or middle that `align` names; `box` holds the letters. */
  | { kind: 'text'; text: string; font: Font; colour: string; align: Align; x: number; y: number; box: Box }
  | { kind: 'line'; from: Place; to: Place; weight: number; colour: string }
  | { kind: 'shape'; points: Place[]; fill: string }
  | { kind: 'box'; box: Box; fill: string | null; stroke: string; weight: number }
  /** The arrangement from the front or from above; `frame.scale` is px of the sheet per mm. */
  | { kind: 'view'; view: 'front' | 'above'; box: Box; frame: Frame }
  /** One plant on a short stem, standing on the lower edge of the box, in the middle. */
  | { kind: 'plate'; plant: string; colour: string; openness: number; box: Box }

/** Width of a line of text, px. */
export type Measure = (text: string, font: Font) => number
