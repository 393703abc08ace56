import Papa from 'papaparse'

/**
 * What a spreadsheet takes apart: cells by commas and 1.50 (RFC 4180), or cells by semicolons and 1,50, as where the comma is
 * the decimal sign and so can't stand between cells.
 */
export type CsvKind = 'comma' | 'semicolon'

/** What may hide before a sign by which a spreadsheet knows a formula: spaces, control and unseen characters, quotes and our own '. */
const HIDDEN = String.raw`[\s\p{Cc}\p{Cf}'"]`
const SIGN = '[=+\\-@＝＋－＠﹦﹢﹣﹫]'
/** The start of a text, where a formula stands there, or a tab or line break. */
const START = String.raw`(?=${HIDDEN}*${SIGN}|'*[\t\r\n])`
/** Where a cell begins for one who takes the file apart by another separator than ours, and what hides in that cell. */
const INNER = String.raw`(?=(?:(?![\t\r\n])${HIDDEN})*${SIGN})`
const [AT_START, WITHIN] = [new RegExp(`^${START}`, 'u'), new RegExp(String.raw`([,;\t\r\n])${INNER}`, 'gu')]
const [SAFE_START, SAFE_WITHIN] = [new RegExp(`^'${START}`, 'u'), new RegExp(String.raw`([,;\t\r\n])'${INNER}`, 'gu')]

/**
 * A text that no spreadsheet takes for a formula: a ' before each sign at which a cell could begin one, and before a tab or line
 * break at its start (OWASP, CSV Injection; the full-width signs are ours). `asItWas` takes exactly those off again.
 */
const defused = (text: string): string => text.replace(WITHIN, "$1'").replace(AT_START, "'")

const asItWas = (cell: string): string => cell.replace(SAFE_START, '').replace(SAFE_WITHIN, '$1')

/** Digits with a point as they stand in a file of this kind. */
export const inKind = (digits: string, kind: CsvKind): string =>
  kind === 'semicolon' ? digits.replace('.', ',') : digits

/** Rows as CSV: CRLF, quotes where needed (RFC 4180). Texts are made harmless (`defused`); numbers stay numbers. */
export const csvText = (rows: readonly (readonly (string | number)[])[], kind: CsvKind = 'comma'): string => {
  const cells = rows.map((row) =>
    row.map((cell) => (typeof cell === 'number' ? inKind(String(cell), kind) : defused(cell))),
  )
  return `${Papa.unparse(cells, { newline: '\r\n', delimiter: kind === 'comma' ? ',' : ';' })}\r\n`
}

/** What stands between the cells: whichever of , ; and tab a line has most of outside quotes. */
const delimiterOf = (text: string): string => {
  const head = (/^(?: *\n)*(?:"(?:[^"]|"")*"|[^"\n])*/.exec(text)?.[0] ?? '').replace(/"(?:[^"]|"")*"/g, '')
  return [',', ';', '\t'].reduce((best, d) => (head.split(d).length > head.split(best).length ? d : best))
}

export interface CsvRow {
  /** Line of the file on which it begins, from 1. */
  line: number
  cells: string[]
  /** What is wrong with its quotes, in words; '' nothing. */
  broken: string
}

const QUOTES: Record<string, string> = {
  MissingQuotes: 'a quote (") is opened and never closed',
  InvalidQuotes: 'a quote (") inside a cell has to be doubled',
}

/**
 * Rows of a CSV text, lines counted as they are in the file: empty ones, those within quotes and a spreadsheet's `sep=;` among
 * them. Empty rows are left out, cells trimmed; a ' that csvText put in is taken off again.
 */
export const readCsv = (given: string): { rows: CsvRow[]; delimiter: string } => {
  const all = given.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n')
  const said = /^"?sep=(.)"?\n/i.exec(all)
  const text = said ? all.slice(said[0].length) : all
  const delimiter = said?.[1] ?? delimiterOf(text)
  const rows: CsvRow[] = []
  let [at, line] = [0, said ? 2 : 1]
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    step: ({ data, errors, meta }) => {
      const broken = errors.map(({ code }) => QUOTES[code] ?? '').find(Boolean) ?? ''
      const cells = data.map((cell) => asItWas(cell).trim())
      if (broken || cells.some((cell) => cell !== '')) rows.push({ line, cells, broken })
      line += text.slice(at, meta.cursor).split('\n').length - 1
      at = meta.cursor
    },
  })
  return { rows, delimiter }
}

/** The text of a CSV file's bytes: UTF-8, else UTF-16 where it says so, else the Windows letters in which spreadsheets still save. */
export const csvOfBytes = (bytes: Uint8Array): string => {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
