import type { Arrangement, Form, Stem } from '../../../src/arrangement/index.ts'
import { bandOf, type ReadingId } from '../../../src/readings/index.ts'
import { bowl, mound, stem } from './made.ts'

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

/**
 * A tuft in the middle and one that goes outward, with twigs at the sides to hold the reach. From opposite sides it lies as far
 * off, once left and once right, and the right is named; so to the left it is a dark bloom that a pale one hides from behind.
 */
const lopsided = (t: number): Stem[] => {
  const far = 250 * Math.abs(2 * t - 1)
  const middle = [
    stem('c', [0, 0, 110], { head: 60 }),
    ...[-280, 280].flatMap((at) => [
      stem(`w${at}`, [0, at, 110], { head: 14 }),
      stem(`v${at}`, [at, 0, 110], { head: 14 }),
    ]),
  ]
  return t > 0.5
    ? [...middle, stem('o', [0, far, 110], { head: 90 })]
    : [
        ...middle,
        stem('dark', [-far, -50, 110], { head: 90, colour: '#2a1018' }),
        stem('pale', [-far, 50, 110], { head: 94, colour: '#f6efe6' }),
      ]
}

/** A ball that grows from nothing between the eyes of middling guests. */
const screen = (t: number): Stem[] => [stem('b', [0, 0, 360], { head: 1 + 280 * t * t })]

const some = (n: number, of: (i: number) => Stem): Stem[] =>
  Array.from({ length: n }, (_, i) => ({ ...of(i), id: `s${i}` }))

export type Family = [ReadingId, string, (t: number, form: Form) => Partial<Arrangement>]
/** Small designs that go from one end of a value to the other, `t` from 0 to 1. */
export const FAMILIES: Family[] = [
  ['proportion', 'heightRatio', (t) => ({ stems: stretched(1, 0.1 + 4.5 * t) })],
  [
    'proportion',
    'spreadRatio',
    (t) => ({ stems: stretched(0.02 + 2.8 * t, 1.3).map((s) => ({ ...s, head: 20 + 40 * t })) }),
  ],
  ['proportion', 'topOverTable_mm', (t) => ({ stems: stretched(1, 0.2 + 3.4 * t) })],
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
          return stem(`r${i}`, [110 * Math.cos(a), 0, 180 + 110 * Math.sin(a)], { head: 200 - 180 * t })
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
    (t) => ({
      // Three stems: fewer are no design to be balanced.
      stems: [0, 10]
        .map((x) => stem(`t${x}`, [x, 0, 900], { head: 12 }))
        .concat(stem('m', [0, 0, 800 * t], { head: 140 })),
    }),
  ],
  [
    'stability',
    'tippingAngle_deg',
    (t) => ({ stems: dome, vessel: bowl({ width: 40 + 260 * t, depth: 40 + 260 * t, height: 260, waterFill: 0.3 }) }),
  ],
  ['stability', 'spillAngle_deg', (t) => ({ stems: dome, vessel: bowl({ waterFill: 0.5 + 0.49 * t }) })],
  [
    'mechanics',
    'crowding',
    (t) => ({
      stems: some(7, () => stem('', [0, 0, 150])),
      vessel: bowl({ width: 90 - 70 * t, depth: 90 - 70 * t, mechanics: 'foam' }),
    }),
  ],
  [
    'mechanics',
    'heldShare',
    // Those that miss the pins are held by nothing.
    (t) => ({
      stems: some(20, (i) => stem('', [0, 0, 150], { mouth: [i < 20 * t ? 58 : 0, 0] })),
      vessel: bowl({ mechanics: 'pin-holder' }),
    }),
  ],
  [
    'mechanics',
    'dryShare',
    // Those that lean far end at the wall, over the low water.
    (t) => ({
      stems: some(20, (i) => stem('', i < 20 * t ? [160, 0, 90] : [0, 0, 150])),
      vessel: bowl({ waterFill: 0.2 }),
    }),
  ],
  [
    'mechanics',
    'underWaterShare',
    (t) => ({ stems: some(20, (i) => stem('', [0, 0, i < 20 * t ? -50 : 150], { head: 30 })) }),
  ],
  [
    'mechanics',
    'throughTableShare',
    // All of them stand; of some the heads hang beside the vessel, through the table or over it.
    (t) => ({ stems: some(20, (i) => stem('', [150, 0, i < 20 * t ? -90 : 0], { head: 40, mouth: [55, 0] })) }),
  ],
  ['sight-line', 'blockedFraction', (t) => ({ stems: screen(t) })],
  ['sight-line', 'blockedWorst', (t) => ({ stems: screen(t) })],
]
