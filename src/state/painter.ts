import type { Arrangement } from '../arrangement/index.ts'
import type { Frame, PaintOptions, Picture, PlatePiece, Quality, Reach, Sprite, ViewAngle } from '../drawing/index.ts'
import type { Fit, Given, PaintJob, PaintReply, PaintRequest } from './painter.worker.ts'
import { startWorker } from './start-worker.ts'

/** A picture with what it shows. */
export interface PaintedPicture extends Picture {
  frame: Frame
  angle: ViewAngle
  options: PaintOptions
  /** The document as it was asked for: the same object. */
  document: Arrangement
}

/** Asks for pictures. In every lane the newest request wins: one that was overtaken gives null, and none comes late. */
export interface Painter {
  paint(
    lane: string,
    document: Arrangement,
    angle: ViewAngle,
    frame: Frame | Fit,
    options: PaintOptions,
  ): Promise<PaintedPicture | null>
  /** What holds everything, seen from each of these angles, mm. */
  boxes(lane: string, document: Arrangement, angles: readonly ViewAngle[]): Promise<Omit<Frame, 'scale'>[] | null>
  /** How far blooms and leaves reach seen level from a turn, mm; null as well where there are none. */
  reach(document: Arrangement, turn: number): Promise<Reach | null>
  /** Stems alone, by id, to be drawn at their tips; before all stills. */
  sprites(
    lane: string,
    document: Arrangement,
    ids: readonly string[],
    angle: ViewAngle,
    scale: number,
    quality: Quality,
  ): Promise<Map<string, Sprite> | null>
  /** Hands over sprites that another painter has made, so that a picture that is under way finds them; they are used up. */
  give(given: Given): void
  /** A plant on a short stem; `left` and `top` are the corner relative to the tip. Kept, so asking again is free. */
  plate(plant: string, colour: string, openness: number, scale: number, as?: PlatePiece | null): Promise<Sprite>
  /** Closed lines x, y, x, y … mm relative to the tip as seen, up positive; null when overtaken (lane `contour id`). */
  contour(document: Arrangement, id: string, angle: ViewAngle): Promise<number[][] | null>
  stop(): void
}

/** As much of a Worker as the client uses. */
export interface PaintPort {
  postMessage(message: PaintRequest, transfer?: Transferable[]): void
  onmessage: ((event: MessageEvent<PaintReply>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
  terminate(): void
}

interface Waiting {
  lane: string
  resolve: (value: unknown) => void
  reject: (why: Error) => void
}

/** Plates that are kept in the page: more than any list shows. Ours. */
const MOST_PLATES = 300

/** Each message is a copy: of hundreds of stems most would be copied many times a second for nothing. */
const onlyOf = (document: Arrangement, ids: readonly string[]): Arrangement => {
  const wanted = new Set(ids)
  return { ...document, stems: document.stems.filter((s) => wanted.has(s.id)) }
}

/** The client of a painting worker. */
export const createPainter = (port: PaintPort): Painter => {
  let last = 0
  const waiting = new Map<number, Waiting>()
  const newest = new Map<string, number>()
  const plates = new Map<string, Promise<Sprite>>()

  const settle = (ticket: number): Waiting | undefined => {
    const known = waiting.get(ticket)
    waiting.delete(ticket)
    if (known && newest.get(known.lane) === ticket) newest.delete(known.lane)
    return known
  }
  const ask = (lane: string, job: PaintJob): Promise<unknown> => {
    last += 1
    const ticket = last
    const overtaken = newest.get(lane)
    if (overtaken !== undefined) {
      port.postMessage({ ticket: overtaken, job: null })
      settle(overtaken)?.resolve(null)
    }
    newest.set(lane, ticket)
    return new Promise((resolve, reject) => {
      waiting.set(ticket, { lane, resolve, reject })
      port.postMessage({ ticket, job })
    })
  }
  port.onmessage = ({ data }) => {
    const known = settle(data.ticket)
    if (data.error !== undefined) known?.reject(new Error(data.error))
    else known?.resolve(data.value)
  }
  port.onerror = (event) => {
    for (const ticket of [...waiting.keys()]) settle(ticket)?.reject(new Error(`The drawing stopped: ${event.message}`))
  }

  return {
    paint: async (lane, document, angle, frame, options) => {
      const picture = (await ask(`paint ${lane}`, { kind: 'paint', document, angle, frame, options })) as
        | (Picture & { frame: Frame })
        | null
      return picture && { ...picture, angle, options, document }
    },
    boxes: (lane, document, angles) =>
      ask(`boxes ${lane}`, { kind: 'boxes', document, angles: [...angles] }) as Promise<Omit<Frame, 'scale'>[] | null>,
    reach: (document, turn) => ask('reach', { kind: 'reach', document, turn }) as Promise<Reach | null>,
    sprites: (lane, document, ids, angle, scale, quality) =>
      ask(`sprites ${lane}`, {
        kind: 'sprites',
        document: onlyOf(document, ids),
        ids: [...ids],
        angle,
        scale,
        quality,
      }) as Promise<Map<string, Sprite> | null>,
    give: (given) => {
      const buffers = [...given.sprites.values()].flatMap(({ rgba, depth }) => [rgba.buffer, depth.buffer])
      const document = onlyOf(given.document, [...given.sprites.keys()])
      port.postMessage({ ticket: 0, job: { kind: 'give', ...given, document } }, buffers as ArrayBuffer[])
    },
    plate: (plant, colour, openness, scale, as = null) => {
      const key = `${plant} ${colour} ${openness} ${scale}${as ? ` ${as.piece} ${as.head_mm}` : ''}`
      const known = plates.get(key)
      if (known) return known
      const made = ask(`plate ${key}`, { kind: 'plate', plant, colour, openness, scale, as }) as Promise<Sprite>
      if (plates.size >= MOST_PLATES) plates.delete(plates.keys().next().value!)
      plates.set(key, made)
      made.catch(() => plates.delete(key))
      return made
    },
    contour: (document, id, angle) =>
      ask(`contour ${id} ${angle.pitch}`, { kind: 'contour', document: onlyOf(document, [id]), id, angle }) as Promise<
        number[][] | null
      >,
    stop: () => {
      port.terminate()
      for (const ticket of [...waiting.keys()]) settle(ticket)?.resolve(null)
    },
  }
}

/** A painter with a worker of its own. `stop()` ends it. */
export const startPainting = (): Painter => createPainter(startWorker('painter'))
