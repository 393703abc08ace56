import type { Arrangement, Point3, Role, Stem, Vessel } from '../arrangement/index.ts'
import type { Plant } from '../catalogue/index.ts'

/** The line of a stem from the cut end, through the mouth, to the tip. */
export interface StemCurve {
  /** xyz triples, mm, cut end first. */
  points: Float32Array
  /** Index of the point in the plane of the mouth. */
  mouthIndex: number
  above_mm: number
  below_mm: number
  /** above + below: what has to be cut. */
  cut_mm: number
  /** The handle at mid length above the mouth that sets `bend`. */
  middle: Point3
}

/** A stem with everything looked up: what drawing, readings and list read. */
export interface ResolvedStem {
  id: string
  /** Place in document.stems. */
  index: number
  stem: Stem
  plant: Plant
  role: Role
  /** #rrggbb after looking up the palette slot. */
  colour: string
  openness: number
  /** Head diameter at this openness, mm. */
  head_mm: number
  /** From the stem's id: same stem, same flower. */
  seed: number
  curve: StemCurve
  /** Unit vector: where the head faces. */
  axis: Point3
}

export interface Resolved {
  document: Arrangement
  vessel: Vessel
  stems: ResolvedStem[]
}

/** What a triangle or a stand-in is made of; the drawing gives each its colours. Order is the number stored in meshes. */
export const TISSUES = ['petal', 'petal-second', 'disc', 'pollen', 'green', 'leaf', 'stem', 'bark'] as const
export type Tissue = (typeof TISSUES)[number]

/** Triangles of one stem, mm, relative to the stem's tip (so a stem that is only shifted keeps its mesh). */
export interface Mesh {
  positions: Float32Array
  /** Unit normals, one per vertex; either side may face the eye. */
  normals: Float32Array
  /** u along the petal or leaf (0 base … 1 tip), v across (0 … 1). */
  uvs: Float32Array
  triangles: Uint32Array
  /** Per triangle: number of the petal, leaf or floret, for contours and small variation. */
  parts: Uint16Array
  /** Per triangle: index into TISSUES. */
  tissues: Uint8Array
}

/** What a stand-in counts as in the readings. */
export const KINDS = ['bloom', 'leaf', 'stem'] as const
export type Kind = (typeof KINDS)[number]

/**
 * Light solids that the readings splat in place of the mesh; their outline agrees with the mesh's within 5 % of area.
 * Packed, 14 numbers each: shape (0 ellipsoid, 1 capsule), kind (index into KINDS), then
 * ellipsoid: centre xyz, three half-axis vectors (flat discs have one of ~0.3 mm); capsule: a xyz, b xyz, radius, 0 0 0 0 0.
 * mm, relative to the stem's tip.
 */
export const STANDIN_STRIDE = 14

/** One solid, two uses. Cached by the caller; depends on plant, openness, head size, seed, axis and the curve's shape. */
export interface Solid {
  mesh: Mesh
  standins: Float32Array
}

/** Which way one looks: turn about z, then pitch (0 elevation … 90 plan), degrees. */
export interface ViewAngle {
  turn: number
  pitch: number
}
