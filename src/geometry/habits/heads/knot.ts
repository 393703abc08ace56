import { addTube } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, at, frameIn, GOLDEN, lerp, TAU } from '../vector.ts'
import { addFloret } from './floret.ts'
import { speck } from './small.ts'

/** A cup of five petals on its tube, with an eye: wax flower (green tube), limonium and statice (papery calyx). */
const cupOfFive: HeadMaker = (b, f, D, { open, shape }) => {
  const waxy = word(shape, 'head', '') === 'wax'
  const tube = waxy ? 'green' : 'petal'
  addTube(b, [at(f, 0, 0, -D * 0.3), at(f, 0, 0, D * 0.02)], D * 0.06, D * lerp(0.22, waxy ? 0.14 : 0.3, open), tube, 5)
  if (open > 0.3) addFloret(b, f, D * 0.5, 5, lerp(1, 0.25, open), 0.95, 'petal', 'petal-second')
  else addFloret(b, f, D * 0.5, 5, 1.5, 1, 'petal')
}

/**
 * A knot of little flowers on threads from one fork: gypsophila, sea lavender, statice, wax flower.
 * shape: head ('wax', 'limonium' or 'speck'), florets (of a knot), floret (its width over the knot's), flat (1: all on
 * one level), needles (fine leaves below), tuft (florets that share a
 * thread), deep (1: they fill the knot, 0: they lie on its dome), combs (bowed twigs with the florets along them).
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
  // Wax flowers look out on all sides, the others up.
  const out = word(shape, 'head', 'speck') === 'wax' ? 2.2 : 1
  const deep = num(shape, 'deep', 0)
  const combs = Math.round(num(shape, 'combs', 0))
  for (let c = 0; c < combs; c++) {
    const [x, y] = [Math.cos((c / combs) * TAU + 0.5), Math.sin((c / combs) * TAU + 0.5)]
    const path = [0, 0.35, 0.7, 1].map((k) =>
      at(f, reach * k * x, reach * k * y, k === 0 ? fork[2] : reach * (0.9 * Math.sin(1.9 * k) - 0.8)),
    )
    addTube(b, path, size * 0.09, size * 0.05, 'green', 3)
  }
  let first: [number, number, number] = [0, 0, 0]
  for (let i = 0; i < n; i++) {
    const q = Math.sqrt((i + 0.5) / n)
    const turn = i * GOLDEN + random() * 0.8
    const [x, y] = [q * Math.cos(turn), q * Math.sin(turn)]
    const shell = Math.sqrt(1 - q * q * 0.9) * tall * about(random, 0.35) - 0.35
    const z = deep > 0 ? lerp(shell, lerp(-0.6, 0.75, random()), deep) : shell
    const place: [number, number, number] = [x * reach, y * reach, z * reach]
    if (combs > 0) {
      // Along bowed twigs, all on the upper side, in two close ranks.
      const [c, k] = [(i % combs) / combs, (Math.floor(i / combs) + 0.5) / Math.ceil(n / combs)]
      const azimuth = c * TAU + 0.5
      const across = (Math.floor(i / combs) % 2 ? 0.5 : -0.5) * size
      const r = reach * lerp(0.12, 1, k)
      place[0] = r * Math.cos(azimuth) - across * Math.sin(azimuth)
      place[1] = r * Math.sin(azimuth) + across * Math.cos(azimuth)
      place[2] = reach * (0.9 * Math.sin(1.9 * k) - 0.75)
    }
    if (combs === 0 && i % group > 0) {
      // The others of a tuft stand about the first.
      const azimuth = (i % group) * 2.4 + turn
      const near = size * 0.62
      place[0] = first[0] + near * Math.cos(azimuth)
      place[1] = first[1] + near * Math.sin(azimuth)
      place[2] = first[2] + size * (random() - 0.6) * 0.5
    } else first = place
    const thread = size * 0.024
    // A third of the threads bow a little, so that no fan of straight lines shows.
    const path = [at(f, ...fork), at(f, ...place)]
    if (i % 3 === 0) path.splice(1, 0, at(f, place[0] * 0.35, place[1] * 0.35, fork[2] + (place[2] - fork[2]) * 0.6))
    if (combs === 0 && i % group === 0) addTube(b, path, thread * 1.3, thread, 'green', 3)
    const g = frameIn(f, place, [out * x + random() * 0.5 - 0.25, out * y + random() * 0.5 - 0.25, 0.75], random() * 6)
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
