import { addBall, addDome, addTube } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { about, at, frameIn, GOLDEN, lerp } from '../vector.ts'
import { addFloret } from './floret.ts'
import { thistle } from './pincushion.ts'

/** Allium: stars on rays from one node; a closed bud packs them. */
const stars: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const n = Math.round(num(shape, 'florets', small ? 50 : 110))
  const size = D * num(shape, 'floret', 0.13) * lerp(0.8, 1, open)
  const r = D / 2 - size * 0.2
  addBall(b, f, D * 0.07, D * 0.07, 0, 'green', 4, 6)
  for (let i = 0; i < n; i++) {
    const z = 1 - (2 * (i + 0.5)) / n
    const q = Math.sqrt(1 - z * z)
    const turn = i * GOLDEN
    const long = r * about(random, 0.06)
    const place: [number, number, number] = [q * Math.cos(turn) * long, q * Math.sin(turn) * long, z * long]
    addTube(b, [f.o, at(f, ...place)], D * 0.005, D * 0.004, 'green', 3)
    const g = frameIn(f, place, place, random() * 6)
    if (i / n < 0.25 + open) addFloret(b, g, size, 6, lerp(1.2, 0.25, open), 0.8, 'petal', 'green')
    else addDome(b, f, place, place, size * 0.62, 'petal-second', 1.8)
  }
}

/** Florets over a ball by the golden angle: craspedia; allium with kind 'stars'. shape: kind, florets, floret. */
export const globe: HeadMaker = (b, f, D, head) => {
  if (word(head.shape, 'kind', '') === 'stars') return stars(b, f, D, head)
  if (word(head.shape, 'kind', '') === 'thistle') return thistle(b, f, D, head)
  const { open, shape, random, small } = head
  const n = Math.round(num(shape, 'florets', small ? 90 : 230))
  const spiky = num(shape, 'spiky', 0)
  const r = D / 2
  addBall(b, f, r * 0.92, r * 0.92, 0, 'petal', 9, 14)
  for (let i = 0; i < n; i++) {
    const z = 1 - (2 * (i + 0.5)) / n
    const q = Math.sqrt(1 - z * z)
    const turn = i * GOLDEN
    const place: [number, number, number] = [q * Math.cos(turn) * r * 0.9, q * Math.sin(turn) * r * 0.9, z * r * 0.9]
    const size = (r * 1.75 * about(random, 0.12)) / Math.sqrt(n)
    // Florets open from the top down, the lower ones last.
    const late = (1 - z) / 2 > 0.25 + open
    addDome(
      b,
      f,
      place,
      place,
      size * (late ? 0.8 : 1),
      random() > 0.75 || late ? 'petal-second' : 'petal',
      0.95 + 1.5 * spiky,
    )
  }
}
