import { describe, expect, it } from 'vitest'
import { MOST_OFFERS, SHOW } from '../../../src/storage/index.ts'
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

describe('the page as one file', () => {
  const empty =
    '<title>For the table</title><meta name="pedicel-home" content=""><meta name="pedicel-show" content=""><p>$&</p>'
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
