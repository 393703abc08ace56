import type { Photo } from '../../../geometry/index.ts'
import { openPhoto, type PhotoRefused } from '../../../state/index.ts'

/** Longest side of what is traced, pixels: one of them is less than half a millimetre of a vessel that fills it. Ours. */
const SIDE = 900
/** With a shorter side than this an edge can’t be told from its own blur, pixels. Ours. */
const LEAST_SIDE = 80

export type Loaded = { ok: true; name: string; photo: Photo } | PhotoRefused

const pixelsOf = (bitmap: ImageBitmap): Photo => {
  const k = Math.min(1, SIDE / Math.max(bitmap.width, bitmap.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(bitmap.width * k))
  canvas.height = Math.max(1, Math.round(bitmap.height * k))
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) throw new Error('no drawing surface')
  // What is transparent is on white, so that the tracing need not know of it.
  pen.fillStyle = '#ffffff'
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  const { data, width, height } = pen.getImageData(0, 0, canvas.width, canvas.height)
  return { rgba: data, width, height }
}

/** The pixels of a photo, smaller if it is large; in words what is wrong with it. It never throws. */
export const loadPhoto = async (file: File): Promise<Loaded> => {
  const opened = await openPhoto(file)
  if (!opened.ok) return opened
  const { bitmap, name } = opened
  try {
    if (Math.min(bitmap.width, bitmap.height) < LEAST_SIDE)
      return {
        ok: false,
        message: `${name} is ${bitmap.width} × ${bitmap.height} pixels: too small to trace. At least ${LEAST_SIDE} each way are needed, 400 are better.`,
      }
    return { ok: true, name, photo: pixelsOf(bitmap) }
  } catch (why) {
    return {
      ok: false,
      message: `${name} could not be looked at: ${why instanceof Error ? why.message : String(why)}.`,
    }
  } finally {
    bitmap.close()
  }
}
