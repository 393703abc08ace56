import { readFileSync } from 'node:fs'
import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { newArrangement } from '../../../src/arrangement/index.ts'
import { layoutPicture } from '../../../src/ui/picture/layout.ts'
import { pdfOf } from '../../../src/ui/picture/pdf/document.ts'
import type { PdfFace } from '../../../src/ui/picture/pdf/font.ts'
import { readTrueType } from '../../../src/ui/picture/pdf/truetype.ts'
import type { Placed } from '../../../src/ui/picture/rasters.ts'
import { svgOf } from '../../../src/ui/picture/svg.ts'
import type { Item, Laid, SizeName } from '../../../src/ui/picture/types.ts'
import { design, measure, OPTIONS, stems } from './made.ts'

const file = (name: string): Uint8Array<ArrayBuffer> =>
  new Uint8Array(readFileSync(new URL(`../../../src/ui/picture/faces/${name}.ttf`, import.meta.url)))
const FACES: PdfFace[] = [
  { name: 'C5', face: 'capt', weight: 500, italic: false, type: readTrueType(file('capt-500')) },
  { name: 'C4', face: 'capt', weight: 400, italic: true, type: readTrueType(file('capt-400-italic')) },
  { name: 'L4', face: 'lett', weight: 470, italic: false, type: readTrueType(file('lett-470')) },
  { name: 'L5', face: 'lett', weight: 520, italic: false, type: readTrueType(file('lett-520')) },
  { name: 'L6', face: 'lett', weight: 620, italic: false, type: readTrueType(file('lett-620')) },
]
const supper = design({
  title: 'Äpfel & “windfalls” <3',
  stems: stems(12, 5, 300, 300, 150),
  setting: { ...newArrangement().setting, copies: 14 },
})
const laid = (size: SizeName): Laid => layoutPicture(supper, OPTIONS, { size, composition: 'standing' }, measure)
const SAID = { title: supper.title, words: 'A low bowl with 12 stems & more.' }

/** A piece of one colour for each view and plate, as large as its box. */
const painted = ({ items }: Laid): Map<Item, Placed> =>
  new Map(
    items.flatMap((item): [Item, Placed][] => {
      if (item.kind !== 'view' && item.kind !== 'plate') return []
      const [width, height] = [Math.floor(item.box.w), Math.floor(item.box.h)]
      const rgba = new Uint8ClampedArray(4 * width * height).fill(200)
      return [[item, { x: Math.round(item.box.x), y: Math.round(item.box.y), pixels: { width, height, rgba } }]]
    }),
  )

const pdf = async (size: SizeName): Promise<{ text: string; bytes: Buffer }> => {
  const sheet = laid(size)
  const blob = await pdfOf([{ laid: sheet, painted: painted(sheet) }], FACES, measure, SAID)
  const bytes = Buffer.from(await blob.arrayBuffer())
  return { text: bytes.toString('latin1'), bytes }
}
/** The stream of object `n`, unpacked. */
const streamOf = ({ text, bytes }: { text: string; bytes: Buffer }, n: number): Buffer => {
  const at = text.indexOf(`\n${n} 0 obj`)
  const begins = text.indexOf('stream\n', at) + 7
  const length = Number(/\/Length (\d+) >>\nstream/.exec(text.slice(at))?.[1])
  return inflateSync(bytes.subarray(begins, begins + length))
}
const contentOf = (made: { text: string; bytes: Buffer }): string =>
  streamOf(made, Number(/\/Contents (\d+) 0 R/.exec(made.text)?.[1])).toString('latin1')
const utf16 = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le').replace('\ufeff', '')

describe('the sheet as PDF', () => {
  it('is exactly as large as its paper', async () => {
    // A4 is 210 × 297 mm, Letter 8.5 × 11 in; a point is 1/72 in.
    expect((await pdf('a4')).text).toContain('/MediaBox [0 0 595.276 841.89]')
    expect((await pdf('letter')).text).toContain('/MediaBox [0 0 612 792]')
  })

  it('says its title, the words for those who cannot see it, and its language', async () => {
    const { text } = await pdf('a4')
    const info = /\/Title <([0-9A-Fa-f]+)> \/Subject <([0-9A-Fa-f]+)>/.exec(text)
    expect(utf16(info?.[1] ?? '')).toBe(SAID.title)
    expect(utf16(info?.[2] ?? '')).toBe(SAID.words)
    expect(utf16(/\/S \/Figure [^>]*\/Alt <([0-9A-Fa-f]+)>/.exec(text)?.[1] ?? '')).toBe(SAID.words)
    expect(text).toContain('/Lang (en)')
    expect(text).toContain('/Marked true')
  })

  it('has its words as letters that can be searched, each line where the sheet has it', async () => {
    const made = await pdf('a4')
    const content = contentOf(made)
    const title = laid('a4').items.find((i) => i.kind === 'text')
    expect(title?.kind === 'text' && title.text).toBe(SAID.title)
    const [, name, x, hex] =
      /\/H1 .*?BDC BT \/(\w+) [\d.]+ Tf .*? 1 0 0 -1 ([\d.]+) [\d.]+ Tm \[(.*?)\] TJ/.exec(content) ?? []
    expect(Number(x)).toBeCloseTo(title?.kind === 'text' ? title.box.x : 0, 1)
    // Through the list from glyphs to letters, as a reader's search does.
    const font = new RegExp(`/${name} (\\d+) 0 R`).exec(made.text)?.[1]
    const toUnicode = new RegExp(`\\n${font} 0 obj\\n.*?/ToUnicode (\\d+) 0 R`, 's').exec(made.text)?.[1]
    const map = new Map(
      [
        ...streamOf(made, Number(toUnicode))
          .toString('latin1')
          .matchAll(/<(\w{4})> <(\w+)>/g),
      ].map((m) => [m[1], m[2]]),
    )
    const glyphs = [...(hex ?? '').matchAll(/<(\w+)>/g)].flatMap((m) => m[1]?.match(/\w{4}/g) ?? [])
    expect(utf16(glyphs.map((g) => map.get(g)).join(''))).toBe(SAID.title)
    expect(content.match(/ TJ ET/g)?.length).toBe(laid('a4').items.filter((i) => i.kind === 'text').length)
  })

  it('the room between letters is the one that was measured, kerning and all', async () => {
    const content = contentOf(await pdf('a4'))
    const font = FACES[0]!
    const [, size, hex] = /\/C5 ([\d.]+) Tf .*?\[(.*?)\] TJ/.exec(content) ?? []
    let at = 0
    for (const part of (hex ?? '').match(/<\w+>|-?\d+/g) ?? []) {
      if (part.startsWith('<'))
        for (const g of part.match(/\w{4}/g) ?? []) at += font.type.advances[Number.parseInt(g, 16)]!
      else at -= Number(part)
    }
    const title = laid('a4').items.find((i) => i.kind === 'text')
    expect((at * Number(size)) / 1000).toBeCloseTo(title?.kind === 'text' ? title.box.w : 0, -1)
  })

  it('has every flower as an image at 300 dots to the inch, with what is seen through it', async () => {
    const { text } = await pdf('a4')
    const views = laid('a4').items.filter((i) => i.kind === 'view' || i.kind === 'plate')
    expect(text.match(/\/ColorSpace \/DeviceRGB/g)?.length).toBe(views.length)
    expect(text.match(/\/SMask \d+ 0 R/g)?.length).toBe(views.length)
    const first = views[0]!
    expect(text).toContain(`/Width ${Math.floor(first.kind === 'view' ? first.box.w : 0)} /Height`)
  })

  it('its images come out as they went in', async () => {
    const sheet = laid('a4')
    const item = sheet.items.find((i) => i.kind === 'view')!
    const rgba = new Uint8ClampedArray([10, 20, 30, 255, 40, 50, 60, 128, 70, 80, 90, 0, 5, 250, 7, 9])
    const one = new Map<Item, Placed>([[item, { x: 0, y: 0, pixels: { width: 2, height: 2, rgba } }]])
    const bytes = Buffer.from(await (await pdfOf([{ laid: sheet, painted: one }], FACES, measure, SAID)).arrayBuffer())
    const made = { text: bytes.toString('latin1'), bytes }
    const image = /\n(\d+) 0 obj\n<< \/Type \/XObject [^\n]*DeviceRGB/.exec(made.text)?.[1]
    const rows = streamOf(made, Number(image))
    // Filter 2 of PNG: each byte is the difference from the one above.
    const [above, below] = [rows.subarray(1, 7), rows.subarray(8, 14)]
    expect([rows[0], rows[7]]).toEqual([2, 2])
    expect([...above]).toEqual([10, 20, 30, 40, 50, 60])
    expect([...below].map((b, i) => (b + above[i]!) & 255)).toEqual([70, 80, 90, 5, 250, 7])
  })

  it('every object is where the table of objects says, or no reader would open it', async () => {
    const { text } = await pdf('letter')
    const start = Number(/startxref\n(\d+)\n%%EOF/.exec(text)?.[1])
    expect(text.slice(start, start + 4)).toBe('xref')
    const rows = [...text.slice(start).matchAll(/(\d{10}) 00000 n /g)].map((m) => Number(m[1]))
    expect(rows.length).toBeGreaterThan(20)
    rows.forEach((at, i) => {
      expect(text.slice(at, at + 12)).toContain(`${i + 1} 0 obj`)
    })
  })

  it('a face knows its letters and not others', () => {
    const { glyphOf, advances } = FACES[0]!.type
    for (const letter of 'aZé€½…') expect(glyphOf(letter.codePointAt(0)!)).toBeGreaterThan(0)
    for (const letter of 'жあ🌸') expect(glyphOf(letter.codePointAt(0)!)).toBe(0)
    expect(advances[glyphOf(0x57)]).toBeGreaterThan(advances[glyphOf(0x69)]!)
    expect(() => readTrueType(new Uint8Array(40))).toThrow('not TrueType')
  })
})

describe('the sheet as SVG', () => {
  const faces = { capt: "Newsreader, 'Georgia', serif", lett: "'Ysabeau Office', sans-serif" }
  const font = {
    family: 'Newsreader',
    weight: '400 600',
    style: 'normal',
    href: 'data:font/woff2;base64,AAAA',
  } as const
  const made = (size: SizeName): string => {
    const sheet = laid(size)
    const pieces = new Map(
      [...painted(sheet)].map(([item, { x, y, pixels }]) => [
        item,
        { x, y, width: pixels.width, height: pixels.height, href: 'data:image/png;base64,AAAA' },
      ]),
    )
    return svgOf(sheet, pieces, [font], faces, SAID)
  }

  it('has the size of its paper, one px of its grid to a dot', () => {
    expect(made('a4')).toContain('width="210mm" height="297mm" viewBox="0 0 2480 3508"')
    expect(made('letter')).toContain('width="215.9mm" height="279.4mm" viewBox="0 0 2550 3300"')
    expect(made('phone')).toContain('width="1080px" height="1920px" viewBox="0 0 1080 1920"')
  })

  it('has every word as a word, its letters and pieces in it, and asks nothing of anyone', () => {
    const svg = made('a4')
    for (const item of laid('a4').items)
      if (item.kind === 'text' && !/[&<"]/.test(item.text)) expect(svg).toContain(`>${item.text}</text>`)
    expect(svg).toContain('@font-face{font-family:"Newsreader"')
    expect(svg.match(/(?:href="|url\()(?!data:)/g)).toBeNull()
    expect(svg.match(/<image /g)?.length).toBe(painted(laid('a4')).size)
  })

  it('a title with signs of XML stays a title, and what is said for those who cannot see it is there', () => {
    const svg = made('a4')
    expect(svg).toContain('<title id="title">Äpfel &amp; “windfalls” &lt;3</title>')
    expect(svg).toContain('<desc id="words">A low bowl with 12 stems &amp; more.</desc>')
    const broken = svgOf(laid('a4'), new Map(), [], faces, { title: 'a\u0000b\ud800c', words: '' })
    expect(broken).toContain('<title id="title">abc</title>')
  })
})
