import type { Point3 } from '../../arrangement/index.ts'
import type { Tissue } from '../types.ts'
import { addGrid, addTube, type Builder, steps } from './builder.ts'
import { OUTLINES, type Outline } from './petal.ts'
import { along, cross, dot, unit } from './vector.ts'

/** One leaf: where it joins, which way it goes, which way its face looks. mm. */
export interface LeafForm {
  o: Point3
  along: Point3
  face: Point3
  length: number
  width: number
  outline: Outline
  /** How far the tip hangs, share of half the length. */
  droop: number
  /** V-fold, height per half width. */
  fold: number
  /** Share of the length that is stalk. */
  stalk: number
  /** Waves of the margin, 0 none. */
  wave: number
  /** Lobes or teeth of the margin: how many a side, how deep (share of half width). */
  lobes: number
  depth: number
  /** How far the margin runs ahead of the midrib, share of half width: the slant of the veins. */
  slant?: number
  /** 1 waves in and out; more makes narrow slits between broad lobes. */
  slit?: number
  /** How far the margin of the base reaches back behind the stalk, share of half width: a heart's. */
  back?: number
  /** How far the blade turns about its midrib from base to tip, radians. */
  twist?: number
  /** How far the tip bends back from its face, share of half the length. */
  arch?: number
  /** Pairs of leaflets that it is cut into, 0 none; see leaflets.ts. */
  leaflets?: number
  /** 1: the leaflets are hair-fine needles. */
  needles?: number
  /** Rows close up toward both ends, so that they come out round; lobes want them even. */
  closing?: boolean
  /** Number of the shoot that bears it: leaves of one shoot may share a stand-in. */
  shoot?: number
  nu?: number
  nv?: number
}

export const PLAIN_LEAF = { droop: 0.25, fold: 0.16, stalk: 0.1, wave: 0, lobes: 0, depth: 0 } as const

const DOWN: Point3 = [0, 0, -1]

/** Unit directions of a leaf: along, across, face. */
export const leafAxes = (leaf: LeafForm): [Point3, Point3, Point3] => {
  const d = unit(leaf.along)
  const n = unit(along(leaf.face, d, -dot(leaf.face, d)), Math.abs(d[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0])
  const face = unit(along(n, d, -dot(n, d)))
  return [d, cross(d, face), face]
}

/** Lay one undivided leaf with its stalk. */
export const addBlade = (b: Builder, leaf: LeafForm, tissue: Tissue = 'leaf'): void => {
  const [d, s, n] = leafAxes(leaf)
  const { o, length, width, stalk, droop, fold, wave, slant = 0, back = 0, twist = 0, arch = 0 } = leaf
  const outline = OUTLINES[leaf.outline]
  addGrid(
    b,
    steps(b, leaf.nu ?? 8),
    steps(b, leaf.nv ?? 4),
    (row, v, out) => {
      const u = leaf.closing ? (1 - Math.cos(Math.PI * row)) / 2 : row
      const q = 2 * v - 1
      const h = (width / 2) * outline(u) * cutAt(leaf, u) * q
      const x = length * (stalk + (1 - stalk) * u) + (slant - back * (1 - u) ** 3) * Math.abs(h)
      const lift = Math.abs(h) * fold + wave * Math.sin(u * 9 + q * 2) * width * 0.05 * Math.abs(q)
      const hang = (droop * u * u * length) / 2
      const [c, t] = twist === 0 ? [1, 0] : [Math.cos(twist * u), Math.sin(twist * u)]
      const across = h * c - lift * t
      const up = h * t + lift * c - (arch * u * u * length) / 2
      for (let k = 0; k < 3; k++) out[k] = o[k]! + d[k]! * x + s[k]! * across + n[k]! * up + DOWN[k]! * hang
    },
    tissue,
  )
  if (stalk > 0.02) {
    // Long stalks are slender.
    const r = Math.max(0.35, width * (stalk > 0.25 ? 0.011 : 0.022))
    addTube(b, [o, along(o, d, length * stalk * 1.15)], r, r, tissue, 4)
  }
}

/** How far a lobed margin is cut in at u. */
const cutAt = ({ lobes, depth, slit = 1 }: LeafForm, u: number): number =>
  lobes > 0 ? 1 - depth * (0.5 - 0.5 * Math.cos(u * lobes * 2 * Math.PI)) ** slit * Math.min(1, 4 * (1 - u)) : 1

/** What needles cover of their outline, about. */
const NEEDLED = 0.45
/** A blade is measured in so many equal lengths. */
export const LEAF_PARTS = 12
const shares = new Map<string, readonly number[]>()
/** Area of the parts of a blade from base to tip, each over its own length times the width. */
export const leafParts = (leaf: LeafForm): readonly number[] => {
  const key = `${leaf.outline} ${leaf.lobes} ${leaf.depth} ${leaf.slit ?? 1} ${leaf.needles ?? 0}`
  const known = shares.get(key)
  if (known) return known
  const n = 240
  const sum = Array.from({ length: LEAF_PARTS }, () => 0)
  const covered = leaf.needles ? NEEDLED : 1
  for (let i = 0; i < n; i++) {
    const u = (i + 0.5) / n
    sum[Math.floor(u * LEAF_PARTS)]! += (covered * OUTLINES[leaf.outline](u) * cutAt(leaf, u) * LEAF_PARTS) / n
  }
  shares.set(key, sum)
  return sum
}

/** Area of a blade over its length times its width. */
export const leafShare = (leaf: LeafForm): number => leafParts(leaf).reduce((sum, x) => sum + x / LEAF_PARTS, 0)
