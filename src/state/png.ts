import type { PngReply, PngRequest } from './png.worker.ts'
import { startWorker } from './start-worker.ts'

/** Makes PNG files beside the page. */
export interface PngMaker {
  /** Null where this browser can't make one there; the bitmap is used up. */
  make(bitmap: ImageBitmap): Promise<Blob | null>
}

/** As much of a Worker as the client uses. */
export interface PngPort {
  postMessage(message: PngRequest, transfer: Transferable[]): void
  onmessage: ((event: MessageEvent<PngReply>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
}

/** The client of a worker that makes PNGs. */
export const createPngMaker = (port: PngPort): PngMaker => {
  let last = 0
  let broken = false
  const waiting = new Map<number, (blob: Blob | null) => void>()
  port.onmessage = ({ data: { ticket, blob } }) => {
    waiting.get(ticket)?.(blob)
    waiting.delete(ticket)
  }
  port.onerror = () => {
    broken = true
    for (const resolve of waiting.values()) resolve(null)
    waiting.clear()
  }
  return {
    make: (bitmap) => {
      if (broken) return Promise.resolve(null)
      last += 1
      const ticket = last
      return new Promise((resolve) => {
        waiting.set(ticket, resolve)
        port.postMessage({ ticket, bitmap }, [bitmap])
      })
    },
  }
}

let started: PngMaker | null = null

/**
 * The one PNG maker of the page; its worker starts with the first call. A page that makes a PNG of a canvas itself waits until
 * it has nothing else to do, up to a second (Chromium's `toBlob`).
 */
export const pngMaker = (): PngMaker => {
  started ??= createPngMaker(startWorker('png'))
  return started
}
