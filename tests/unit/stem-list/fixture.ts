import type { Arrangement, Stem } from '../../../src/arrangement/index.ts'
import type { Figure, Plant } from '../../../src/catalogue/index.ts'
import type { Resolved } from '../../../src/geometry/index.ts'
import type { PriceBook } from '../../../src/stem-list/index.ts'

const figure = (value: number): Figure => ({ value, range: [value, value], standing: 'ours', source: 'for a test' })

const plant = (id: string, blooms: number, bunch: number | null, head: number): Plant => ({
  id,
  name: id,
  botanical: '',
  formClass: 'mass',
  formClasses: ['mass'],
  role: 'mass',
  habit: 'rosette',
  shape: {},
  headClosed_mm: null,
  headOpen_mm: figure(head),
  headLength_mm: null,
  stem_mm: figure(500),
  stemDiameter_mm: figure(5),
  bloomsPerStem: figure(blooms),
  manyHeaded: blooms > 1,
  bunch: bunch === null ? null : figure(bunch),
  stemMass_g: figure(30),
  colours: [{ name: 'pink', hex: '#e8a0b4' }],
  leafColour: '#4f6b3a',
  care: [],
})

/** One head a stem, ten a bunch; four heads a stem, five a bunch; three heads, bought by the stem. */
export const PLANTS: Record<string, Plant> = {
  rose: plant('rose', 1, 10, 60),
  spray: plant('spray', 4, 5, 40),
  branch: plant('branch', 3, null, 30),
  fern: { ...plant('fern', 1, 10, 40), formClass: 'foliage', colours: [{ name: 'green', hex: '#5a7a45' }] },
}

export const BOOK: PriceBook = { currency: 'EUR', perBunch: { rose: 1250, spray: 899, branch: 275 } }
export const EXAMPLES: PriceBook = { currency: 'EUR', perBunch: { rose: 1000, spray: 700, branch: 200 } }

export const stem = (id: string, plantId: string, over: Partial<Stem> = {}): Stem => ({
  id,
  plant: plantId,
  role: 'mass',
  colour: '#e8a0b4',
  openness: 1,
  mouth: [10, 0],
  tip: [80, 0, 120],
  bend: 0,
  piece: 'whole',
  ...over,
})

export const documentOf = (stems: Stem[], vessel: Partial<Arrangement['vessel']> = {}): Arrangement => ({
  format: 'pedicel-arrangement',
  version: 1,
  title: 'A test',
  form: 'round',
  vessel: {
    plan: 'round',
    width: 140,
    depth: 140,
    height: 84,
    wall: 4,
    material: 'ceramic',
    colour: '#f1ece2',
    mechanics: 'netting',
    waterFill: 0.8,
    ...vessel,
  },
  palette: { name: '', slots: [] },
  stems,
  setting: { copies: 1, light: 'daylight', linen: '#fbfaf7', table: { shape: 'round', diameter: 1524 } },
})

/** Looks up by hand; the cut length is the height of the tip above the mouth and 60 mm under it. */
export const resolvedOf = (document: Arrangement): Resolved => ({
  document,
  vessel: document.vessel,
  stems: document.stems.map((s, index) => ({
    id: s.id,
    index,
    stem: s,
    plant: PLANTS[s.plant] as Plant,
    role: s.role,
    colour: typeof s.colour === 'string' ? s.colour : '#ffffff',
    openness: s.openness,
    head_mm: s.head ?? (PLANTS[s.plant] as Plant).headOpen_mm.value,
    seed: index,
    curve: {
      points: new Float32Array(9),
      mouthIndex: 1,
      above_mm: s.tip[2],
      below_mm: 60,
      cut_mm: s.tip[2] + 60,
      middle: [0, 0, 0],
    },
    axis: [0, 0, 1],
  })),
})

export const listed = (...stems: Stem[]): Resolved => resolvedOf(documentOf(stems))
