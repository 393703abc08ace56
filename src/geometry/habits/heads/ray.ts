import { addDome } from '../builder.ts'
import { type HeadMaker, num, word } from '../organs.ts'
import { addPetal } from '../petal.ts'
import { about, frameIn, GOLDEN, lerp, TAU } from '../vector.ts'
import { addFloret } from './floret.ts'
import { addCap, addTurned } from './parts.ts'

/**
 * Rays round a domed disc of florets.
 * shape: rays (a row), rows, disc (its diameter over the head's), width (of a ray over the head's), dome, outline,
 * layer (height from row to row over the head's width), trans (length of the short florets between rays and disc, over
 * the head's width), crown (1: a ring of yellow stars stands on the disc, as in a zinnia), collar (leafy bracts below:
 * how many), collarDrop (how far below, over the width; an anemone bears them on its stem), collarWidth (over their length).
 */
export const ray: HeadMaker = (b, f, D, { open, shape, random, small }) => {
  const n = Math.round(num(shape, 'rays', 14))
  const rows = Math.max(1, Math.round(num(shape, 'rows', 2)))
  // The disc widens as the rays open; in bud they stand close over it.
  const disc = ((D * num(shape, 'disc', 0.3)) / 2) * lerp(0.62, 1, Math.sqrt(open))
  const width = D * num(shape, 'width', Math.min(0.24, 1.9 / n))
  const tall = disc * num(shape, 'dome', 0.62)
  const layer = num(shape, 'layer', 0.02)
  const outline = word(shape, 'outline', 'ray')
  for (let row = rows - 1; row >= 0; row--) {
    for (let i = 0; i < n; i++) {
      addPetal(
        b,
        f,
        {
          turn: ((i + row * 0.37 + (random() - 0.5) * 0.22) / n) * TAU,
          out: disc * lerp(1.08, 0.82, Math.sqrt(open)),
          up: D * ((rows > 1 ? 0.03 : 0) - row * layer),
          length:
            (D / 2 - disc * 0.82) * lerp(0.5, 1, Math.sqrt(open)) * about(random, 0.05) * (1 - 0.09 * (rows - 1 - row)),
          width: width * about(random, 0.08),
          base: lerp(4, 55, Math.sqrt(open)) + row * 9,
          tip: lerp(-24, 92, open) + row * 13 + (random() - 0.5) * 12,
          late: 0.8,
          // Few broad petals close to a cup; narrow rays are rounded away from the axis.
          hollow: width > D * 0.3 ? D * lerp(0.2, 0.9, open) : -D * 0.16,
          ruffle: D * 0.008,
          phase: random() * 6,
          sweep: (random() - 0.5) * D * 0.05,
          notch: num(shape, 'notch', 0),
          outline: outline === 'point' || outline === 'round' || outline === 'strap' ? outline : 'ray',
          nu: small ? 5 : 6,
          nv: n > 20 ? 3 : 4,
        },
        'petal',
      )
    }
  }
  addCap(b, f, disc, tall, 0, 'disc', 16)
  const trans = D * num(shape, 'trans', 0)
  for (let i = 0; trans > 0 && i < 2 * n; i++) {
    const inner = i % 2
    addPetal(
      b,
      f,
      {
        turn: ((i + random() * 0.3) / (2 * n)) * TAU,
        out: disc * lerp(0.95, inner ? 0.78 : 0.92, open),
        up: D * 0.02,
        length: trans * (inner ? 0.72 : 1) * about(random, 0.1),
        width: trans * 0.3,
        base: lerp(2, 30, open),
        tip: lerp(-30, inner ? 45 : 80, open),
        hollow: trans * 0.3,
        outline: 'strap',
        nu: 3,
        nv: 2,
      },
      'petal-second',
    )
  }
  const crown = num(shape, 'crown', 0) > 0 && open > 0.2
  const florets = Math.round(num(shape, 'florets', small ? 30 : 110))
  for (let i = 0; i < florets; i++) {
    const q = Math.sqrt((i + 0.5) / florets)
    const a = q * 1.54
    const turn = i * GOLDEN
    const rim = q > 0.72 && open > 0.3 && !crown
    const r = disc * Math.sin(a)
    const place: [number, number, number] = [
      r * Math.cos(turn),
      r * Math.sin(turn),
      tall * Math.cos(a) + D * 0.008 * (rim ? 1.5 : 1),
    ]
    if (crown && q > 0.42 && i % 3 === 0) {
      const g = frameIn(f, [place[0], place[1], place[2] + D * 0.03], [place[0] * 0.6, place[1] * 0.6, D * 0.1], turn)
      addFloret(b, g, D * 0.034, 5, 0.3, 0.7, 'pollen')
    }
    const size = disc * (0.93 / Math.sqrt(florets)) * (rim ? 1.15 : 0.9)
    addDome(b, f, place, [place[0], place[1], disc * 0.7], size, rim ? 'pollen' : 'disc')
  }
  const bracts = Math.round(num(shape, 'collar', 0))
  const drop = num(shape, 'collarDrop', 0.04)
  for (let i = 0; i < bracts; i++) {
    const long = D * (drop > 0.1 ? 0.3 : 0.4) * about(random, 0.15)
    addPetal(
      b,
      f,
      {
        turn: ((i + 0.4 * random()) / bracts) * TAU,
        out: drop > 0.1 ? D * 0.02 : disc * 0.7,
        up: -D * drop,
        length: long,
        width: long * num(shape, 'collarWidth', 0.28),
        base: lerp(20, 60, open),
        tip: lerp(6, 112, open),
        outline: 'lance',
        fold: 0.2,
        nu: 5,
        nv: 2,
      },
      'green',
    )
  }
  // The involucre below: a shallow bowl with bracts.
  const deep = D * Math.max(0.1, (rows - 0.5) * layer)
  addTurned(
    b,
    f,
    (u) => lerp(D * 0.03, disc * 1.02, Math.sqrt(u)),
    (u) => -deep * (1 - u),
    'green',
    5,
    14,
  )
  for (let i = 0; i < (small ? 8 : 14); i++) {
    addPetal(
      b,
      f,
      {
        turn: (i * TAU) / (small ? 8 : 14),
        out: disc * 0.75,
        up: -D * 0.03,
        length: D * 0.08,
        width: D * 0.05,
        base: lerp(5, 50, open),
        tip: lerp(0, 75, open),
        outline: 'lance',
        nu: 4,
        nv: 2,
      },
      'green',
    )
  }
}
