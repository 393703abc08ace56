import { pngMaker } from '../../state/index.ts'
import { fileName } from '../../storage/index.ts'
import type { Kind } from './choices.ts'
import { type Faces, paintSheet } from './paint.ts'
import { DOTS_PER_METRE, withPaperSize } from './png-size.ts'
import { type Drawing, fullRasters } from './rasters.ts'
import type { Sheet } from './types.ts'

/** Shares of the full size that are tried one after the other, when a browser gives no larger canvas. Ours. */
const SHARES = [1, 0.75, 0.5] as const

/** `orchard-supper.png`: the name of the design's own file, with another ending. */
export const pictureName = (title: string, kind: Kind): string => fileName(title, `.${kind}`)

/** A canvas over a browser's limit stays empty without a word; the paper in the corner tells. */
const isDrawn = (canvas: HTMLCanvasElement): boolean => {
  const pixel = canvas.getContext('2d')?.getImageData(2, 2, 1, 1).data
  return (pixel?.[3] ?? 0) === 255
}

/** Beside the page, which would wait for a quiet moment first; in the page where there is no other way. */
const blobOf = async (canvas: HTMLCanvasElement): Promise<Blob | null> => {
  const bitmap = await createImageBitmap(canvas).catch(() => null)
  const made = bitmap && (await pngMaker().make(bitmap))
  return made ?? new Promise((resolve) => canvas.toBlob(resolve, 'image/png'))
}

export interface Exported {
  blob: Blob
  /** Dots that the whole sheet has. */
  width: number
  height: number
  /** Smaller than asked for, because the browser can do no more. */
  reduced: boolean
}

/** What is said of the picture in the file itself. */
export interface Said {
  title: string
  words: string
}

/** What is to be drawn, without its size. */
export type Subject = Omit<Drawing, 'scale' | 'lane'>

/**
 * The sheet as a PNG of its own size, or of what the browser can do. Null when a newer one overtook it; throws an
 * Error in words when no picture came out at any size.
 */
const asPng = async (subject: Subject, faces: Faces): Promise<Exported | null> => {
  const { sheet } = subject.laid
  let why = 'the browser gave an empty picture'
  for (const scale of SHARES) {
    const canvas = document.createElement('canvas')
    try {
      const painted = await fullRasters({ ...subject, scale })
      if (!painted) return null
      paintSheet(canvas, { laid: subject.laid, scale }, painted, faces)
      const blob = isDrawn(canvas) ? await blobOf(canvas) : null
      const { width, height } = canvas
      if (blob && blob.size > 0)
        return {
          blob: sheet.paper_mm ? withPaperSize(blob, Math.round(scale * DOTS_PER_METRE)) : blob,
          width,
          height,
          reduced: width !== sheet.width || height !== sheet.height,
        }
    } catch (error) {
      why = error instanceof Error ? error.message : String(error)
    } finally {
      // Some phones keep the memory of a canvas until it is made small.
      canvas.width = 1
      canvas.height = 1
    }
  }
  throw new Error(why)
}

/** The sheet as a file of a kind. Null when a newer one overtook it; throws an Error in words when none came out. */
export const exportPicture = async (
  kind: Kind,
  subject: Subject,
  faces: Faces,
  said: Said,
): Promise<Exported | null> => {
  if (kind === 'png') return asPng(subject, faces)
  const painted = await fullRasters({ ...subject, scale: 1 })
  if (!painted) return null
  const blob =
    kind === 'svg'
      ? await (await import('./svg-file.ts')).svgFile(subject.laid, painted, faces, said)
      : await (await import('./pdf/index.ts')).pdfFile(subject.laid, painted, faces, said)
  const { width, height } = subject.laid.sheet
  return { blob, width, height, reduced: false }
}

const PAPERS = { a4: 'a sheet of A4', letter: 'a sheet of US Letter', phone: 'for the screen of a phone' } as const

/** What kind of file it will be. */
export const aboutFile = (kind: Kind, { name, width, height }: Sheet): string => {
  const size = `${width} by ${height} dots`
  if (kind === 'png') return `A PNG of ${size}: ${PAPERS[name]}${name === 'phone' ? '' : ' at 300 to the inch'}.`
  if (kind === 'svg')
    return `An SVG, ${PAPERS[name]}: words are words in their own letters, lines are lines; the flowers are pictures in it, of as many dots as ${size} give.`
  return `A PDF, ${PAPERS[name]}: words are words in their own letters, lines are lines; the flowers are pictures in it at 300 dots to the inch.`
}

/** What has been saved. */
export const savedWords = (name: string, kind: Kind, sheet: Sheet, { width, height, reduced }: Exported): string => {
  const size = kind === 'png' ? `, ${width} by ${height} dots` : ''
  return reduced
    ? `Saved as ${name}${size}: this browser can draw it no larger.`
    : `Saved as ${name}${size}: ${PAPERS[sheet.name]}.`
}
