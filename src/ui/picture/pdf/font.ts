import type { Font, Measure } from '../types.ts'
import { num, type Objects, packedStream } from './objects.ts'
import type { TrueType } from './truetype.ts'

/** A weight of a face as it stands in the file. */
export interface PdfFace {
  /** As in the page's resources. */
  name: string
  face: Font['face']
  weight: number
  italic: boolean
  type: TrueType
}

/** The face that a font asks for; the nearest weight if its own is not there. */
export const faceFor = (faces: readonly PdfFace[], font: Font): PdfFace | undefined =>
  faces
    .filter((f) => f.face === font.face && f.italic === (font.italic ?? false))
    .sort((a, b) => Math.abs(a.weight - font.weight) - Math.abs(b.weight - font.weight))[0]

const hex4 = (value: number): string => value.toString(16).padStart(4, '0')
const utf16 = (codePoint: number): string =>
  [...String.fromCodePoint(codePoint)]
    .join('')
    .split('')
    .map((c) => hex4(c.charCodeAt(0)))
    .join('')

/** From glyphs back to letters, so that text can be searched and copied (9.10.3). */
const toUnicode = (used: ReadonlyMap<number, number>): string => {
  const lines = [...used].map(([glyph, codePoint]) => `<${hex4(glyph)}> <${utf16(codePoint)}>`)
  const blocks: string[] = []
  // A block holds at most a hundred.
  for (let i = 0; i < lines.length; i += 100) {
    const some = lines.slice(i, i + 100)
    blocks.push(`${some.length} beginbfchar\n${some.join('\n')}\nendbfchar`)
  }
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange <0000> <FFFF> endcodespacerange',
    ...blocks,
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n')
}

/**
 * A face, embedded whole (9.7, 9.9).
 * @param used the letter of each glyph that stands on the page
 * @returns its number
 */
export const addFont = async (
  objects: Objects,
  { face, weight, italic, type }: PdfFace,
  used: ReadonlyMap<number, number>,
): Promise<number> => {
  const called = `${face === 'capt' ? 'Newsreader' : 'YsabeauOffice'}-${weight}${italic ? 'Italic' : ''}`
  const [file, letters] = await Promise.all([
    packedStream(`/Length1 ${type.bytes.length}`, type.bytes),
    packedStream('', new TextEncoder().encode(toUnicode(used))),
  ])
  const flags = 4 + (italic ? 64 : 0) + (face === 'capt' ? 2 : 0)
  const descriptor = objects.add(
    `<< /Type /FontDescriptor /FontName /${called} /Flags ${flags} /FontBBox [${type.box.join(' ')}] /ItalicAngle ${italic ? -12 : 0} /Ascent ${type.ascent} /Descent ${type.descent} /CapHeight ${type.ascent} /StemV 80 /FontFile2 ${objects.add(file)} 0 R >>`,
  )
  const widths = [...used.keys()].map((glyph) => `${glyph} [${num(type.advances[glyph] ?? 0)}]`).join(' ')
  const descendant = objects.add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont /${called} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor ${descriptor} 0 R /CIDToGIDMap /Identity /DW 500 /W [${widths}] >>`,
  )
  return objects.add(
    `<< /Type /Font /Subtype /Type0 /BaseFont /${called} /Encoding /Identity-H /DescendantFonts [${descendant} 0 R] /ToUnicode ${objects.add(letters)} 0 R >>`,
  )
}

/** Has the face every letter of a text? */
export const canWrite = ({ type }: PdfFace, text: string): boolean =>
  [...text].every((letter) => type.glyphOf(letter.codePointAt(0)!) > 0)

/**
 * The operand of TJ (9.4.3): each glyph as the measure of letters places it, kerning and all.
 * @param used gains the glyphs
 */
export const shown = (
  { type }: PdfFace,
  text: string,
  font: Font,
  measure: Measure,
  used: Map<number, number>,
): string => {
  const letters = [...text]
  let out = ''
  let run = ''
  let at = 0
  letters.forEach((letter, i) => {
    const codePoint = letter.codePointAt(0)!
    const glyph = type.glyphOf(codePoint)
    used.set(glyph, codePoint)
    const advance = type.advances[glyph] ?? 0
    // Kerning moves a letter toward the one before it: it begins where it ends less its own room.
    const begins = (measure(letters.slice(0, i + 1).join(''), font) / font.size) * 1000 - advance
    const back = i === 0 ? 0 : Math.round(at - begins)
    if (back !== 0) {
      out += `<${run}> ${back} `
      run = ''
      at -= back
    }
    run += hex4(glyph)
    at += advance
  })
  return `[${out}<${run}>]`
}
