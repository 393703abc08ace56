import type { Faces } from './paint.ts'
import type { Item, Laid } from './types.ts'

/** A painted piece as a file: `href` is a data URL; place and size in px of the sheet. */
export interface Painted {
  x: number
  y: number
  width: number
  height: number
  href: string
}

export interface FontFile {
  family: string
  /** As in a style sheet: `400 600`. */
  weight: string
  style: 'normal' | 'italic'
  /** A data URL of a woff2. */
  href: string
}

/** Signs that XML gives another meaning, and those that it forbids (XML 1.0, 2.2). */
const escaped = (text: string): string =>
  text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
const n = (value: number): string => String(Math.round(value * 100) / 100)
const ANCHOR = { left: 'start', centre: 'middle', right: 'end' } as const

const element = (item: Item, painted: ReadonlyMap<Item, Painted>): string => {
  if (item.kind === 'text') {
    const { font, align } = item
    const italic = font.italic ? ' font-style="italic"' : ''
    // Where the faces can't be had, other letters take the same room.
    const room = `textLength="${n(item.box.w)}" lengthAdjust="spacingAndGlyphs"`
    return `<text class="${font.face}" x="${n(item.x)}" y="${n(item.y)}" font-size="${n(font.size)}" font-weight="${font.weight}"${italic} text-anchor="${ANCHOR[align]}" fill="${item.colour}" ${room}>${escaped(item.text)}</text>`
  }
  if (item.kind === 'line')
    return `<path d="M${item.from.map(n).join(' ')}L${item.to.map(n).join(' ')}" stroke="${item.colour}" stroke-width="${n(item.weight)}"/>`
  if (item.kind === 'path' || item.kind === 'shape') {
    const d = `M${item.points.map((p) => p.map(n).join(' ')).join('L')}`
    return item.kind === 'path'
      ? `<path d="${d}" fill="none" stroke="${item.colour}" stroke-width="${n(item.weight)}" stroke-linejoin="round"/>`
      : `<path d="${d}Z" fill="${item.fill}"/>`
  }
  if (item.kind === 'box') {
    const { x, y, w, h } = item.box
    return `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" fill="${item.fill ?? 'none'}" stroke="${item.stroke}" stroke-width="${n(item.weight)}"/>`
  }
  const p = painted.get(item)
  return p ? `<image x="${p.x}" y="${p.y}" width="${p.width}" height="${p.height}" href="${p.href}"/>` : ''
}

const fontRule = ({ family, weight, style, href }: FontFile): string =>
  `@font-face{font-family:"${family}";font-weight:${weight};font-style:${style};src:url(${href}) format("woff2")}`

/**
 * The sheet as SVG 1.1 that needs nothing else: words as words, lines as lines, painted pieces and letters inside it.
 * @param painted a piece for each view and plate; those without one are left out
 */
export const svgOf = (
  { sheet, paper, items }: Laid,
  painted: ReadonlyMap<Item, Painted>,
  fonts: readonly FontFile[],
  faces: Faces,
  { title, words }: { title: string; words: string },
): string => {
  const { width, height, paper_mm } = sheet
  const [w, h] = paper_mm ? paper_mm.map((mm) => `${mm}mm`) : [`${width}px`, `${height}px`]
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title words" lang="en">`,
    `<title id="title">${escaped(title)}</title><desc id="words">${escaped(words)}</desc>`,
    `<style>${fonts.map(fontRule).join('')}text{white-space:pre}.capt{font-family:${faces.capt}}.lett{font-family:${faces.lett}}</style>`,
    `<rect width="${width}" height="${height}" fill="${paper}"/>`,
    ...items.map((item) => element(item, painted)),
    '</svg>',
  ].join('\n')
}
