import { describe, expect, it } from 'vitest'
import { type Arrangement, FORMS, type Form, type Stem } from '../../../src/arrangement/index.ts'
import { BANDS, bandOf, createEngine, type ReadingId, readAll } from '../../../src/readings/index.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const GREENS: Partial<Stem> = { plant: 'green', role: 'greens', colour: '#55703f' }
const dome = mound(18, (i) => ({ head: 60, ...(i % 3 === 1 ? GREENS : {}) }))
const stretched = (x: number, z: number): Stem[] =>
  dome.map((s) => ({ ...s, tip: [s.tip[0] * x, s.tip[1] * x, s.tip[2] * z] }))
const focal = (over: Partial<Stem>): Stem =>
  stem('f', [0, -95, 110], { role: 'focal', colour: '#7b1734', head: 90, ...over })
const pale = mound(18, (i) => ({ colour: '#f0d3cf', head: 50, ...(i % 3 === 1 ? GREENS : {}) }))
/** Flowers that none of the others is like: each could lead. */
const motley = mound(12, (i) => ({
  colour: ['#e8683f', '#5a6fb5', '#f2b632', '#2f7f86', '#b04a9c', '#8a5a2b'][i % 6]!,
  head: 55,
}))
const mix = (k: number): string => {
  const [from, to] = [
    [0xf1, 0xec, 0xe2],
    [0xd0, 0x18, 0x18],
  ] as const
  return `#${from
    .map((v, i) =>
      Math.round(v + k * (to[i]! - v))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`
}

/** A tuft in the middle and one that goes outward, with twigs at both sides to hold the reach. */
const lopsided = (t: number): Stem[] => [
  stem('c', [0, 0, 110], { head: 60 }),
  stem('o', [0, 250 * t, 110], { head: 90 }),
  stem('w', [0, -280, 110], { head: 14 }),
  stem('v', [0, 280, 110], { head: 14 }),
]

/** A ball that grows from nothing between the eyes of middling guests. */
const screen = (t: number): Stem[] => [stem('b', [0, 0, 360], { head: 1 + 280 * t * t })]

/** Small designs that go from one end of a value to the other, `t` from 0 to 1. */
const FAMILIES: [ReadingId, string, (t: number, form: Form) => Partial<Arrangement>][] = [
  ['proportion', 'heightRatio', (t) => ({ stems: stretched(1, 0.1 + 4.5 * t) })],
  ['proportion', 'spreadRatio', (t) => ({ stems: stretched(0.05 + 2.8 * t, 1.3) })],
  ['proportion', 'vesselShare', (t) => ({ stems: stretched(1, 1.3), vessel: bowl({ height: 12 + 700 * t * t }) })],
  [
    'negative-space',
    'voidFraction',
    (t) => ({
      stems: [
        stem('core', [0, 0, 90], { head: 170 }),
        ...[0, 1, 2, 3, 4, 5].map((i) => {
          const a = (i * Math.PI) / 3
          const far = 60 + 330 * t
          return stem(`t${i}`, [far * Math.cos(a), far * Math.sin(a), 90 + far * 0.6], { head: 24 })
        }),
      ],
    }),
  ],
  [
    'negative-space',
    'holeShare',
    (t, form) => ({
      stems: [
        ...Array.from({ length: 24 }, (_, i) => {
          const a = (i * Math.PI) / 12
          return stem(`r${i}`, [110 * Math.cos(a), 0, 180 + 110 * Math.sin(a)], { head: 200 - 150 * t })
        }),
        stem('g', [0, 0, 30], { ...GREENS, head: 180 }),
        // A form that wants air gets some.
        ...[-1, 1].map((k) =>
          stem(`o${k}`, [k * 270, 0, 330], {
            head: bandOf('negative-space', 'voidFraction', { form })!.band[0] > 0.1 ? 30 : 1,
          }),
        ),
      ],
      vessel: bowl({ mechanics: 'none' }),
    }),
  ],
  [
    'negative-space',
    'mouthShowing',
    (t) => ({
      stems: [
        stem('g', [0, 0, 20], { ...GREENS, head: 170 - 165 * t }),
        stem('a', [0, 0, 160], { head: 90 }),
        stem('b', [60, 0, 150], { head: 70 }),
        stem('c', [-60, 0, 150], { head: 70 }),
      ],
    }),
  ],
  ['focal-prominence', 'focalShare', (t) => ({ stems: [focal({ head: 4 + 90 * t }), ...pale] })],
  [
    'focal-prominence',
    'focalVisible',
    (t) => ({
      stems: [
        focal({}),
        ...pale,
        ...[0, 1, 2, 3, 4, 5].map((i) => {
          const a = Math.PI * (1 + (i + 0.5) / 6)
          return stem(`w${i}`, [75 * Math.cos(a), -95 + 75 * Math.sin(a), 110], { ...GREENS, head: 5 + 110 * t })
        }),
      ],
    }),
  ],
  ['focal-prominence', 'focalRank', (t) => ({ stems: [focal({ head: 10 + 90 * t * t }), ...motley] })],
  ['focal-prominence', 'focalLead', (t) => ({ stems: [focal({ head: 10 + 90 * t * t }), ...motley] })],
  [
    'focal-prominence',
    'vesselPull',
    (t) => ({ stems: [focal({ head: 60 }), ...pale], vessel: bowl({ colour: mix(t) }) }),
  ],
  ['visual-balance', 'offsetWorst', (t) => ({ stems: lopsided(t) })],
  [
    'visual-balance',
    'topHeaviness',
    (t) => ({ stems: [stem('t', [0, 0, 300], { head: 12 }), stem('m', [0, 0, 30 + 270 * t], { head: 90 })] }),
  ],
  ['sight-line', 'blockedFraction', (t) => ({ stems: screen(t) })],
  ['sight-line', 'blockedWorst', (t) => ({ stems: screen(t) })],
]
const STEPS = 24

describe('bands', () => {
  it('every row has a source, rising ends and a fall', () => {
    for (const row of BANDS) {
      expect(row.source.length).toBeGreaterThan(3)
      expect(row.band[1]).toBeGreaterThanOrEqual(row.band[0])
      expect(row.fall).toBeGreaterThan(0)
    }
  })
  it.each(FAMILIES)(
    '%s: a design just outside its band of %s scores less than one just inside, each form',
    (id, key, make) => {
      let held = 0
      for (const form of FORMS) {
        const row = bandOf(id, key, { form })
        if (!row) continue
        const seen = Array.from({ length: STEPS + 1 }, (_, i) => {
          const r = readAll(resolve(design([], { form, ...make(i / STEPS, form) })), { engine, advice: false }).find(
            (x) => x.id === id,
          )!
          return { value: r.values[key] as number, score: r.score! }
        }).filter((x) => x.score !== null)
        const inside = seen.filter((x) => x.value >= row.band[0] && x.value <= row.band[1])
        for (const end of [0, 1] as const) {
          const beyond = (x: { value: number }): number => (end === 0 ? row.band[0] - x.value : x.value - row.band[1])
          const out = seen.filter((x) => beyond(x) > 0.25 * row.fall).sort((a, b) => beyond(a) - beyond(b))[0]
          const near = inside.toSorted((a, b) => beyond(b) - beyond(a))[0]
          if (!out || !near) continue
          held += 1
          expect(out.score, `${form} ${key} ${near.value} → ${out.value}`).toBeLessThan(near.score - 0.5)
        }
      }
      expect(held).toBeGreaterThanOrEqual(5)
    },
  )
})
