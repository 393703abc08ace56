import { readFileSync } from 'node:fs'
import type { Arrangement, Stem, Vessel } from '../../../src/arrangement/index.ts'
import { VESSELS } from '../../../src/catalogue/index.ts'

const sample = (name: string): Arrangement =>
  JSON.parse(readFileSync(`${import.meta.dirname}/../../../public/samples/${name}.json`, 'utf8'))

type Heads = Pick<Stem, 'plant' | 'role' | 'colour' | 'mouth' | 'tip'>
const heads = (name: string, list: Heads[]): Stem[] =>
  list.map((s, i) => ({ ...s, id: `${name}${i}`, openness: 0.8, bend: 0, piece: 'whole' as const }))
/** n heads of one kind by the golden angle: `at` gives crossing and tip from the angle and the share of the way out. */
const spun = (
  name: string,
  plant: string,
  role: Stem['role'],
  colour: string,
  n: number,
  at: (c: number, s: number, k: number) => Pick<Stem, 'mouth' | 'tip'>,
) =>
  heads(
    name,
    Array.from({ length: n }, (_, i) => {
      const a = i * 2.399963
      return { plant, role, colour, ...at(Math.cos(a), Math.sin(a), Math.sqrt((i + 0.5) / n)) }
    }),
  )
const bowl = (over: Partial<Vessel> = {}): Vessel => ({
  ...sample('window-sill-bowl').vessel,
  width: 140,
  depth: 140,
  height: 84,
  colour: '#f1ece2',
  ...over,
})
/** A vessel of the catalogue. */
const fromShelf = (id: string, over: Partial<Vessel> = {}): Vessel => {
  const { plan, width, depth, height, profile, wall, material, colour, mechanics, waterFill } = VESSELS.find(
    (v) => v.id === id,
  )!
  return {
    plan,
    width,
    depth,
    height,
    wall,
    material,
    colour,
    mechanics,
    waterFill,
    ...(profile && { profile }),
    ...over,
  }
}
const made = (form: Arrangement['form'], vessel: Vessel, stems: Stem[]): Arrangement => ({
  ...sample('window-sill-bowl'),
  title: form,
  form,
  vessel,
  palette: { name: '', slots: [] },
  stems,
})
const tips = (d: Arrangement, to: (tip: Stem['tip']) => Stem['tip']): Arrangement => ({
  ...d,
  stems: d.stems.map((s) => ({ ...s, tip: to(s.tip) })),
})

/** Designs, each bad in its own way. */
export const BAD: [what: string, make: () => Arrangement][] = [
  ['all leans to one side', () => tips(sample('orchard-supper'), ([x, y, z]) => [x + 90, y, z])],
  ['more than twice too tall', () => tips(sample('window-sill-bowl'), ([x, y, z]) => [x, y, 2.4 * z + 60])],
  ['flat and stubby', () => tips(sample('twenty-four-cups'), ([x, y, z]) => [x, y, 12 + 0.3 * z])],
  [
    'a bud vase over-filled',
    () =>
      made(
        'vertical',
        bowl({ width: 70, depth: 70, height: 200, mechanics: 'none', waterFill: 0.3 }),
        spun('r', 'rose', 'mass', '#d9a0a0', 14, (c, s, k) => ({
          mouth: [18 * k * c, 18 * k * s],
          tip: [110 * k * c, 110 * k * s, 130],
        })),
      ),
  ],
  [
    'a ring with a hole in it',
    () =>
      made('round', bowl(), [
        ...heads('f', [{ plant: 'dahlia', role: 'focal', colour: '#7b1734', mouth: [0, -20], tip: [0, -90, 60] }]),
        ...spun('m', 'rose-spray', 'mass', '#f0d3cf', 12, (c, s) => ({
          mouth: [40 * c, 40 * s],
          tip: [130 * c, 130 * s, 90],
        })),
      ]),
  ],
  [
    'the focal flower buried',
    () =>
      made('round', bowl(), [
        ...heads('f', [{ plant: 'peony', role: 'focal', colour: '#c9717b', mouth: [0, 0], tip: [0, 0, 40] }]),
        ...spun('m', 'hydrangea', 'mass', '#e3b9a4', 16, (c, s, k) => ({
          mouth: [45 * k * c, 45 * k * s],
          tip: [110 * k * c, 110 * k * s, 150 - 70 * k * k],
        })),
      ]),
  ],
  [
    'hides the guests',
    () =>
      made('low', bowl({ height: 150 }), [
        ...heads('f', [{ plant: 'sunflower', role: 'focal', colour: '#e8b020', mouth: [0, -10], tip: [0, -60, 260] }]),
        ...spun('m', 'chrys-disbud', 'mass', '#f2eadb', 14, (c, s, k) => ({
          mouth: [40 * k * c, 40 * k * s],
          tip: [150 * k * c, 150 * k * s, 230 - 60 * k],
        })),
      ]),
  ],
  [
    'one-sided and nearly dry',
    () =>
      made(
        'triangle',
        bowl({
          width: 90,
          depth: 90,
          height: 160,
          waterFill: 0.2,
          profile: [
            [0, 1],
            [1, 1],
          ],
        }),
        [
          ...heads('f', [
            { plant: 'lily-oriental', role: 'focal', colour: '#f2b8c6', mouth: [10, 0], tip: [120, -20, 330] },
          ]),
          ...spun('m', 'snapdragon', 'line', '#a03060', 9, (c, s, k) => ({
            mouth: [20 * k * c, 20 * k * s],
            tip: [120 + 80 * k * c, 80 * k * s, 300],
          })),
        ],
      ),
  ],
  [
    'nothing holds the stems',
    () => ({ ...sample('orchard-supper'), vessel: { ...sample('orchard-supper').vessel, mechanics: 'none' } }),
  ],
  [
    'three stray blooms in greens',
    () =>
      made('cascade', bowl({ width: 120, depth: 120, height: 180, mechanics: 'foam' }), [
        ...heads('b', [
          { plant: 'rose-garden', role: 'focal', colour: '#e8c0a4', mouth: [0, 0], tip: [0, 30, 60] },
          { plant: 'rose-garden', role: 'mass', colour: '#e8c0a4', mouth: [10, 0], tip: [200, 0, 20] },
          { plant: 'rose-garden', role: 'mass', colour: '#e8c0a4', mouth: [-10, 0], tip: [-40, 100, 160] },
        ]),
        ...spun('g', 'salal', 'greens', '#5b7a45', 12, (c, s, k) => ({
          mouth: [40 * k * c, 40 * k * s],
          tip: [140 * c, 140 * s, 30 - 60 * k],
        })),
      ]),
  ],
  [
    'a low bowl with gaps',
    () =>
      made('low', fromShelf('low-bowl'), [
        ...heads('f', [
          { plant: 'dahlia', role: 'focal', colour: '#b5324a', mouth: [-20, -15], tip: [-120, -40, 50] },
          { plant: 'dahlia', role: 'focal', colour: '#b5324a', mouth: [25, 10], tip: [130, 60, 45] },
        ]),
        ...spun('m', 'ranunculus', 'mass', '#f0cdbb', 6, (c, s) => ({
          mouth: [30 * c, 30 * s],
          tip: [150 * c, 120 * s, 40],
        })),
        ...heads('g', [
          { plant: 'ruscus-italian', role: 'greens', colour: '#4f6b3f', mouth: [40, 0], tip: [190, 0, 20] },
          { plant: 'ruscus-italian', role: 'greens', colour: '#4f6b3f', mouth: [-40, 0], tip: [-190, 0, 20] },
        ]),
      ]),
  ],
  [
    'a top-heavy goblet',
    () =>
      made('round', fromShelf('goblet', { waterFill: 0.5 }), [
        ...heads('f', [{ plant: 'hydrangea', role: 'focal', colour: '#5a3d6b', mouth: [0, 0], tip: [0, -10, 260] }]),
        ...spun('m', 'hydrangea', 'mass', '#8f6f92', 5, (c, s) => ({
          mouth: [20 * c, 20 * s],
          tip: [120 * c, 120 * s, 210],
        })),
        ...spun('g', 'euc-silver', 'greens', '#8fa394', 4, (c, s) => ({
          mouth: [25 * c, 25 * s],
          tip: [80 * c, 80 * s, 90],
        })),
      ]),
  ],
  [
    'clashing colours on a trough',
    () =>
      made(
        'low',
        fromShelf('trough'),
        Array.from({ length: 15 }, (_, i): Stem => {
          const x = -180 + (360 * i) / 14
          const [plant, colour] = (
            [
              ['gerbera', '#ff5a1f'],
              ['carnation', '#c2188a'],
              ['chrys-disbud', '#b8d334'],
            ] as const
          )[i % 3]!
          const role = i === 6 ? 'focal' : 'mass'
          const tip: Stem['tip'] = [x * 1.15, i % 2 ? 40 : -40, 70 + 25 * (i % 4)]
          return {
            id: `k${i}`,
            plant,
            role,
            colour,
            mouth: [x, i % 2 ? 20 : -20],
            tip,
            openness: 0.8,
            bend: 0,
            piece: 'whole',
          }
        }),
      ),
  ],
  [
    'a crescent that leans out',
    () =>
      made('crescent', fromShelf('footed-bowl'), [
        ...heads('f', [
          { plant: 'rose-garden', role: 'focal', colour: '#d98c7a', mouth: [10, 0], tip: [90, -30, 80] },
          { plant: 'rose-garden', role: 'focal', colour: '#d98c7a', mouth: [20, 0], tip: [150, 0, 60] },
        ]),
        ...heads(
          'l',
          Array.from({ length: 8 }, (_, i) => ({
            plant: i % 2 ? 'delphinium' : 'snapdragon',
            role: 'line' as const,
            colour: i % 2 ? '#5566aa' : '#e7c3c9',
            mouth: [25, -12 + 3 * i] as [number, number],
            tip: [200 + 18 * i, -60 + 15 * i, 260 - 25 * i] as [number, number, number],
          })),
        ),
        ...spun('g', 'salal', 'greens', '#5b7a45', 4, (c, s) => ({
          mouth: [30 + 10 * c, 20 * s],
          tip: [120 + 60 * c, 90 * s, 40],
        })),
      ]),
  ],
  [
    'a mound all of one height',
    () =>
      made('round', fromShelf('small-bowl'), [
        ...heads('f', [{ plant: 'rose-garden', role: 'focal', colour: '#f0d3cf', mouth: [0, 0], tip: [0, 0, 150] }]),
        ...spun('m', 'carnation', 'mass', '#f2dcd6', 18, (c, s, k) => ({
          mouth: [45 * k * c, 45 * k * s],
          tip: [150 * k * c, 150 * k * s, 150],
        })),
      ]),
  ],
  [
    'a tall centrepiece in the sight of the guests',
    () =>
      made('airy', fromShelf('cylinder'), [
        ...heads('f', [
          { plant: 'peony', role: 'focal', colour: '#c9717b', mouth: [-10, -10], tip: [-60, -60, 180] },
          { plant: 'peony', role: 'focal', colour: '#c9717b', mouth: [15, 5], tip: [80, 30, 150] },
          { plant: 'peony', role: 'focal', colour: '#c9717b', mouth: [0, 15], tip: [0, 90, 210] },
        ]),
        ...spun('m', 'lisianthus', 'mass', '#e3b9a4', 9, (c, s, k) => ({
          mouth: [35 * k * c, 35 * k * s],
          tip: [150 * k * c, 150 * k * s, 330 - 120 * k],
        })),
        ...spun('g', 'euc-seeded', 'greens', '#8a9a7b', 6, (c, s) => ({
          mouth: [40 * c, 40 * s],
          tip: [150 * c, 150 * s, 110],
        })),
      ]),
  ],
]
