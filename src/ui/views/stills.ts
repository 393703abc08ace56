import type { Arrangement } from '../../arrangement/index.ts'
import type { PaintedPicture, Painter } from '../../state/index.ts'
import { angleOf, frameOf, type Layout, VIEWS, type ViewName } from './layout.ts'
import type { Pen } from './pen.ts'

export interface Still {
  picture: PaintedPicture
  canvas: HTMLCanvasElement
}

export interface Wanted {
  document: Arrangement
  turn: number
  layout: Layout
  /** Stems that are moving, and drawn apart. */
  without: readonly string[]
}

/** How well a picture is painted: the first of something new comes as a sketch. */
type Level = 'sketch' | 'draft' | 'fine'

/** From so many stems on a draft of something new is long in coming. Ours. */
const MANY = 12

/** The hand rests after so long, ms. Ours. */
const REST_MS = 120
const NONE: readonly string[] = []

export interface Stills {
  of(view: ViewName): Still | null
  /** Asks for pictures: quick ones at once, careful ones when the hand rests. Asking for the same again does nothing. */
  want(wanted: Wanted): void
  /** Whether a view's picture leaves out just these stems. */
  isWithout(view: ViewName, ids: readonly string[]): boolean
  stop(): void
}

const sameIds = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((id, i) => id === b[i])

/** Keeps one picture a view, painted by the worker, never waited for. */
export const createStills = (painter: Painter, changed: () => void, failed: (why: string) => void): Stills => {
  const held: Record<ViewName, Still | null> = { elevation: null, plan: null }
  const flight: Record<ViewName, { level: Level; ticket: number } | null> = { elevation: null, plan: null }
  const waits: Record<ViewName, Level | null> = { elevation: null, plan: null }
  const sketched: Record<ViewName, Arrangement | null> = { elevation: null, plan: null }
  let now: Wanted | null = null
  let rest: ReturnType<typeof setTimeout> | undefined
  let ticket = 0
  let stopped = false

  const put = (view: ViewName, picture: PaintedPicture): void => {
    const canvas = held[view]?.canvas ?? document.createElement('canvas')
    if (canvas.width !== picture.width) canvas.width = picture.width
    if (canvas.height !== picture.height) canvas.height = picture.height
    const pixels = picture.rgba as Uint8ClampedArray<ArrayBuffer>
    canvas.getContext('2d')?.putImageData(new ImageData(pixels, picture.width, picture.height), 0, 0)
    held[view] = { picture, canvas }
    changed()
  }

  const paint = async (view: ViewName, level: Level): Promise<void> => {
    if (!now) return
    ticket += 1
    const mine = ticket
    flight[view] = { level, ticket: mine }
    waits[view] = null
    const { document, turn, layout, without } = now
    if (level === 'sketch') sketched[view] = document
    const quality = level === 'fine' ? ('fine' as const) : ('draft' as const)
    const section = view === 'elevation'
    const options = { quality, sketch: level === 'sketch', section, vessel: 'grey' as const, without }
    try {
      const picture = await painter.paint(view, document, angleOf(view, turn), frameOf(layout, view), options)
      if (picture && !stopped && flight[view]?.ticket === mine) put(view, picture)
    } catch (why) {
      failed(why instanceof Error ? why.message : String(why))
    }
    if (flight[view]?.ticket !== mine) return
    flight[view] = null
    const next = waits[view]
    if (stopped || (!next && level !== 'sketch')) return
    const fresh = now !== null && isNew(view, now.document)
    void paint(view, level === 'sketch' ? 'draft' : fresh ? 'sketch' : (next ?? 'draft'))
    // After a sketch a draft comes first, whatever waits.
    if ((level === 'sketch' || fresh) && next === 'fine') waits[view] = 'fine'
  }

  /** Most of what is to be shown is not in the picture that is there, and no sketch of it was asked for. */
  const isNew = (view: ViewName, document: Arrangement): boolean => {
    const { stems } = document
    if (stems.length < MANY || sketched[view] === document) return false
    const there = new Set(held[view]?.picture.document.stems)
    return stems.filter((s) => there.has(s)).length < stems.length / 2
  }

  const isWithout = (view: ViewName, ids: readonly string[]): boolean =>
    sameIds(held[view]?.picture.options.without ?? NONE, ids)

  return {
    of: (view) => held[view],
    isWithout,
    want: (wanted) => {
      const before = now
      if (
        before &&
        before.document === wanted.document &&
        before.turn === wanted.turn &&
        before.layout === wanted.layout &&
        sameIds(before.without, wanted.without)
      )
        return
      now = wanted
      clearTimeout(rest)
      // Quick pictures wait for each other, so that a turning hand sees every one that is done; nothing waits for a careful one,
      // and what a drag stands on goes first, as does the sketch of something new.
      const lifted = before !== null && !sameIds(before.without, wanted.without)
      for (const view of VIEWS) {
        const level = flight[view]?.level
        const fresh = isNew(view, wanted.document)
        if (!level || level === 'fine' || lifted || (fresh && level === 'draft'))
          void paint(view, fresh ? 'sketch' : 'draft')
        else waits[view] = 'draft'
      }
      rest = setTimeout(() => {
        for (const view of VIEWS) {
          if (flight[view]) waits[view] = 'fine'
          else void paint(view, 'fine')
        }
      }, REST_MS)
    },
    stop: () => {
      stopped = true
      clearTimeout(rest)
      for (const view of VIEWS) {
        const canvas = held[view]?.canvas
        if (canvas) canvas.width = canvas.height = 0
        held[view] = null
      }
    },
  }
}

/** Draws a view's picture under the present layout: on whole device px at its own scale, turned for a plan that is late. */
export const drawStill = (pen: Pen, layout: Layout, view: ViewName, turn: number, still: Still | null): void => {
  if (!still) return
  const { frame, angle } = still.picture
  const k = (layout.scale * layout.ratio) / frame.scale
  const baseX = Math.round(layout.axisX * layout.ratio)
  const baseY = Math.round((view === 'elevation' ? layout.rimY : layout.planY) * layout.ratio)
  pen.save()
  pen.setTransform(1, 0, 0, 1, baseX, baseY)
  const behind = turn - angle.turn
  if (view === 'plan' && behind !== 0) pen.rotate((-behind * Math.PI) / 180)
  const x = Math.round(frame.left * frame.scale)
  const y = -Math.round(frame.top * frame.scale)
  if (k === 1) pen.drawImage(still.canvas, x, y)
  else pen.drawImage(still.canvas, x * k, y * k, still.canvas.width * k, still.canvas.height * k)
  pen.restore()
}
