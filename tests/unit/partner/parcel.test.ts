import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MOST_OFFERS, SHOW, showFragment } from '../../../src/storage/index.ts'
import { unseal } from '../../../src/storage/sealed.ts'
import { pageFile } from '../../../src/ui/share/page-file.ts'
import { parcelOf, type Ticks } from '../../../src/ui/share/parcel-of.ts'
import { bowl } from '../arrangement/helpers.ts'

const book = { currency: 'GBP', perBunch: { 'rose-garden': 1200 } }
const ticks = (more: Partial<Ticks> = {}): Ticks => ({
  offered: [],
  prices: false,
  note: false,
  words: 'secret',
  ...more,
})
const known = [
  { name: 'Rose and sage', about: '', slots: [{ colour: '#C9717B', part: 'focal' as const, name: 'old rose' }] },
  ...'abcdefgh'
    .split('')
    .map((name) => ({ name, about: 'from somewhere', slots: [{ colour: '#112233', part: 'mass' as const }] })),
]

describe('what goes to the partner', () => {
  it('is only what was ticked', () => {
    expect(parcelOf(bowl(), known, ticks(), 'cm', book)).toMatchObject({ prices: null, note: '', units: 'cm' })
    expect(parcelOf(bowl(), known, ticks({ prices: true, note: true }), 'in', book)).toMatchObject({
      prices: book,
      note: 'secret',
      units: 'in',
    })
  })
  it('offers the palette on the sheet first, with the words that are known for its colours', () => {
    const { offers } = parcelOf(bowl(), known, ticks({ offered: ['b', 'gone', 'Rose and sage'] }), 'cm', book)
    expect(offers.map((o) => o.name)).toEqual(['Rose and sage', 'b'])
    expect(offers[0]!.slots.map((s) => s.name)).toEqual(['old rose', undefined])
  })
  it('offers six at most', () => {
    const { offers } = parcelOf(bowl(), known, ticks({ offered: 'abcdefgh'.split('') }), 'cm', book)
    expect(offers.length).toBe(MOST_OFFERS)
  })
})

const empty =
  '<title>For the table</title><meta name="pedicel-home" content=""><meta name="pedicel-show" content=""><p>$&</p>'

describe('the page as one file', () => {
  it('holds the design, its title and the way to the tool, and nothing that could run', () => {
    const html = pageFile(empty, `${SHOW}1.0a.b-_`, '</title><script>"$&"', 'https://example.org/a"b')
    expect(html).toContain('<meta name="pedicel-show" content="1.0a.b-_">')
    expect(html).toContain('<title>&#60;/title&#62;&#60;script&#62;&#34;$&#38;&#34;</title>')
    expect(html).toContain('content="https://example.org/a&#34;b"')
  })
  it('says no way to a tool that nobody else can open', () => {
    for (const home of ['file:///tmp/index.html', 'http://localhost:5173/', 'http://127.0.0.1/', 'blob:x'])
      expect(pageFile(empty, `${SHOW}1`, 'Supper', home)).toContain('<meta name="pedicel-home" content="">')
  })
  it('is not made of anything else than the empty page', () => {
    expect(() => pageFile('<p>Not found</p>', `${SHOW}1`, 'Supper', '')).toThrow(/is not right/)
  })
})

describe('what goes along in link and file', () => {
  const SECRET = { price: 918273, currency: 'XTS', words: 'Zebra at noon' }
  const priced = { currency: SECRET.currency, perBunch: { 'rose-garden': SECRET.price, statice: 564738 } }
  /** The letters themselves and what they hold, of the link and of the page as a file. */
  const sent = async (prices: boolean, note: boolean): Promise<string[]> => {
    const made = await showFragment(parcelOf(bowl(), known, ticks({ prices, note, words: SECRET.words }), 'cm', priced))
    if (!made.ok) throw new Error(made.message)
    const file = pageFile(empty, made.value, 'Supper', 'https://example.org/')
    const inFile = /<meta name="pedicel-show" content="([^"]+)">/.exec(file)![1]!
    const unpacked = await Promise.all([made.value.slice(SHOW.length), inFile].map((code) => unseal(code)))
    return [made.value, file, ...unpacked.map((u) => (u.ok ? u.value : ''))]
  }
  const money = new RegExp(`prices|perBunch|${SECRET.currency}|${SECRET.price}|564738`)
  const words = /"note"|Zebra|noon/
  it.each([
    [false, false],
    [true, false],
    [false, true],
    [true, true],
  ])('prices only if ticked (%s), a note only if ticked (%s)', async (prices, note) => {
    const [link, file, ...unpacked] = await sent(prices, note)
    for (const letters of [link!, file!]) expect(letters).not.toMatch(/918273|564738|Zebra/)
    for (const text of unpacked) {
      expect(text).toContain('"stems"')
      expect(money.test(text)).toBe(prices)
      expect(words.test(text)).toBe(note)
      expect(text, 'of plants that are not in it').not.toContain('564738')
    }
  })
  it('not a word of any note, nor any price, where they are not ticked', async () => {
    const marked = fc.string({ minLength: 4, maxLength: 40 }).map((w) => `¤${w}`)
    await fc.assert(
      fc.asyncProperty(marked, fc.integer({ min: 7_000_000, max: 8_000_000 }), async (text, price) => {
        const book = { currency: 'XTS', perBunch: { 'rose-garden': price } }
        const made = await showFragment(parcelOf(bowl(), known, ticks({ words: text }), 'cm', book))
        const read = await unseal(made.ok ? made.value.slice(SHOW.length) : '')
        expect(read.ok && read.value).toContain('"stems"')
        expect(read.ok && read.value).not.toMatch(new RegExp(`¤|XTS|${price}`))
      }),
      { numRuns: 50 },
    )
  })
})
