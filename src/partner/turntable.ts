import type { Arrangement } from '../arrangement/index.ts'
import { type Cache, createCache, type Frame, keep, recall } from '../drawing/index.ts'
import type { Ask, Level, Port, Reply, Size, View } from './protocol.ts'
import { nextJob } from './turns.ts'

/** A painted picture as the page keeps it. */
export interface Seen {
  view: View
  level: Level
  image: ImageData
  frame: Frame
}

/** Pictures that are kept, bytes: about thirty quick looks on a phone. Ours. */
const KEPT_BYTES = 40 * 1024 * 1024

export interface Turntable {
  /** Shows this view: at once what is there of it, then better and better. `moving` while a finger turns it. */
  show(view: View, moving: boolean): void
  /** CSS px of the drawing and device pixels in each. What was painted for another size is forgotten. */
  resize(width: number, height: number, ratio: number): void
  stop(): void
}

const keyOf = ({ which, turn, light }: View): string => `${which} ${turn} ${light}`

/**
 * Drives the painter at the other end of a port, one request at a time.
 * @param open makes the port; called again, with `true`, should the first one break
 * @param onSeen a picture of the view that is shown now
 */
export const createTurntable = (
  open: (broken: boolean, onBroken: () => void) => Port<Ask, Reply>,
  documents: Arrangement[],
  onSeen: (seen: Seen) => void,
): Turntable => {
  let cache: Cache = createCache(KEPT_BYTES)
  let port: Port<Ask, Reply> | null = null
  let view: View | null = null
  let [moving, empty, stopped] = [false, true, false]
  let size = { width: 0, height: 0, ratio: 1 }
  let asked: { ticket: number; view: View; level: Level } | null = null
  let last = 0

  const begin = (broken: boolean): void => {
    port = open(broken, () => {
      if (stopped || broken) return
      asked = null
      begin(true)
      pump()
    })
    port.onmessage = ({ data }) => take(data)
    port.postMessage({ kind: 'designs', documents })
  }
  const seenOf = (at: View): Seen | undefined => recall<Seen>(cache, keyOf(at))
  const drop = (): void => {
    if (asked) port?.postMessage({ kind: 'drop', ticket: asked.ticket })
    asked = null
  }
  const take = (reply: Reply): void => {
    if (!asked || reply.ticket !== asked.ticket) return
    const done = asked
    asked = null
    if ('failed' in reply) return
    const { width, height, rgba, frame } = reply.painted
    const seen: Seen = { view: done.view, level: done.level, image: new ImageData(rgba, width, height), frame }
    keep(cache, keyOf(done.view), seen, rgba.byteLength)
    if (view && keyOf(done.view) === keyOf(view)) {
      empty = false
      onSeen(seen)
    }
    pump()
  }
  const pump = (): void => {
    if (!view || size.width === 0 || stopped) return
    const now = view
    const job = nextJob(now.turn, moving, empty, (turn) => seenOf({ ...now, turn })?.level ?? null)
    const wanted = job && { ...now, turn: job.turn }
    if (asked && wanted && keyOf(asked.view) === keyOf(wanted) && asked.level === job.level) return
    drop()
    if (!wanted) return
    if (!port) begin(false)
    last += 1
    asked = { ticket: last, view: wanted, level: job.level }
    const ratio = job.level === 'fine' ? size.ratio : 1
    const pixels: Size = { width: Math.round(size.width * ratio), height: Math.round(size.height * ratio) }
    port?.postMessage({ kind: 'paint', ticket: last, view: wanted, size: pixels, level: job.level })
  }
  return {
    show: (next, isMoving) => {
      view = next
      moving = isMoving
      const seen = seenOf(next)
      if (seen) onSeen(seen)
      pump()
    },
    resize: (width, height, ratio) => {
      if (width === size.width && height === size.height && ratio === size.ratio) return
      size = { width, height, ratio }
      cache = createCache(KEPT_BYTES)
      drop()
      pump()
    },
    stop: () => {
      stopped = true
      drop()
      port?.terminate?.()
    },
  }
}
