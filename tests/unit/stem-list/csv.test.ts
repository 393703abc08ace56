import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvOfBytes, csvText, readCsv } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'

/** RFC 4180 by its own grammar, letter by letter; with another separator than the comma as others take a file apart. */
const parsed = (text: string, comma = ','): string[][] => {
  const rows: string[][] = []
  let [row, cell, quoted]: [string[], string, boolean] = [[], '', false]
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!
    if (quoted) {
      if (c !== '"') cell += c
      else if (text[i + 1] === '"') {
        cell += c
        i += 1
      } else quoted = false
    } else if (c === '"' && cell === '') quoted = true
    else if (c === comma || c === '\n') {
      row.push(cell)
      cell = ''
      if (c === '\n') {
        rows.push(row)
        row = []
      }
    } else if (c !== '\r') cell += c
  }
  return rows
}
const cellsOf = (text: string): string[][] => readCsv(text).rows.map((row) => row.cells)

/** What a spreadsheet would reckon with: a sign of a formula after whatever it may leave out in front. */
const FORMULA = /^[\s\p{C}]*[=+\-@＝＋－＠]/u

/** Texts made of what is dangerous, and of letters. */
const nasty = fc
  .array(fc.constantFrom(...'=+-@＝＋－＠\'" \t\n,;ab1\u0000\u00a0\u200b\ufeff'.split('')), { maxLength: 12 })
  .map((signs) => signs.join(''))

describe('a text that would be a formula', () => {
  it('a title with a line break after =1+1 opens as text, and so do those behind a space, a tab, a break, or in full width', () => {
    const titles = ['=1+1\n', '=1+1\nand more', ' =1+1', '＝1+1', '＋1', '－1', '＠a', '\u0000=1', '\u00a0-1']
    for (const title of titles) {
      const [[cell]] = parsed(csvText([[title, 'x']])) as [[string]]
      expect(cell, JSON.stringify(title)).toBe(`'${title}`)
    }
    // Behind what others part cells or rows by, a cell begins anew.
    expect(csvText([['\t=1+1']])).toBe("'\t'=1+1\r\n")
    expect(csvText([['\n=1+1']])).toBe('"\'\n\'=1+1"\r\n')
    expect(csvText([[' \n=1+1']])).toBe('"\' \n\'=1+1"\r\n')
  })
  it('a break or a tab in front is enough', () => {
    for (const text of ['\trose', '\nrose', '\rrose']) expect(csvText([[text]])).toMatch(/^"?'/)
  })
  it('nor does one begin where another separator would part the cell', () => {
    expect(csvText([['rose;=1+1', 'x']])).toBe("rose;'=1+1,x\r\n")
    expect(csvText([['rose,=1+1', 'x']], 'semicolon')).toBe("rose,'=1+1;x\r\n")
  })
  it('numbers that we write stay numbers, words stay words', () => {
    expect(csvText([[-3.5, 4, '6 x 12 + 1 x 10', 'rose, pink']])).toBe('-3.5,4,6 x 12 + 1 x 10,"rose, pink"\r\n')
    expect(csvText([[-3.5, 4]], 'semicolon')).toBe('-3,5;4\r\n')
  })
  it('none of any texts is one, whichever way the file is parted; each comes back as it was', () => {
    let runs = 0
    fc.assert(
      fc.property(
        fc.array(fc.tuple(nasty, nasty), { minLength: 1, maxLength: 4 }),
        fc.constantFrom('comma' as const, 'semicolon' as const),
        (rows, kind) => {
          runs += 1
          const text = csvText(rows, kind)
          for (const sign of [',', ';', '\t'])
            for (const cell of parsed(text, sign).flat()) expect(cell).not.toMatch(FORMULA)
          const filled = [['a', 'b', 'c', 'd'], ...rows.map((row) => ['x', ...row, 'x'])]
          expect(cellsOf(csvText(filled, kind))).toEqual(filled.map((row) => row.map((cell) => cell.trim())))
        },
      ),
      { numRuns: 2000 },
    )
    promise(`C7 no text of a CSV is a formula, by commas, semicolons or tabs: ${runs} tables, 0 failures`)
  })
})

describe('CSV', () => {
  it('is that of RFC 4180: CRLF, quotes doubled', () => {
    expect(csvText([['a "b"', 1, 'x,y', 'two\nlines']])).toBe('"a ""b""",1,"x,y","two\nlines"\r\n')
  })
  it('says on which line a row begins: empty lines, breaks in quotes and the sep= of a spreadsheet are counted', () => {
    const text = 'sep=;\r\n\r\na;b\r\n"two\r\nlines";1\r\n;\r\nc;"2"\r\n'
    expect(readCsv(text)).toEqual({
      delimiter: ';',
      rows: [
        { line: 3, cells: ['a', 'b'], broken: '' },
        { line: 4, cells: ['two\nlines', '1'], broken: '' },
        { line: 7, cells: ['c', '2'], broken: '' },
      ],
    })
  })
  it('names a quote that is never closed', () => {
    expect(readCsv('a,b\n1,"2\n3,4\n').rows[1]).toMatchObject({
      line: 2,
      broken: 'a quote (") is opened and never closed',
    })
  })
  it('reads files of UTF-8, of UTF-16 and of Windows letters', () => {
    expect(csvOfBytes(new TextEncoder().encode('18,80 €'))).toBe('18,80 €')
    expect(csvOfBytes(Uint8Array.of(0x63, 0x61, 0x66, 0xe9))).toBe('café')
    expect(csvOfBytes(Uint8Array.of(0xff, 0xfe, 0x31, 0, 0xac, 0x20))).toBe('1€')
  })
})
