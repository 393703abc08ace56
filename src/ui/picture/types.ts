import type { Light } from '../../arrangement/index.ts'
import type { Frame, PlatePiece, ViewAngle } from '../../drawing/index.ts'

export const SIZES = ['a4', 'letter', 'phone'] as const
export type SizeName = (typeof SIZES)[number]

export interface Sheet {
  name: SizeName
  /** px */
  width: number
  height: number
  /** Frame and the text inside it: distance from the edge of the sheet, px. Ours. */
  inset: number
  margin: number
  /** Width and height on paper, mm; null for a screen. */
  paper_mm: readonly [width: number, height: number] | null
}

/**
 * A4 (210 × 297 mm, ISO 216) and Letter (8.5 × 11 in, ANSI/ASME Y14.1) upright at 300 dots to the inch, and a phone's screen
 * of nine to sixteen.
 */
export const SHEETS: Record<SizeName, Sheet> = {
  a4: { name: 'a4', width: 2480, height: 3508, inset: 88, margin: 176, paper_mm: [210, 297] },
  letter: { name: 'letter', width: 2550, height: 3300, inset: 88, margin: 176, paper_mm: [215.9, 279.4] },
  phone: { name: 'phone', width: 1080, height: 1920, inset: 28, margin: 64, paper_mm: null },
}
/** Between the margins. */
export const widthOf = ({ width, margin }: Sheet): number => width - 2 * margin
export const middleOf = ({ width }: Sheet): number => width / 2

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
  /** A line through points, open. */
  | { kind: 'path'; points: Place[]; weight: number; colour: string }
  | { kind: 'shape'; points: Place[]; fill: string }
  | { kind: 'box'; box: Box; fill: string | null; stroke: string; weight: number }
  /** The arrangement as seen from one way; `frame.scale` is px of the sheet per mm. */
  | { kind: 'view'; angle: ViewAngle; box: Box; frame: Frame }
  /**
   * One plant on a short stem, standing on the lower edge of the box, in the middle. With a scale of its own, px per mm, it
   * hangs from the middle of the box's upper edge by its tip instead, as the piece that it is, and what is below the box is cut off.
   */
  | { kind: 'plate'; plant: string; colour: string; openness: number; box: Box; scale?: number; as?: PlatePiece }

/** A sheet with everything on it: colours as in its light, what comes later lies over what came before. */
export interface Laid {
  sheet: Sheet
  paper: string
  light: Light
  items: Item[]
}

/** Width of a line of text, px. */
export type Measure = (text: string, font: Font) => number
