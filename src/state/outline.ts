import type { Frame, Outline } from '../geometry/index.ts'
import { type PhotoRefused, refusedPhoto } from './open-photo.ts'
import type { OutlineReply, OutlineRequest, PhotoTaken } from './outline.worker.ts'
import { startWorker } from './start-worker.ts'

/** One photo of a vessel in a worker of its own: decoding, making smaller and tracing never hold up the page. */
export interface PhotoBench {
  taken: PhotoTaken
  /** The outline about a frame; null where too little wall lies beside it. */
  trace(frame: Frame): Promise<Outline | null>
  /** Ends the worker; nothing of the photo is left in it. */
  close(): void
}

/**
 * Takes a photo to be traced. Nothing of it is stored or sent. It never throws.
 * @returns what is wrong in words for what is no picture, too large, too small, empty or broken
 */
export const benchFor = async (file: File): Promise<{ ok: true; bench: PhotoBench } | PhotoRefused> => {
  const worker = startWorker('outline')
  const waiting = new Map<number, (reply: OutlineReply | null) => void>()
  let last = 0
  const end = (): void => {
    worker.terminate()
    for (const done of waiting.values()) done(null)
    waiting.clear()
  }
  worker.onmessage = ({ data }: MessageEvent<OutlineReply>) => {
    waiting.get(data.ticket)?.(data)
    waiting.delete(data.ticket)
  }
  worker.onerror = end
  const ask = (what: { file: File } | { frame: Frame }): Promise<OutlineReply | null> =>
    new Promise((done) => {
      last += 1
      waiting.set(last, done)
      worker.postMessage({ ticket: last, ...what } satisfies OutlineRequest)
    })
  const reply = await ask({ file })
  const taken = reply && 'taken' in reply ? reply.taken : refusedPhoto('The photo could not be looked at.')
  if (!taken.ok) {
    end()
    return taken
  }
  const trace = async (frame: Frame): Promise<Outline | null> => {
    const traced = await ask({ frame })
    return traced && 'outline' in traced ? traced.outline : null
  }
  return { ok: true, bench: { taken, trace, close: end } }
}
