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

/** Lay one leaf with its stalk. */
export const addLeaf = (b: Builder, leaf: LeafForm, tissue: Tissue = 'leaf'): void => {
  const [d, s, n] = leafAxes(leaf)
  const { o, length, width, stalk, droop, fold, wave, slant = 0 } = leaf
  const outline = OUTLINES[leaf.outline]
  addGrid(
    b,
    steps(b, leaf.nu ?? 8),
    steps(b, leaf.nv ?? 4),
    (u, v, out) => {
      const q = 2 * v - 1
      const h = (width / 2) * outline(u) * cutAt(leaf, u) * q
      const x = length * (stalk + (1 - stalk) * u) + slant * Math.abs(h)
      const lift = Math.abs(h) * fold + wave * Math.sin(u * 9 + q * 2) * width * 0.05 * Math.abs(q)
      const hang = (droop * u * u * length) / 2
      for (let k = 0; k < 3; k++) out[k] = o[k]! + d[k]! * x + s[k]! * h + n[k]! * lift + DOWN[k]! * hang
    },
    tissue,
  )
  if (stalk > 0.02) {
    const r = Math.max(0.35, width * 0.022)
    addTube(b, [o, along(o, d, length * stalk * 1.15)], r, r, tissue, 4)
  }
}

/** How far a lobed margin is cut in at u. */
const cutAt = ({ lobes, depth, slit = 1 }: LeafForm, u: number): number =>
  lobes > 0 ? 1 - depth * (0.5 - 0.5 * Math.cos(u * lobes * 2 * Math.PI)) ** slit * Math.min(1, 4 * (1 - u)) : 1

const shares = new Map<string, readonly [number, number]>()
/** Area of the lower and the upper half of a blade, each over its own length times the width. */
export const leafShares = (leaf: LeafForm): readonly [number, number] => {
  const key = `${leaf.outline} ${leaf.lobes} ${leaf.depth} ${leaf.slit ?? 1}`
  const known = shares.get(key)
  if (known) return known
  const n = 200
  const sum = [0, 0]
  for (let i = 0; i < n; i++) {
    const u = (i + 0.5) / n
    sum[u < 0.5 ? 0 : 1]! += (OUTLINES[leaf.outline](u) * cutAt(leaf, u) * 2) / n
  }
  const share = [sum[0]!, sum[1]!] as const
  shares.set(key, share)
  return share
}
