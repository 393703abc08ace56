import type { Item, Laid, Measure } from '../types.ts'
import { canWrite, faceFor, type PdfFace, shown } from './font.ts'
import { num, rgb, textString } from './objects.ts'

/** A painted piece: its name among the page's resources; place and size in px of the sheet. */
export interface PdfImage {
  name: string
  x: number
  y: number
  width: number
  height: number
}

/** What a page is written from. */
export interface PageParts {
  laid: Laid
  images: ReadonlyMap<Item, PdfImage>
  faces: readonly PdfFace[]
  measure: Measure
  /** By the face's name: the letter of each glyph that is used. Filled while writing. */
  used: Map<string, Map<number, number>>
}

/** Page in points of 1/72 in. */
export const pointsOf = ({ sheet }: Laid): [width: number, height: number] => {
  const { paper_mm, width, height } = sheet
  return paper_mm ? [(paper_mm[0] / 25.4) * 72, (paper_mm[1] / 25.4) * 72] : [width / 2, height / 2]
}

/** A structure element: text as a paragraph, or the one figure that all drawings are together. */
export type Part = 'H1' | 'P' | 'Figure'

/** Upright image or text in a page whose y runs down. */
const image = ({ name, x, y, width, height }: PdfImage): string =>
  `q ${num(width)} 0 0 ${num(-height)} ${num(x)} ${num(y + height)} cm /${name} Do Q`

const outline = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${num(x)} ${num(y)} ${i === 0 ? 'm' : 'l'}`).join(' ')

const plain = (item: Item): string => {
  if (item.kind === 'line') return `${rgb(item.colour)} RG ${num(item.weight)} w ${outline([item.from, item.to])} S`
  if (item.kind === 'path') return `${rgb(item.colour)} RG ${num(item.weight)} w 1 j ${outline(item.points)} S 0 j`
  if (item.kind === 'shape') return `${rgb(item.fill)} rg ${outline(item.points)} h f`
  if (item.kind !== 'box') return ''
  const { x, y, w, h } = item.box
  const rect = `${num(x)} ${num(y)} ${num(w)} ${num(h)} re`
  const fill = item.fill ? `${rgb(item.fill)} rg ` : ''
  return `${fill}${rgb(item.stroke)} RG ${num(item.weight)} w ${rect} ${item.fill ? 'B' : 'S'}`
}

const written = (item: Extract<Item, { kind: 'text' }>, { faces, measure, used }: PageParts): string => {
  const face = faceFor(faces, item.font)
  if (!face || !canWrite(face, item.text)) return ''
  const own = used.get(face.name) ?? new Map<number, number>()
  used.set(face.name, own)
  const glyphs = shown(face, item.text, item.font, measure, own)
  return `BT /${face.name} ${num(item.font.size)} Tf ${rgb(item.colour)} rg 1 0 0 -1 ${num(item.box.x)} ${num(item.y)} Tm ${glyphs} TJ ET`
}

/** Can this text stand as letters? Otherwise it is painted. */
export const isWritten = (item: Item, faces: readonly PdfFace[]): boolean => {
  if (item.kind !== 'text') return false
  const face = faceFor(faces, item.font)
  return face !== undefined && canWrite(face, item.text)
}

/**
 * The page's marks, and the order in which a screen reader meets them: words as paragraphs, the first of them the title; the
 * drawings, one figure, stand for all (14.7). What is only ornament is marked as such (14.8.2.2).
 */
export const pageContent = (parts: PageParts): { content: string; order: Part[] } => {
  const { laid, images } = parts
  const [w, h] = pointsOf(laid)
  const { width, height } = laid.sheet
  const order: Part[] = []
  const marked = (part: Part, marks: string, actual = ''): string => {
    order.push(part)
    return `/${part} << /MCID ${order.length - 1}${actual} >> BDC ${marks} EMC`
  }
  const ornament = (marks: string): string => `/Artifact BMC ${marks} EMC`
  const lines = laid.items.map((item): string => {
    const painted = images.get(item)
    if (item.kind === 'text') {
      const part = order.includes('H1') ? 'P' : 'H1'
      const words = written(item, parts)
      if (words) return marked(part, words)
      return painted ? marked(part, image(painted), ` /ActualText ${textString(item.text)}`) : ''
    }
    if (!painted) return ornament(plain(item))
    return order.includes('Figure') ? ornament(image(painted)) : marked('Figure', image(painted))
  })
  const paper = ornament(`${rgb(laid.paper)} rg 0 0 ${width} ${height} re f`)
  return {
    content: [`${w / width} 0 0 ${-h / height} 0 ${num(h)} cm`, paper, ...lines].join('\n'),
    order,
  }
}
