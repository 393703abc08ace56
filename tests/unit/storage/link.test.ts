import { deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Arrangement } from '../../../src/arrangement/index.ts'
import { crc32, type Parcel, readShow, SHOW, showFragment } from '../../../src/storage/index.ts'
import { seal, unseal } from '../../../src/storage/sealed.ts'
import { promise } from '../../promise.ts'
import { arrangements, bowl, known } from '../arrangement/helpers.ts'

const parcelOf = (design: Arrangement, more: Partial<Parcel> = {}): Parcel => ({
  design,
  offers: [design.palette],
  units: 'cm',
  prices: null,
  note: '',
  ...more,
})
const linkOf = async (parcel: Parcel): Promise<string> => {
  const made = await showFragment(parcel)
  if (!made.ok) throw new Error(made.message)
  return made.value
}
const opened = async (link: string): Promise<Parcel> => {
  const read = await readShow(link, known)
  if (!read.ok) throw new Error(read.message)
  expect(read.value.problems).toEqual([])
  return read.value.parcel
}
const sealed = async (text: string): Promise<string> => {
  const made = await seal(text)
  if (!made.ok) throw new Error(made.message)
  return made.value
}
/** A code with a right sum over any bytes, as someone else might make it. */
const forged = (bytes: Uint8Array): string => {
  const letters = Buffer.from(bytes).toString('base64url')
  return `2.${crc32(bytes).toString(16).padStart(8, '0')}.${letters.length}.${letters}`
}

describe('a link that holds a design', () => {
  it('brings the design, the palettes on offer and the units to the partner', async () => {
    const offers = [
      { name: 'Rose and sage', slots: [{ colour: '#c9717b', part: 'focal' as const, name: 'old rose' }] },
      { name: 'Straw', slots: [{ colour: '#e8d9a0', part: 'focal' as const }] },
    ]
    const got = await opened(await linkOf(parcelOf(bowl(), { offers, units: 'in' })))
    expect(got.offers).toEqual(offers)
    expect(got.units).toBe('in')
    expect(got.design.stems.map((s) => s.id)).toEqual(['s1', 's2', 's3'])
    expect(got.design.setting.date).toBe('2027-06-12T15:00')
  })
  it('is a fragment of letters that every message lets through', async () => {
    expect(await linkOf(parcelOf(bowl()))).toMatch(/^#show=2\.[0-9a-f]{8}\.\d+\.[\w-]+$/)
  })
  it('takes no prices and no notes along that were not ticked, nor remarks that stand in the file', async () => {
    const text = await unseal((await linkOf(parcelOf(bowl()))).slice(SHOW.length))
    expect(text.ok && text.value).toContain('"stems"')
    expect(text.ok && text.value).not.toMatch(/prices|note|market|dusty|tied|kept as it is/)
  })
  it('takes the prices of the plants in it along when ticked, and no others', async () => {
    const prices = { currency: 'GBP', perBunch: { 'rose-garden': 1450, statice: 500 } }
    const got = await opened(await linkOf(parcelOf(bowl(), { prices, note: 'Which one?' })))
    expect(got.prices).toEqual({ currency: 'GBP', perBunch: { 'rose-garden': 1450 } })
    expect(got.note).toBe('Which one?')
  })
  it('takes sizes of one’s own along with their prices, of the plants in it alone', async () => {
    const packs = {
      'rose-garden': [
        { stems: 25, minor: 2000 },
        { stems: 10, minor: 900 },
      ],
      statice: [{ stems: 10, minor: 500 }],
    }
    const prices = { currency: 'GBP', perBunch: {}, packs }
    const got = await opened(await linkOf(parcelOf(bowl(), { prices })))
    expect(got.prices).toEqual({ currency: 'GBP', perBunch: {}, packs: { 'rose-garden': packs['rose-garden'] } })
  })
  it('is read with a full stop, a bracket or a quote behind it', async () => {
    const link = await linkOf(parcelOf(bowl()))
    for (const end of ['.', ').', '”', '>', '\n']) expect((await readShow(link + end, known)).ok, end).toBe(true)
  })
  it('of a newer version is refused with the reason', async () => {
    const code = await sealed('{}')
    expect(await unseal(`3${code.slice(1)}`)).toEqual({ ok: false, message: 'It was made by a newer Pedicel.' })
  })
  it('with a plant that is not known opens without it, and says so', async () => {
    const design = bowl()
    const stems = design.stems.map((s, i) => (i === 0 ? { ...s, plant: 'moon-flower' } : s))
    const read = await readShow(await linkOf(parcelOf({ ...design, stems })), known)
    expect(read.ok && read.value.parcel.design.stems.length).toBe(2)
    expect(read.ok && read.value.problems[0]?.path).toBe('stems[0].plant')
  })
  it('that holds anything but a design is refused in words', async () => {
    for (const text of ['', 'null', '[]', '{}', '{"design": 3}', 'not JSON at all']) {
      const read = await readShow(SHOW + (await sealed(text)), known)
      expect(read.ok, text).toBe(false)
      expect(read.ok || read.message).toMatch(/^(There is no design|The design in it can’t be read)/)
    }
    expect((await readShow('#other=1', known)).ok).toBe(false)
  })
  it('that would unpack to more than 2 MB is stopped while it grows', async () => {
    const bomb = deflateRawSync(Buffer.alloc(60_000_000, 32))
    expect(bomb.length).toBeLessThan(100_000)
    expect(await unseal(forged(bomb))).toEqual({ ok: false, message: 'It holds more than the 2 MB that are let in.' })
  })
  it('with a right sum over what is not packed, or no UTF-8, is refused', async () => {
    for (const bytes of [Buffer.from([255, 1, 2, 3]), deflateRawSync(Buffer.from([0xc3, 0x28]))]) {
      const read = await unseal(forged(bytes))
      expect(read).toEqual({ ok: false, message: 'What it holds can’t be unpacked.' })
    }
  })
})

describe('in a browser that is too old', () => {
  afterEach(() => vi.unstubAllGlobals())
  it.each([
    ['has no such streams', undefined],
    [
      'has streams that don’t know this way of packing, as Chrome 80 to 102',
      class {
        constructor() {
          throw new TypeError('Unsupported compression format')
        }
      },
    ],
  ])('that %s, it says which one can', async (_, stream) => {
    const link = await linkOf(parcelOf(bowl()))
    vi.stubGlobal('CompressionStream', stream)
    vi.stubGlobal('DecompressionStream', stream)
    expect(await showFragment(parcelOf(bowl()))).toMatchObject({ ok: false, message: /too old.*Safari from 16\.4/ })
    expect(await readShow(link, known)).toMatchObject({ ok: false, message: /too old.*Safari from 16\.4/ })
  })
})

describe('links at random', () => {
  it('what goes in comes out', async () => {
    await fc.assert(
      fc.asyncProperty(arrangements, fc.string({ unit: 'binary', maxLength: 250 }), async (design, note) => {
        const got = await opened(await linkOf(parcelOf(design, { note })))
        expect(got.design).toEqual(design)
        expect(got.note).toBe(note)
      }),
      { numRuns: 60 },
    )
  })
  it('cut, flipped, stripped or doubled, a link is refused and nothing else is opened', async () => {
    const link = (await linkOf(parcelOf(bowl()))).slice(SHOW.length)
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.']
    const at = fc.nat(link.length - 1)
    const broken = fc.oneof(
      at.map((n) => link.slice(0, n)),
      at.filter((n) => n > 0).map((n) => link.slice(n)),
      at.map((n) => link.slice(0, n) + link.slice(n + 1)),
      fc.tuple(at, fc.constantFrom(...letters)).map(([n, c]) => link.slice(0, n) + c + link.slice(n + 1)),
      fc.tuple(at, fc.nat(40)).map(([n, m]) => link.slice(0, n) + link.slice(n - Math.min(n, m))),
    )
    let refused = 0
    await fc.assert(
      fc.asyncProperty(broken, async (code) => {
        if (code === link) return
        const read = await unseal(code)
        expect(read.ok, code).toBe(false)
        expect(read.ok || read.message.length).toBeGreaterThan(10)
        refused += 1
      }),
      { numRuns: 600 },
    )
    promise(`a broken link is refused in words: ${refused} cut, flipped, stripped or doubled, 0 opened`)
  })
  it('every single letter counts: changed into any other one it is refused, and a cut says where it ends', async () => {
    const code = await sealed('{"a": 1}')
    const count = code.split('.')[3]!.length
    for (let i = 0; i < code.length; i++)
      for (const c of 'ABCXYZabcxyz0189-_.% é') {
        if (c === code[i]) continue
        const read = await unseal(code.slice(0, i) + c + code.slice(i + 1))
        expect(read.ok, `letter ${i} as ${c}`).toBe(false)
        expect(read.ok || read.message).toMatch(/^It (is not whole|was made by a newer)/)
      }
    for (let n = 0; n < code.length; n++) {
      const read = await unseal(code.slice(0, n))
      expect(read.ok, `cut at ${n}`).toBe(false)
      const left = n - (code.length - count)
      if (left > 0)
        expect(read.ok || read.message).toBe(
          `It is not whole: it ends after ${left} of its ${count} letters. The end was cut off on the way.`,
        )
    }
  })
  it('says what became of it: a foreign letter, one that was changed, some too many', async () => {
    const code = await sealed('{"a": 1}')
    const start = code.lastIndexOf('.') + 1
    const message = async (broken: string): Promise<string> => {
      const read = await unseal(broken)
      return read.ok ? 'opened' : read.message
    }
    expect(await message(`${code.slice(0, start + 2)}%${code.slice(start + 3)}`)).toContain('letter 3 of it is “%”')
    const other = code[start] === 'A' ? 'B' : 'A'
    expect(await message(code.slice(0, start) + other + code.slice(start + 1))).toMatch(
      /at least one of its \d+ letters/,
    )
    expect(await message(`${code}abc`)).toContain('3 letters too many')
  })
  it('of the first version, without a count, is read as ever, and broken ones are refused', async () => {
    const packed = deflateRawSync(Buffer.from('{"a": 1}'))
    const old = `1.${crc32(packed).toString(16).padStart(8, '0')}.${packed.toString('base64url')}`
    expect(await unseal(old)).toEqual({ ok: true, value: '{"a": 1}' })
    for (let n = 0; n < old.length; n++) expect((await unseal(old.slice(0, n))).ok, `cut at ${n}`).toBe(false)
    for (let i = 0; i < old.length; i++)
      expect((await unseal(`${old.slice(0, i)}${old[i] === 'A' ? 'B' : 'A'}${old.slice(i + 1)}`)).ok).toBe(false)
  })
})
