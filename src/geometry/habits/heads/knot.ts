import { addTube } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, at, frameIn, GOLDEN, lerp } from '../vector.ts'
import { addFloret } from './floret.ts'
import { speck } from './small.ts'

/** A cup of five petals on a green tube, with its eye: limonium, statice, wax flower seen among many. */
const cupOfFive: HeadMaker = (b, f, D, { open }) => {
  addTube(b, [at(f, 0, 0, -D * 0.3), at(f, 0, 0, D * 0.02)], D * 0.05, D * lerp(0.2, 0.14, open), 'green', 5)
  if (open > 0.3) addFloret(b, f, D * 0.5, 5, lerp(1, 0.25, open), 0.95, 'petal', 'petal-second')
  else addFloret(b, f, D * 0.5, 5, 1.5, 1, 'petal')
}

/**
 * A knot of little flowers on threads from one fork: gypsophila, sea lavender, statice, wax flower.
 * shape: head ('wax', 'limonium' or 'speck'), florets (of a knot), floret (its width over the knot's), flat (1: all on
 * one level), needles (fine leaves below), tuft (florets that share a
 * thread).
 */
export const knot: HeadMaker = (b, f, D, head) => {
  const { open, shape, random, small } = head
  const n = Math.round(num(shape, 'florets', 9))
  const size = D * num(shape, 'floret', 0.24)
  const make = word(shape, 'head', 'speck') === 'speck' ? speck : cupOfFive
  const reach = (D - size) / 2
  const tall = lerp(1, 0.4, num(shape, 'flat', 0))
  const fork: [number, number, number] = [0, 0, -reach * 0.85]
  const group = Math.round(num(shape, 'tuft', 1))
  let first: [number, number, number] = [0, 0, 0]
  for (let i = 0; i < n; i++) {
    const q = Math.sqrt((i + 0.5) / n)
    const turn = i * GOLDEN + random() * 0.8
    const [x, y] = [q * Math.cos(turn), q * Math.sin(turn)]
    const z = Math.sqrt(1 - q * q * 0.9) * tall * about(random, 0.35) - 0.35
    const place: [number, number, number] = [x * reach, y * reach, z * reach]
    if (i % group > 0) {
      // The others of a tuft stand about the first.
      const azimuth = (i % group) * 2.4 + turn
      const near = size * 0.62
      place[0] = first[0] + near * Math.cos(azimuth)
      place[1] = first[1] + near * Math.sin(azimuth)
      place[2] = first[2] + size * (random() - 0.6) * 0.5
    } else first = place
    const thread = size * 0.03
    // A third of the threads bow a little, so that no fan of straight lines shows.
    const path = [at(f, ...fork), at(f, ...place)]
    if (i % 3 === 0) path.splice(1, 0, at(f, place[0] * 0.35, place[1] * 0.35, fork[2] + (place[2] - fork[2]) * 0.6))
    if (i % group === 0) addTube(b, path, thread * 1.3, thread, 'green', 3)
    const g = frameIn(f, place, [x + random() * 0.5 - 0.25, y + random() * 0.5 - 0.25, 0.75], random() * 6)
    // About a sixth of the florets are still in bud.
    const bud = random() < 0.17
    make(b, g, size * about(random, 0.12) * (bud ? 0.55 : 1), {
      ...head,
      open: bud ? 0.1 : open,
      small: small && i % 3 > 0,
    })
  }
  const needles = Math.round(num(shape, 'needles', 0))
  for (let i = 0; i < needles; i++) {
    addPetal(
      b,
      f,
      {
        turn: i * GOLDEN + random(),
        up: fork[2] * lerp(1.1, 0.3, i / needles),
        length: D * 0.5 * about(random, 0.15),
        width: D * 0.035,
        base: 34,
        tip: 58,
        outline: 'lance',
        nu: 3,
        nv: 2,
      },
      'green',
    )
  }
}
