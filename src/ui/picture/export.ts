import { fileName } from '../../storage/index.ts'
import { type Drawing, paintSheet } from './paint.ts'
import { DOTS_PER_METRE, withPaperSize } from './png-size.ts'
import { SHEET } from './types.ts'

/** Shares of the full size that are tried one after the other, when a browser gives no larger canvas. Ours. */
const SIZES = [1, 0.75, 0.5] as const

/** `orchard-supper.png`: the name of the design's own file, with another ending. */
export const pictureName = (title: string): string => `${fileName(title).replace(/\.json$/, '')}.png`

/** A canvas over a browser's limit stays empty without a word; the paper in the corner tells. */
const isDrawn = (canvas: HTMLCanvasElement): boolean => {
  const pixel = canvas.getContext('2d')?.getImageData(2, 2, 1, 1).data
  return (pixel?.[3] ?? 0) === 255
}

const blobOf = (canvas: HTMLCanvasElement): Promise<Blob | null> =>
  new Promise((resolve) => canvas.toBlob(resolve, 'image/png'))

export interface Exported {
  blob: Blob
  width: number
  height: number
  /** Smaller than asked for, because the browser can do no more. */
  reduced: boolean
}

/**
 * The sheet as a PNG of 2480 × 3508 px, or of what the browser can do. Null when a newer one overtook it; throws an
 * Error in words when no picture came out at any size.
 */
export const exportPicture = async (drawing: Omit<Drawing, 'scale' | 'lane'>): Promise<Exported | null> => {
  let why = 'the browser gave an empty picture'
  for (const scale of SIZES) {
    const canvas = document.createElement('canvas')
    try {
      if (!(await paintSheet(canvas, { ...drawing, scale, lane: 'picture export' }))) return null
      const blob = isDrawn(canvas) ? await blobOf(canvas) : null
      const { width, height } = canvas
      if (blob && blob.size > 0)
        return {
          blob: withPaperSize(blob, Math.round(scale * DOTS_PER_METRE)),
          width,
          height,
          reduced: width !== SHEET.width || height !== SHEET.height,
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
