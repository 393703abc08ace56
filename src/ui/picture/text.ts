import type { Align, Box, Font, Item, Measure } from './types.ts'

/** How far letters reach above and below the base line, of the size. Measured on both faces: ours. */
const ASCENT = 0.78
const DESCENT = 0.26
/** From base line to base line, of the size. Ours. */
export const LEADING = 1.2

export type TextItem = Extract<Item, { kind: 'text' }>

/** One line of text. `x` is its left end, middle or right end as `align` says, `y` the base line, px. */
export const textLine = (
  text: string,
  font: Font,
  colour: string,
  align: Align,
  x: number,
  y: number,
  measure: Measure,
): TextItem => {
  const w = measure(text, font)
  const left = align === 'left' ? x : align === 'right' ? x - w : x - w / 2
  const box: Box = { x: left, y: y - ASCENT * font.size, w, h: (ASCENT + DESCENT) * font.size }
  return { kind: 'text', text, font, colour, align, x, y, box }
}

/** The text, or as much of it as goes into `width` px, with an ellipsis. */
export const cut = (text: string, font: Font, width: number, measure: Measure): string => {
  if (measure(text, font) <= width) return text
  const letters = [...text]
  while (letters.length > 1 && measure(`${letters.join('').trimEnd()}…`, font) > width) letters.pop()
  return `${letters.join('').trimEnd()}…`
}

/** The font made as small as one line of `width` px needs, but no smaller than `least` px: then the text is cut. */
export const fitted = (
  text: string,
  font: Font,
  width: number,
  least: number,
  measure: Measure,
): { text: string; font: Font } => {
  const wide = measure(text, font)
  if (wide <= width) return { text, font }
  const size = Math.max(least, Math.floor((font.size * width) / wide))
  const small = { ...font, size }
  return { text: cut(text, small, width, measure), font: small }
}

/** Letters that stay together at either end of a word that is broken. Ours. */
const KEPT = 3

/** The text with a hyphen and a space in each word that is wider than `width` px, as late in it as there is room. */
export const broken = (text: string, font: Font, width: number, measure: Measure): string =>
  text
    .split(' ')
    .map((word) => {
      if (measure(word, font) <= width) return word
      let at = word.length - KEPT
      while (at > KEPT && measure(`${word.slice(0, at)}-`, font) > width) at -= 1
      return at > KEPT ? `${word.slice(0, at)}- ${word.slice(at)}` : word
    })
    .join(' ')

/** Breaks a text at its spaces into lines of at most `width` px; what goes beyond `most` lines is cut. Never empty. */
export const wrapped = (text: string, font: Font, width: number, most: number, measure: Measure): string[] => {
  const lines: string[] = []
  let rest = text.trim().split(/\s+/)
  while (rest.length > 0) {
    if (lines.length === most - 1) {
      lines.push(cut(rest.join(' '), font, width, measure))
      break
    }
    let n = 1
    while (n < rest.length && measure(rest.slice(0, n + 1).join(' '), font) <= width) n++
    lines.push(cut(rest.slice(0, n).join(' '), font, width, measure))
    rest = rest.slice(n)
  }
  return lines
}

const isCut = (lines: readonly string[], text: string): boolean =>
  lines.some((line) => line.endsWith('…') && !text.includes(line))

/** The largest size, from the font's own down to `least` px, at which a text goes into `most` lines without a cut. */
export const block = (
  text: string,
  font: Font,
  width: number,
  most: number,
  least: number,
  measure: Measure,
): { lines: string[]; font: Font } => {
  for (let size = font.size; ; size = Math.max(least, size - 4)) {
    const small = { ...font, size }
    const lines = wrapped(text, small, width, most, measure)
    if (size === least || !isCut(lines, text)) return { lines, font: small }
  }
}

/** The first of the texts that goes in as `block` does it without a cut; else the last, cut. No lines if there is no text. */
export const blockOfFirst = (
  texts: readonly string[],
  font: Font,
  width: number,
  most: number,
  least: number,
  measure: Measure,
): { lines: string[]; font: Font } => {
  let laid: { lines: string[]; font: Font } = { lines: [], font }
  for (const text of texts) {
    laid = block(text, font, width, most, least, measure)
    if (!isCut(laid.lines, text)) break
  }
  return laid
}

/** The same number of lines, of lengths as alike as can be: no word alone in the last. */
export const balanced = (title: string, font: Font, lines: string[], most: number, measure: Measure): string[] => {
  for (let width = most / 2; width < most; width += 40) {
    const tried = wrapped(title, font, width, lines.length + 1, measure)
    if (tried.length === lines.length && tried.join(' ') === lines.join(' ')) return tried
  }
  return lines
}
