import type { ColourCluster } from '../colour/index.ts'
import { openPhoto, type PhotoRefused, refusedPhoto } from './open-photo.ts'
import type { PhotoReply, PhotoRequest } from './photo.worker.ts'
import { startWorker } from './start-worker.ts'

/** Longest side of what is looked at, pixels: colours need no more, and it takes less than a second. Ours. */
const SIDE = 256

export type PhotoRead = { ok: true; clusters: ColourCluster[]; small: ImageData } | PhotoRefused

/**
 * The picture, small. Pixels are picked and not mixed, so that no colour arises at the seam of two others. What the
 * browser decodes to is sRGB.
 */
const shrink = (bitmap: ImageBitmap): ImageData => {
  const k = Math.min(1, SIDE / Math.max(bitmap.width, bitmap.height))
  const width = Math.max(1, Math.round(bitmap.width * k))
  const height = Math.max(1, Math.round(bitmap.height * k))
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) throw new Error('no drawing surface')
  pen.imageSmoothingEnabled = false
  pen.drawImage(bitmap, 0, 0, width, height)
  return pen.getImageData(0, 0, width, height)
}

/** A worker of its own for one photo; it ends with its answer, and nothing of the photo is left in it. */
const clustersOf = ({ data, width, height }: ImageData): Promise<ColourCluster[]> =>
  new Promise((resolve, reject) => {
    const worker = startWorker('photo')
    worker.onmessage = ({ data: reply }: MessageEvent<PhotoReply>) => {
      worker.terminate()
      resolve(reply.clusters)
    }
    worker.onerror = (event) => {
      worker.terminate()
      reject(new Error(event.message))
    }
    worker.postMessage({ rgba: new Uint8ClampedArray(data), width, height } satisfies PhotoRequest)
  })

/**
 * Decodes a photo in the page, makes it small and finds its colours. Nothing of it is stored or sent.
 * @returns what is wrong in words for what is no picture, too large, broken or empty; it never throws
 */
export const readPhoto = async (file: File): Promise<PhotoRead> => {
  const opened = await openPhoto(file)
  if (!opened.ok) return opened
  const { name, bitmap } = opened
  try {
    const small = shrink(bitmap)
    const clusters = await clustersOf(small)
    return clusters.length > 0
      ? { ok: true, clusters, small }
      : refusedPhoto(`${name} shows nothing: all of it is transparent.`)
  } catch (why) {
    return refusedPhoto(`${name} could not be looked at: ${why instanceof Error ? why.message : String(why)}.`)
  } finally {
    bitmap.close()
  }
}
