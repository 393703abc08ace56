import Papa from 'papaparse'

/**
 * Rows as CSV (RFC 4180: CRLF, quotes where needed). A text that a spreadsheet would take for a formula (= + - @, tab, return) gets
 * a ' in front (OWASP, CSV Injection); numbers stay numbers.
 */
export const csvText = (rows: readonly (readonly (string | number)[])[]): string =>
  `${Papa.unparse(rows as (string | number)[][], { newline: '\r\n', escapeFormulae: true })}\r\n`

/** What stands between the cells: whichever of , ; and tab the first line has most of outside quotes. */
const delimiterOf = (text: string): string => {
  const head = (/^(?:"(?:[^"]|"")*"|[^"\r\n])*/.exec(text)?.[0] ?? '').replace(/"(?:[^"]|"")*"/g, '')
  return [',', ';', '\t'].reduce((best, d) => (head.split(d).length > head.split(best).length ? d : best))
}

/** Rows of a CSV text; a ' that csvText put in front is taken off again. Empty lines are left out. */
export const csvRows = (given: string): string[][] => {
  const text = given.replace(/^\uFEFF/, '')
  const { data } = Papa.parse<string[]>(text, { skipEmptyLines: 'greedy', delimiter: delimiterOf(text) })
  return data.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r])/, '').trim()))
}
