import type { LightName } from '../colour/index.ts'
import type { ViewAngle } from '../geometry/index.ts'

/** A rectangle of a view, mm, up positive, and how many pixels a mm gets. */
export interface Frame {
  left: number
  right: number
  bottom: number
  top: number
  /** Pixels per mm (device pixels). */
  scale: number
}

export type Quality = 'draft' | 'fine'

/** A painted rectangle with what is needed to lay things in front and behind. Row 0 is the top. */
export interface Picture {
  width: number
  height: number
  /** Not premultiplied. */
  rgba: Uint8ClampedArray
  /** Toward the viewer, mm; -1e9 where nothing is. */
  depth: Float32Array
  /** 0 nothing, else index of the stem + 1; VESSEL_OWNER for the vessel. */
  owner: Uint16Array
}
export const VESSEL_OWNER = 65535

/** One stem alone, cut to its own bounds. (left, top) is its upper left corner relative to the tip's pixel. */
export interface Sprite {
  left: number
  top: number
  width: number
  height: number
  rgba: Uint8ClampedArray
  /** Toward the viewer, mm, relative to the tip; -1e9 where nothing is. */
  depth: Float32Array
}

export interface PaintOptions {
  quality: Quality
  /** Masses blocked in by their stand-ins, at once: a first look at something new. */
  sketch?: boolean
  /** Elevation only: the front right quarter of the vessel is cut away, as in a half section. */
  section: boolean
  /** Stems to leave out, by id (the moving ones). */
  without?: readonly string[]
  /** Paint the vessel in its own colour, or in the quiet grey of the sheet. */
  vessel: 'own' | 'grey' | 'none'
  /** As an eye sees it in this light; daylight if left out. */
  light?: LightName
}

export type { ViewAngle }

/** How far plants reach seen level, mm right of the axis and over the rim. */
export interface Reach {
  left: number
  right: number
  top: number
}
