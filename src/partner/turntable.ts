import type { Arrangement } from '../arrangement/index.ts'
import { createCache, type Frame, keep, recall } from '../drawing/index.ts'
import { type Ask, LEVELS, type Level, type Port, type Reply, type Size, type View } from './protocol.ts'
import { nextJob, shownFor } from './turns.ts'

/** A painted picture as the page keeps it. */
export interface Seen {
  view: View
  level: Level
  image: ImageData
  frame: Frame
}

/**
 * Pictures that are kept, bytes. Glances: one from each of the 48 ways round, and one of each palette. Looks: the quick ones,
 * and as much again as two of the flowers in full take. Ours.
 */
const GLANCES_BYTES = 24 * 1024 * 1024
const LOOKS_BYTES = 16 * 1024 * 1024
/** Quick looks are painted ahead so many steps to either side, where they can be kept. Ours. */
const AHEAD = 4
/** A glance has two thirds of the drawing's CSS pixels along each side, and no more than so many in all. Ours. */
const GLANCE = { share: 2 / 3, most: 110_000 } as const

const keyOf = ({ which, turn, light }: View): string => `${which} ${turn} ${light}`

/** Device pixels that a picture is painted in; quick looks are painted in CSS pixels. */
const sizeFor = (level: Level, width: number, height: number, ratio: number): Size => {
  const k =
    level === 'fine'
      ? ratio
      : level === 'glance'
        ? Math.min(GLANCE.share, Math.sqrt(GLANCE.most / (width * height)))
        : 1
  return { width: Math.max(1, Math.round(width * k)), height: Math.max(1, Math.round(height * k)) }
}

/** What is kept for a drawing of so many CSS pixels. The two give up nothing for each other: no picture is painted over and over. */
const keptFor = (width: number, height: number, ratio: number) => {
  const bytes = (level: Level): number => {
    const size = sizeFor(level, width, height, ratio)
    return size.width * size.height * 4
  }
  return {
    glances: createCache(GLANCES_BYTES),
    looks: createCache(LOOKS_BYTES + 2 * bytes('fine')),
    ahead: Math.min(AHEAD, Math.floor(LOOKS_BYTES / (2 * bytes('draft')))),
  }
}

export interface Turntable {
  /** Shows this view: at once the nearest that is there of it, then better and better. `moving` while a finger turns it. */
  show(view: View, moving: boolean): void
  /** CSS px of the drawing and device pixels in each. What was painted for another size is forgotten. */
  resize(width: number, height: number, ratio: number): void
  stop(): void
}

/**
 * Drives the painter at the other end of a port, one request at a time.
 * @param open makes the port; called again, with `true`, should the first one break
 * @param onSeen the picture to be shown now: of the view, or of one near to it
 * @param onFailed why one could not be painted, in words
 */
export const createTurntable = (
  open: (broken: boolean, onBroken: () => void) => Port<Ask, Reply>,
  documents: Arrangement[],
  onSeen: (seen: Seen) => void,
  onFailed: (why: string) => void,
): Turntable => {
  let kept = keptFor(1, 1, 1)
  let port: Port<Ask, Reply> | null = null
  let view: View | null = null
  let shown: Seen | null = null
  let [moving, empty, built, stopped] = [false, true, false, false]
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
  /** How well a view is painted; it counts as asked for only when it is shown. */
  const levelOf = (at: View): Level | null => {
    const key = keyOf(at)
    const found = [kept.looks, kept.glances].flatMap((c) => (c.kept.get(key)?.value as Seen | undefined)?.level ?? [])
    return found.sort((a, b) => LEVELS.indexOf(b) - LEVELS.indexOf(a))[0] ?? null
  }
  const seenOf = (at: View): Seen | undefined =>
    recall<Seen>(levelOf(at) === 'glance' ? kept.glances : kept.looks, keyOf(at))
  /** What is there for a view, if anything is. */
  const showNearest = (at: View): void => {
    const turn = shownFor(at.turn, (t) => levelOf({ ...at, turn: t }))
    const seen = turn === null ? undefined : seenOf({ ...at, turn })
    if (!seen || seen === shown) return
    empty = false
    shown = seen
    onSeen(seen)
  }
  const drop = (): void => {
    if (asked) port?.postMessage({ kind: 'drop', ticket: asked.ticket })
    asked = null
  }
  const take = (reply: Reply): void => {
    if (!asked || reply.ticket !== asked.ticket) return
    const done = asked
    asked = null
    if ('failed' in reply) return onFailed(reply.failed)
    const { width, height, rgba, frame } = reply.painted
    const seen: Seen = { view: done.view, level: done.level, image: new ImageData(rgba, width, height), frame }
    keep(done.level === 'glance' ? kept.glances : kept.looks, keyOf(done.view), seen, rgba.byteLength)
    if (done.level !== 'sketch') built = true
    if (view && done.view.which === view.which && done.view.light === view.light) showNearest(view)
    pump()
  }
  const pump = (): void => {
    if (!view || size.width === 0 || stopped) return
    const now = view
    const { which, turn, light } = now
    const has = (w: number, t: number): Level | null => levelOf({ which: w, turn: t, light })
    const job = nextJob({ which, turn, palettes: documents.length, moving, empty, ahead: kept.ahead, built, has })
    const wanted = job && { which: job.which, turn: job.turn, light }
    if (asked && wanted && keyOf(asked.view) === keyOf(wanted) && asked.level === job.level) return
    // A glance is nearly done, and will be passed again: dropping it at every step of a finger would leave none.
    if (asked?.level === 'glance' && built && asked.view.which === which && asked.view.light === light) return
    drop()
    if (!wanted) return
    if (!port) begin(false)
    last += 1
    asked = { ticket: last, view: wanted, level: job.level }
    const pixels = sizeFor(job.level, size.width, size.height, size.ratio)
    port?.postMessage({ kind: 'paint', ticket: last, view: wanted, size: pixels, level: job.level })
  }
  return {
    show: (next, isMoving) => {
      view = next
      moving = isMoving
      showNearest(next)
      pump()
    },
    resize: (width, height, ratio) => {
      if (width === size.width && height === size.height && ratio === size.ratio) return
      size = { width, height, ratio }
      kept = keptFor(width, height, ratio)
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
