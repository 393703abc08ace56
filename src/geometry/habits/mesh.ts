import type { Mesh } from '../types.ts'
import { addTube, type Builder, finish, newBuilder } from './builder.ts'
import { addHead } from './heads/place.ts'
import { addLeaf } from './leaf.ts'
import { stretch } from './line.ts'
import { ROPES } from './lines/index.ts'
import type { Layout } from './organs.ts'
import { randomFrom } from './vector.ts'

/** Lay every organ of a stem. */
export const addLayout = (b: Builder, layout: Layout): void => {
  const { line, stem } = layout
  addTube(b, [...stretch(line, 0, stem.until, 30), ...(stem.neck ?? [])], stem.r0, stem.r1, stem.tissue, 7)
  for (const twig of layout.twigs)
    addTube(b, twig.points, twig.r0, twig.r1, twig.tissue, twig.tissue === 'leaf' ? 11 : 6)
  for (const leaf of layout.leaves) addLeaf(b, leaf)
  // Many heads share the triangles that one would get.
  const whole = b.detail
  if (layout.heads.length > 4) b.detail *= Math.max(0.5, Math.sqrt(2.5 / layout.heads.length))
  for (const head of layout.heads) addHead(b, head)
  b.detail = whole
  for (const rope of layout.ropes) {
    const make = ROPES[rope.kind] ?? ROPES.spike!
    const { open, shape } = rope
    make(b, line, rope.from, rope.to, rope.width, { open, shape, small: false, random: randomFrom(rope.seed) })
  }
}

export const meshOf = (layout: Layout, detail = 1): Mesh => {
  const b = newBuilder(detail)
  addLayout(b, layout)
  return finish(b)
}
