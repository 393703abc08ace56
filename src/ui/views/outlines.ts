import type { Arrangement, Stem, Vessel } from '../../arrangement/index.ts'
import type { ResolvedStem } from '../../geometry/index.ts'
import type { Painter } from '../../state/index.ts'
import { angleOf, type Layout, VIEWS, type ViewName } from './layout.ts'
import { FRESH_MS, newestOnly } from './newest.ts'
import { strokeTwo, TONES } from './pen.ts'

interface Held {
  stem: Stem
  vessel: Vessel
  turn: number
  /** mm relative to the tip, up positive. */
  lines: number[][]
  /** The lines as a path in CSS px relative to the tip, and the scale at which it was made. */
  path: Path2D | null
  scale: number
  /** The path as drawn in the tones of the selection, for stems in the hand. */
  stamp: Stamp | null
}

/** Something drawn once, to be set down again and again; its corner relative to the tip, device px. */
export interface Stamp {
  of: Path2D
  ratio: number
  canvas: HTMLCanvasElement
  left: number
  top: number
}

/** Half of the halo's width, and a px for soft edges. */
const ROUND_PX = TONES.select.halo / 2 + 1

/** Stroking an outline of hundreds of corners takes as long as painting fifty sprites: in a drag it is done once for several frames. */
const stampOf = ({ lines, path, stamp }: Held, { scale, ratio }: Layout): Stamp | null => {
  if (!path) return null
  if (stamp?.of === path && stamp.ratio === ratio) return stamp
  let [left, top, right, bottom] = [0, 0, 0, 0]
  for (const points of lines)
    for (let i = 0; i < points.length; i += 2) {
      left = Math.min(left, points[i]!)
      right = Math.max(right, points[i]!)
      bottom = Math.min(bottom, points[i + 1]!)
      top = Math.max(top, points[i + 1]!)
    }
  const canvas = stamp?.canvas ?? document.createElement('canvas')
  const corner = [Math.floor((left * scale - ROUND_PX) * ratio), Math.floor((-top * scale - ROUND_PX) * ratio)] as const
  canvas.width = Math.ceil((right * scale + ROUND_PX) * ratio) - corner[0]
  canvas.height = Math.ceil((-bottom * scale + ROUND_PX) * ratio) - corner[1]
  const pen = canvas.getContext('2d')
  if (!pen) return null
  pen.setTransform(ratio, 0, 0, ratio, -corner[0], -corner[1])
  strokeTwo(pen, TONES.select, path)
  return { of: path, ratio, canvas, left: corner[0], top: corner[1] }
}

/** Lines as a path in CSS px relative to the tip, at a scale. */
export const pathAt = (lines: readonly number[][], scale: number): Path2D => {
  const path = new Path2D()
  for (const points of lines) {
    for (let i = 0; i < points.length; i += 2) {
      if (i === 0) path.moveTo(points[0]! * scale, -points[1]! * scale)
      else path.lineTo(points[i]! * scale, -points[i + 1]! * scale)
    }
    path.closePath()
  }
  return path
}

/** At most so many outlines are kept up to date; more would cover the flowers. Ours. */
export const MOST_OUTLINES = 60

export interface Outlines {
  /** Asks for what is not there yet: these stems as they are in this document, seen at this turn. */
  want(document: Arrangement, stems: readonly ResolvedStem[], turn: number): void
  /** The outline, CSS px relative to the stem's tip; the last one known while the newest is on its way. */
  path(layout: Layout, view: ViewName, turn: number, stem: ResolvedStem): Path2D | null
  /** The same as drawn for a selected stem, made once for each outline that comes. */
  stamp(layout: Layout, view: ViewName, turn: number, stem: ResolvedStem): Stamp | null
  /** How many outlines have come of stems that are not among these. */
  count(without: readonly string[]): number
  stop(): void
}

export const createOutlines = (painter: Painter, changed: () => void): Outlines => {
  const held = new Map<string, Held>()
  const asked = new Map<string, { stem: Stem; vessel: Vessel }>()
  const come = new Map<string, number>()
  let stopped = false

  interface Job {
    document: Arrangement
    stem: ResolvedStem
    turn: number
    view: ViewName
  }
  const lanes = new Map<string, { push(job: Job): void }>()
  const laneOf = (key: string) => {
    const known = lanes.get(key)
    if (known) return known
    const made = newestOnly<Job>(async ({ document, stem, turn, view }) => {
      const lines = await painter.contour(document, stem.id, angleOf(view, turn)).catch(() => null)
      if (!lines || stopped) return
      held.set(key, {
        stem: stem.stem,
        vessel: document.vessel,
        turn,
        lines,
        scale: 0,
        path: null,
        stamp: held.get(key)?.stamp ?? null,
      })
      come.set(stem.id, (come.get(stem.id) ?? 0) + 1)
      changed()
    }, FRESH_MS)
    lanes.set(key, made)
    return made
  }

  const pathOf = (layout: Layout, view: ViewName, turn: number, stem: ResolvedStem): Held | null => {
    const known = held.get(`${view} ${stem.id}`)
    if (!known || known.turn !== turn) return null
    if (!known.path || known.scale !== layout.scale) {
      known.path = pathAt(known.lines, layout.scale)
      known.scale = layout.scale
    }
    return known
  }

  return {
    want: (document, stems, turn) => {
      const kept = new Set<string>()
      for (const stem of stems.slice(0, MOST_OUTLINES))
        for (const view of VIEWS) {
          const key = `${view} ${stem.id}`
          kept.add(key)
          const known = held.get(key)
          const askKey = `${key} ${turn}`
          if (known?.stem === stem.stem && known.vessel === document.vessel && known.turn === turn) continue
          const before = asked.get(askKey)
          if (before?.stem === stem.stem && before.vessel === document.vessel) continue
          asked.set(askKey, { stem: stem.stem, vessel: document.vessel })
          laneOf(key).push({ document, stem, turn, view })
        }
      if (asked.size > 8 * MOST_OUTLINES) asked.clear()
      for (const key of held.keys())
        if (!kept.has(key)) {
          held.delete(key)
          lanes.delete(key)
          for (const ask of asked.keys()) if (ask.startsWith(`${key} `)) asked.delete(ask)
        }
    },
    path: (layout, view, turn, stem) => pathOf(layout, view, turn, stem)?.path ?? null,
    stamp: (layout, view, turn, stem) => {
      const known = pathOf(layout, view, turn, stem)
      if (!known) return null
      known.stamp = stampOf(known, layout)
      return known.stamp
    },
    count: (without) => {
      let count = 0
      for (const [id, times] of come) if (!without.includes(id)) count += times
      return count
    },
    stop: () => {
      stopped = true
      held.clear()
    },
  }
}
