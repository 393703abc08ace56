import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LIMITS, type ReadResult, readArrangement, writeArrangement } from '../../../src/arrangement/index.ts'
import { promise } from '../../promise.ts'
import { arrangements, bowlRaw, bowlText, fixture, known } from './helpers.ts'

/** What comes of reading is always usable: a good document reads again without a problem. */
const sound = (result: ReadResult): void => {
  if (result.kind !== 'ok') expect(result.problems.length).toBeGreaterThan(0)
  if (result.kind === 'refused') return
  const document = result.kind === 'ok' ? result.document : result.good
  const again = readArrangement(writeArrangement(document), known)
  expect(again).toEqual({ kind: 'ok', document })
}

const places = (value: unknown, path: (string | number)[] = []): (string | number)[][] =>
  typeof value !== 'object' || value === null
    ? [path]
    : [path, ...Object.entries(value).flatMap(([k, v]) => places(v, [...path, Array.isArray(value) ? Number(k) : k]))]

/** The data with another value put at a path. */
const put = (raw: unknown, [key, ...rest]: (string | number)[], value: unknown): unknown => {
  if (key === undefined) return value
  if (Array.isArray(raw)) return raw.map((item, i) => (i === key ? put(item, rest, value) : item))
  return { ...(raw as object), [key]: put((raw as Record<string, unknown>)[key], rest, value) }
}

const all = places(bowlRaw())
const junk = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom<unknown>(
    null,
    true,
    '',
    'constructor',
    [],
    {},
    -1,
    0,
    1e308,
    5e-324,
    [[]],
    { slot: 'a' },
    { shape: 'rectangular' },
  ),
)

describe('opening anything at all', () => {
  it('any value at any place is refused or saved, never thrown', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), junk, (path, value) => {
        sound(readArrangement(JSON.stringify(put(bowlRaw(), path, value)) ?? '', known))
      }),
      { numRuns: 500 },
    )
  })

  it('stems that are right survive any value put between them', () => {
    fc.assert(
      fc.property(fc.nat(3), junk, (at, value) => {
        const raw = bowlRaw()
        raw.stems.splice(at, 0, value)
        const result = readArrangement(JSON.stringify(raw), known)
        expect(result.kind === 'partly' && result.good.stems.map((s) => s.id)).toEqual(['s1', 's2', 's3'])
      }),
    )
  })

  it('several wrong things at once are no worse', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom(...all), junk), { minLength: 2, maxLength: 8 }), (changes) => {
        // Deepest first, so that each place is still there.
        const raw = changes
          .sort((a, b) => b[0].length - a[0].length)
          .reduce((now: unknown, [path, value]) => put(now, path, value), bowlRaw())
        sound(readArrangement(JSON.stringify(raw), known))
      }),
      { numRuns: 200 },
    )
  })

  it('flipped bytes, cut ends and repeated pieces never throw', () => {
    const bytes = new TextEncoder().encode(bowlText())
    const decode = (b: Uint8Array): string => new TextDecoder().decode(b)
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        fc.nat(bytes.length),
        fc.boolean(),
        (flips, end, cut) => {
          const changed = bytes.slice(0, cut ? end : bytes.length)
          for (const [at, byte] of flips) if (at < changed.length) changed[at] = byte
          sound(readArrangement(decode(changed), known))
          sound(readArrangement(decode(changed) + decode(bytes.slice(end)), known))
        },
      ),
      { numRuns: 500 },
    )
    promise('R5 opening any bytes never throws out: 1,700 mutants, 0 failures')
  })

  it('a file at every limit is read without running out of anything', () => {
    const many = `{"format":"pedicel-arrangement","version":1,"vessel":{"width":9,"height":9},"x":[${'1e999,'.repeat(300_000)}1]}`
    const result = readArrangement(many, known)
    expect(result.kind).toBe('partly')
    expect(result.kind === 'partly' && result.problems).toHaveLength(LIMITS.problems + 1)
    const keys = `{"format":"pedicel-arrangement","version":1,"vessel":{"width":9,"height":9},${Array.from({ length: 90_000 }, (_, i) => `"k${i}":1`).join()}}`
    expect(readArrangement(keys, known).kind).toBe('ok')
  })
})

describe('writing and reading back', () => {
  it('gives the same document', () => {
    fc.assert(
      fc.property(arrangements, (document) => {
        expect(readArrangement(writeArrangement(document), known)).toEqual({ kind: 'ok', document })
      }),
    )
  })

  it.each(['v1-window-sill-bowl.json', 'v1-least.json', 'v1-oval-supper.json'])(
    'opens %s as it did when it was released',
    (name) => {
      const result = readArrangement(fixture(name), known)
      expect(result).toMatchSnapshot()
      sound(result)
      promise(`R6 every released format opens: ${name}, 0 failures`)
    },
  )

  it('writes the same text whatever the order of keys in memory, and short lists on one line', () => {
    const raw = bowlRaw()
    const shuffled = Object.fromEntries(Object.entries(raw).reverse())
    const texts = [raw, shuffled].map((r) => {
      const result = readArrangement(JSON.stringify(r), known)
      return result.kind === 'ok' ? writeArrangement(result.document) : ''
    })
    expect(texts[0]).toContain('"tip": [35, -60, 95]')
    expect(texts[0]?.split('\n').slice(0, 4).join('')).toContain(
      '"format": "pedicel-arrangement",  "version": 1,  "title"',
    )
    expect(texts[1]).toBe(texts[0])
  })

  it('writes without indenting what would otherwise be too large to read', () => {
    const raw = bowlRaw()
    raw.pile = Array.from({ length: 190_000 }, () => ['ab'])
    const result = readArrangement(JSON.stringify(raw), known)
    if (result.kind !== 'ok') throw new Error(JSON.stringify(result))
    sound(result)
  })
})
