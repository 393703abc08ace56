import type { Mesh } from '../types.ts'
import { addDome, addTube, type Builder, finish, newBuilder } from './builder.ts'
import { addHead } from './heads/place.ts'
import { addLeaf } from './leaflets.ts'
import { stretch } from './line.ts'
import { ROPES } from './lines/index.ts'
import type { Layout } from './organs.ts'
import { along, frameOf, randomFrom } from './vector.ts'

/** Fruits of a cluster sit so many of their radii from its middle. Ours. */
const APART = 1.6

/** Lay every organ of a stem. */
export const addLayout = (b: Builder, layout: Layout): void => {
  const { line, stem } = layout
  addTube(b, [...stretch(line, 0, stem.until, 30), ...(stem.neck ?? [])], stem.r0, stem.r1, stem.tissue, 7)
  for (const twig of layout.twigs)
    addTube(b, twig.points, twig.r0, twig.r1, twig.tissue, twig.tissue === 'leaf' ? 11 : 6)
  for (const leaf of layout.leaves) addLeaf(b, leaf)
  for (const { o, r, long, towards } of layout.fruits)
    for (const way of towards) {
      const f = frameOf(towards.length > 1 ? along(o, way, APART * r) : o, way, [1, 0, 0])
      addDome(b, f, [0, 0, 0], [0, 0, 1], r, 'disc', long)
      addDome(b, f, [0, 0, 0], [0, 0, -1], r, 'disc', 0.9)
    }
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
