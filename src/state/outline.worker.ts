import { type Frame, findMarks, type Marks, type Outline, type Photo, traceOutline } from '../geometry/index.ts'
import { openPhoto, type PhotoRefused, refusedPhoto } from './open-photo.ts'

/** Longest side of what is traced, pixels: one of them is less than half a millimetre of a vessel that fills it. Ours. */
const SIDE = 900
/** With a shorter side than this an edge can’t be told from its own blur, pixels. Ours. */
const LEAST_SIDE = 80

export type OutlineRequest = { ticket: number; file: File } | { ticket: number; frame: Frame }

/** A photo as it is traced, and what it was before it was made smaller. */
export interface PhotoTaken {
  ok: true
  name: string
  photo: Photo
  /** Pixels of the file. */
  full: { width: number; height: number }
  /** Rim and base, if anything stands off from the wall. */
  marks: Marks | null
}
export type OutlineReply =
  | { ticket: number; taken: PhotoTaken | PhotoRefused }
  | { ticket: number; outline: Outline | null }

const pixelsOf = (bitmap: ImageBitmap): Photo => {
  const k = Math.min(1, SIDE / Math.max(bitmap.width, bitmap.height))
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(bitmap.width * k)),
    Math.max(1, Math.round(bitmap.height * k)),
  )
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

const take = async (file: File): Promise<PhotoTaken | PhotoRefused> => {
  // Safari from 16.4 on and Firefox from 105 on have it (MDN's browser-compat-data).
  if (typeof OffscreenCanvas === 'undefined')
    return refusedPhoto('This browser is too old to look at photos: Safari from 16.4 on and Firefox from 105 on can.')
  const opened = await openPhoto(file)
  if (!opened.ok) return opened
  const { bitmap, name } = opened
  const { width, height } = bitmap
  try {
    if (Math.min(width, height) < LEAST_SIDE)
      return refusedPhoto(
        `${name} is ${width} × ${height} pixels: too small to trace. At least ${LEAST_SIDE} each way are needed, 400 are better.`,
      )
    const photo = pixelsOf(bitmap)
    return { ok: true, name, photo, full: { width, height }, marks: findMarks(photo) }
  } catch (why) {
    return refusedPhoto(`${name} could not be looked at: ${why instanceof Error ? why.message : String(why)}.`)
  } finally {
    bitmap.close()
  }
}

let photo: Photo | null = null

/** Takes requests of the page: first a photo, then frames on it to be traced. */
export const onRequest = async ({ data }: MessageEvent<OutlineRequest>): Promise<void> => {
  const { ticket } = data
  if ('file' in data) {
    const taken = await take(data.file)
    photo = taken.ok ? taken.photo : null
    self.postMessage({ ticket, taken } satisfies OutlineReply)
  } else self.postMessage({ ticket, outline: photo && traceOutline(photo, data.frame) } satisfies OutlineReply)
}
