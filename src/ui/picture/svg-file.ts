import type { Said } from './export.ts'
import { canvasOf, type Faces } from './paint.ts'
import type { Placed } from './rasters.ts'
import { type FontFile, type Painted, svgOf } from './svg.ts'
import type { Item, Laid } from './types.ts'

const FONTS: (Omit<FontFile, 'href'> & { ask: () => Promise<Response> })[] = [
  {
    family: 'Newsreader',
    weight: '400 600',
    style: 'normal',
    ask: () => fetch(new URL('../fonts/newsreader-roman.woff2', import.meta.url)),
  },
  {
    family: 'Newsreader',
    weight: '400 500',
    style: 'italic',
    ask: () => fetch(new URL('../fonts/newsreader-italic.woff2', import.meta.url)),
  },
  {
    family: 'Ysabeau Office',
    weight: '400 700',
    style: 'normal',
    ask: () => fetch(new URL('../fonts/ysabeau-office-roman.woff2', import.meta.url)),
  },
]

const dataUrl = (blob: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader()
    reader.onload = () => resolve(String(reader.result))
    reader.onerror = () => reject(reader.error ?? new Error('a part of the file could not be read'))
    reader.readAsDataURL(blob)
  })

/** A face as data. One that can't be had is left out: other letters then take its room. */
const fontData = async ({ ask, ...font }: (typeof FONTS)[number]): Promise<FontFile[]> => {
  try {
    const answer = await ask()
    if (!answer.ok) return []
    return [{ ...font, href: await dataUrl(new Blob([await answer.arrayBuffer()], { type: 'font/woff2' })) }]
  } catch {
    return []
  }
}

/** The sheet as an SVG file that opens by itself. */
export const svgFile = async (
  laid: Laid,
  placed: ReadonlyMap<Item, Placed>,
  faces: Faces,
  said: Said,
): Promise<Blob> => {
  const fonts = await Promise.all(FONTS.map(fontData))
  const painted = new Map<Item, Painted>()
  for (const [item, { x, y, pixels }] of placed) {
    const { width, height } = pixels
    painted.set(item, { x, y, width, height, href: canvasOf(pixels).toDataURL('image/png') })
  }
  return new Blob([svgOf(laid, painted, fonts.flat(), faces, said)], { type: 'image/svg+xml' })
}
