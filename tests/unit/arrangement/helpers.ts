import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import {
  type Arrangement,
  type Edit,
  FORMS,
  type Known,
  newArrangement,
  ROLES,
  readArrangement,
  type Stem,
} from '../../../src/arrangement/index.ts'

export const known: Known = { plants: new Set(['rose-garden', 'eucalyptus-silver-dollar', 'statice']) }

export const fixture = (name: string): string =>
  readFileSync(join(import.meta.dirname, '../../fixtures/documents', name), 'utf8')

export const bowlText = (): string => fixture('v1-window-sill-bowl.json')

// biome-ignore lint/suspicious/noExplicitAny: tests put anything anywhere
export const bowlRaw = (): any => JSON.parse(bowlText())

export const read = (raw: unknown) => readArrangement(JSON.stringify(raw), known)

export const bowl = (): Arrangement => {
  const result = readArrangement(bowlText(), known)
  if (result.kind !== 'ok') throw new Error(JSON.stringify(result))
  return result.document
}

/** The problems of a document as lines. */
export const lines = (raw: unknown): string[] => {
  const result = read(raw)
  return result.kind === 'ok' ? [] : result.problems.map((p) => `${p.path}: ${p.message}`)
}

const mm = fc.double({ min: -400, max: 400, noNaN: true }).map((x) => Math.round(x * 10) / 10 + 0)
const hex = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`)
const slot = fc.record({ colour: hex, part: fc.constantFrom(...ROLES) })
export const palettes = fc.record({ name: fc.string({ maxLength: 12 }), slots: fc.array(slot, { maxLength: 6 }) })

export const arrangements = fc
  .record({
    palette: palettes,
    stems: fc.array(
      fc.record({
        plant: fc.constantFrom(...known.plants),
        role: fc.constantFrom(...ROLES),
        openness: fc.double({ min: 0, max: 1, noNaN: true }),
        mouth: fc.tuple(mm, mm),
        tip: fc.tuple(mm, mm, mm),
        bend: fc.double({ min: -1, max: 1, noNaN: true }),
        piece: fc.constantFrom('whole' as const, 'lateral' as const),
        own: hex,
        pick: fc.nat(20),
      }),
      { maxLength: 8 },
    ),
    form: fc.constantFrom(...FORMS),
  })
  .map(
    ({ palette, stems, form }): Arrangement => ({
      ...newArrangement(),
      form,
      palette,
      stems: stems.map(
        ({ own, pick, ...stem }, i): Stem => ({
          ...stem,
          openness: stem.openness + 0,
          bend: stem.bend + 0,
          id: `s${i + 1}`,
          colour: pick < palette.slots.length ? { slot: pick } : own,
        }),
      ),
    }),
  )

/** Numbers that a careless caller might send. */
const wild = fc.oneof(
  mm,
  fc.double(),
  fc.constantFrom(0, -0, 1e308, -1e308, Number.NaN, Number.POSITIVE_INFINITY, 5e-324, 5000),
)
const ids = fc.array(fc.constantFrom('s1', 's2', 's3', 's4', 'gone', '__proto__'), { maxLength: 4 })
const point2 = fc.tuple(wild, wild)
const point3 = fc.tuple(wild, wild, wild)
const colour = fc.oneof(hex, fc.record({ slot: fc.oneof(fc.nat(7), fc.constantFrom(-1, 0.5)) }), fc.constant('red'))
const stem = fc.record({
  id: fc.constantFrom('s1', 's9', '', 'x'.repeat(501)),
  plant: fc.constantFrom(...known.plants),
  role: fc.constantFrom(...ROLES, 'other' as 'mass'),
  colour,
  openness: wild,
  mouth: point2,
  tip: point3,
  bend: wild,
  head: wild,
  piece: fc.constantFrom('whole' as const, 'lateral' as const),
})
const set = fc.record(
  {
    plant: fc.constantFrom(...known.plants, ''),
    role: fc.constantFrom(...ROLES),
    colour,
    openness: wild,
    mouth: point2,
    tip: point3,
    bend: wild,
    head: fc.oneof(wild, fc.constant(null)),
    piece: fc.constantFrom('whole' as const, 'lateral' as const),
  },
  { requiredKeys: [] },
)
const vesselSet = fc.record(
  {
    plan: fc.constantFrom('round' as const, 'oval' as const, 'rectangular' as const, 'hexagonal' as 'oval'),
    width: wild,
    depth: wild,
    height: wild,
    wall: wild,
    waterFill: wild,
    colour: fc.constantFrom('#123456', 'blue'),
    profile: fc.oneof(
      fc.constant(null),
      fc.array(fc.tuple(wild, wild), { maxLength: 4 }),
      fc.constant<[number, number][]>([
        [0, 0.3],
        [1, 1],
      ]),
    ),
  },
  { requiredKeys: [] },
)
const text = fc.oneof(fc.string({ unit: 'binary', maxLength: 600, size: 'max' }), fc.constant('🌹'.repeat(600)))

/** Edits that set something to a value: doing one twice is doing it once. */
export const setters: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ do: fc.constant('set-stems' as const), ids, set }),
  fc.record({ do: fc.constant('remove-stems' as const), ids }),
  fc.record({ do: fc.constant('set-vessel' as const), set: vesselSet }),
  fc.record({ do: fc.constant('set-palette' as const), palette: palettes }),
  fc.record({ do: fc.constant('set-slot' as const), index: fc.constantFrom(0, 1, 2, 3, -1, 0.5, Number.NaN), slot }),
  fc.record({ do: fc.constant('set-title' as const), title: text }),
  fc.record({ do: fc.constant('set-form' as const), form: fc.constantFrom(...FORMS) }),
  fc.record({
    do: fc.constant('set-setting' as const),
    set: fc.record(
      {
        copies: wild,
        date: fc.constantFrom('2027-06-12', '2027-02-30', null),
        linen: fc.constantFrom('#ffffff', 'white'),
        table: fc.oneof(
          fc.record({ shape: fc.constant('round' as const), diameter: wild }),
          fc.record({ shape: fc.constant('rectangular' as const), length: wild, width: wild }),
        ),
      },
      { requiredKeys: [] },
    ),
  }),
)

const movers: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ do: fc.constant('add-stems' as const), stems: fc.array(stem, { maxLength: 3 }) }),
  fc.record({ do: fc.constant('shift-stems' as const), ids, by: point3, whole: fc.boolean() }),
  fc.record({ do: fc.constant('lengthen-stems' as const), ids, factor: wild }),
  fc.record({ do: fc.constant('duplicate-stems' as const), ids, newIds: ids, by: point3 }),
  fc.record({ do: fc.constant('mirror-stems' as const), ids, turn: wild }),
  fc.record({ do: fc.constant('turn-arrangement' as const), degrees: wild }),
)

const one = fc.oneof(setters, movers)
export const edits: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 6, arbitrary: one },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('many' as const),
      label: fc.constant('several'),
      edits: fc.array(one, { maxLength: 4 }),
    }),
  },
)
