import { buildMesh, type Mesh, type ResolvedStem, solidInput } from '../geometry/index.ts'
import { type Cache, keep, recall, remembered } from './cache.ts'
import { giveBack } from './raster.ts'
import { allAtOnce, meshSteps, type Steps, spriteBytes } from './steps.ts'
import { tintsOf } from './tints.ts'
import type { Quality, Sprite, ViewAngle } from './types.ts'

/** Shapes that differ by less than this are one shape, mm. Ours: a fifth of a screen pixel at most. */
const SAME = 0.05

/** Two 32-bit FNV-1a sums (Fowler, Noll, Vo) of the curve as seen from its tip, so that a shifted stem has the same key. */
const shapeKey = (stem: ResolvedStem): string => {
  const { points, mouthIndex } = stem.curve
  const n = points.length
  let a = 0x811c9dc5
  let b = 0x1b873593
  const add = (value: number): void => {
    a = Math.imul(a ^ value, 0x01000193)
    b = Math.imul(b ^ (value + 0x9e37), 0x01000193)
  }
  for (let i = 0; i < n; i++) add(Math.round((points[i]! - points[n - 3 + (i % 3)]!) / SAME))
  for (const x of stem.axis) add(Math.round(x * 500))
  add(mouthIndex)
  return `${(a >>> 0).toString(36)}.${(b >>> 0).toString(36)}`
}

// A resolved stem stays the same object while nothing about it changes.
const keys = new WeakMap<ResolvedStem, string>()

/** All that a stem's solid depends on. */
export const solidKey = (stem: ResolvedStem): string => {
  const known = keys.get(stem)
  if (known) return known
  const { plant, openness, head_mm, seed } = stem
  const key = `${plant.id} ${openness.toFixed(3)} ${head_mm.toFixed(2)} ${seed} ${stem.stem.piece} ${shapeKey(stem)}`
  keys.set(stem, key)
  return key
}

const meshBytes = (mesh: Mesh): number =>
  mesh.positions.byteLength +
  mesh.normals.byteLength +
  mesh.uvs.byteLength +
  mesh.triangles.byteLength +
  mesh.parts.byteLength +
  mesh.tissues.byteLength

/** Steps across surfaces: small views do with half, pictures for print want more, or corners show. Ours, by eye. */
export const detailFor = (scale: number): number => (scale > 6 ? 2 : scale > 3 ? 1.5 : scale < 0.75 ? 0.5 : 1)

/** The stem's triangles; a stem that was only shifted keeps them. */
const meshFor = (stem: ResolvedStem, detail: number, cache: Cache): Mesh => {
  const make = (): Mesh => buildMesh({ ...solidInput(stem), detail })
  return remembered(cache, `mesh ${detail} ${solidKey(stem)}`, make, meshBytes)
}

const spriteKey = (stem: ResolvedStem, angle: ViewAngle, scale: number, quality: Quality): string => {
  const turn = (((angle.turn % 360) + 360) % 360).toFixed(2)
  return `${solidKey(stem)} ${stem.colour} ${turn} ${angle.pitch.toFixed(2)} ${scale.toFixed(4)} ${quality}`
}

/** Keeps a sprite of a stem that was made elsewhere with the same angle, scale and quality. */
export const keepSprite = (
  stem: ResolvedStem,
  angle: ViewAngle,
  scale: number,
  quality: Quality,
  cache: Cache,
  sprite: Sprite,
): void => keep(cache, spriteKey(stem, angle, scale, quality), sprite, spriteBytes(sprite))

/** stemSprite in steps. */
export function* spriteSteps(
  stem: ResolvedStem,
  angle: ViewAngle,
  scale: number,
  quality: Quality,
  cache: Cache,
): Steps<Sprite> {
  const key = spriteKey(stem, angle, scale, quality)
  const known = recall<Sprite>(cache, key)
  if (known) return known
  const mesh = meshFor(stem, detailFor(scale), cache)
  yield
  const tints = tintsOf(stem.plant, stem.colour, stem.seed)
  const { sprite, raster } = yield* meshSteps(mesh, angle, scale, quality, tints, stem.seed)
  giveBack(raster)
  keep(cache, key, sprite, spriteBytes(sprite))
  return sprite
}

/**
 * One stem alone, seen from `angle`, `scale` pixels to the mm, depths and place relative to its tip.
 * Remembered by all it depends on; a stem that was only shifted keeps its sprite.
 */
export const stemSprite = (
  stem: ResolvedStem,
  angle: ViewAngle,
  scale: number,
  quality: Quality,
  cache: Cache,
): Sprite => allAtOnce(spriteSteps(stem, angle, scale, quality, cache))
