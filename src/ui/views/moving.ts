import type { Arrangement } from '../../arrangement/index.ts'
import type { Sprite } from '../../drawing/index.ts'
import { projectPoint, type ResolvedStem } from '../../geometry/index.ts'
import type { Painter } from '../../state/index.ts'
import { writeVisible } from './composite.ts'
import { angleOf, type Layout, VIEWS, type ViewName } from './layout.ts'
import { FRESH_MS, newestOnly } from './newest.ts'
import { meet, type Patch, widenPatch } from './patch.ts'
import type { Pen } from './pen.ts'
import type { Still } from './stills.ts'

interface Asked {
  document: Arrangement
  ids: readonly string[]
  turn: number
  scale: number
}

export interface Moving {
  /** Stems to be drawn apart, from now on; none ends it. Fresh sprites are asked for. */
  follow(asked: Asked): void
  /**
   * Draws the moving stems of a view at their present tips, hidden where the still picture is nearer.
   * @param corner of the pen's canvas on the sheet
   * @param taken rectangles of the canvas that hold something, added to; all others are clear
   */
  draw(
    pen: Pen,
    corner: Patch,
    taken: Patch[],
    layout: Layout,
    view: ViewName,
    turn: number,
    stems: readonly ResolvedStem[],
    still: Still | null,
  ): void
  /** Widens a patch of the sheet so that it holds the moving stems of a view. */
  widen(patch: Patch, layout: Layout, view: ViewName, turn: number, stems: readonly ResolvedStem[]): void
  /** How often a stem in the hand was to be seen nowhere: no sprite had come, and the still picture had left it out. */
  misses(): number
  clear(): void
  stop(): void
}

/** Draws what the hand moves: the newest sprite that has come, at the newest place. */
export const createMoving = (painter: Painter, changed: () => void): Moving => {
  const sprites: Record<ViewName, Map<string, Sprite>> = { elevation: new Map(), plan: new Map() }
  let live = 0
  let missed = 0
  let stopped = false
  const scratch = document.createElement('canvas')
  const scratchPen = scratch.getContext('2d')
  let pixels: ImageData | null = null
  let packed = new Uint32Array(0)

  const laneOf = (view: ViewName) =>
    newestOnly<Asked & { since: number }>(async ({ document, ids, turn, scale, since }) => {
      const angle = angleOf(view, turn)
      const come = await painter.sprites(`drag ${view}`, document, ids, angle, scale, 'draft').catch(() => null)
      if (!come || stopped || since !== live) return
      for (const [id, sprite] of come) sprites[view].set(id, sprite)
      changed()
    }, FRESH_MS)
  const lanes = { elevation: laneOf('elevation'), plan: laneOf('plan') }

  const roomFor = (width: number, height: number): void => {
    if (pixels && pixels.width >= width && pixels.height >= height) return
    const w = Math.max(width, pixels?.width ?? 0)
    const h = Math.max(height, pixels?.height ?? 0)
    pixels = new ImageData(w, h)
    packed = new Uint32Array(pixels.data.buffer)
    scratch.width = w
    scratch.height = h
  }

  return {
    follow: (asked) => {
      for (const view of VIEWS) lanes[view].push({ ...asked, since: live })
    },
    draw: (pen, corner, taken, layout, view, turn, stems, still) => {
      if (!scratchPen) return
      const angle = angleOf(view, turn)
      const scale = layout.scale * layout.ratio
      const base = still?.picture ?? null
      const same = base !== null && base.frame.scale === scale && base.angle.turn === turn ? base : null
      const hidden = new Set(same && !same.options.without?.length ? stems.map((s) => s.index + 1) : [])
      const axisX = Math.round(layout.axisX * layout.ratio)
      const axisY = Math.round((view === 'elevation' ? layout.rimY : layout.planY) * layout.ratio)
      const placed = stems
        .map((stem) => ({ stem, at: projectPoint(stem.stem.tip, angle) }))
        .sort((a, b) => a.at[2] - b.at[2])
      for (const { stem, at } of placed) {
        const sprite = sprites[view].get(stem.id)
        if (!sprite) {
          if (base?.options.without?.includes(stem.id)) missed += 1
          continue
        }
        roomFor(sprite.width, sprite.height)
        if (!pixels) continue
        const x = Math.round(at[0] * scale)
        const y = Math.round(-at[1] * scale)
        const frameLeft = same ? Math.round(same.frame.left * scale) : 0
        const frameTop = same ? Math.round(same.frame.top * scale) : 0
        writeVisible(same, sprite, x - frameLeft, y + frameTop, at[2], packed, pixels.width, hidden)
        const { width, height } = sprite
        const left = axisX + x + sprite.left - corner.left
        const top = axisY + y + sprite.top - corner.top
        const place: Patch = { left, top, right: left + width, bottom: top + height }
        // Where nothing is yet the pixels are put down as they are: a canvas between costs a copy of it each frame.
        if (!taken.some((other) => meet(other, place))) pen.putImageData(pixels, left, top, 0, 0, width, height)
        else {
          scratchPen.putImageData(pixels, 0, 0, 0, 0, width, height)
          pen.setTransform(1, 0, 0, 1, 0, 0)
          pen.drawImage(scratch, 0, 0, width, height, left, top, width, height)
        }
        taken.push(place)
      }
    },
    widen: (patch, layout, view, turn, stems) => {
      const scale = layout.scale * layout.ratio
      const axisX = Math.round(layout.axisX * layout.ratio)
      const axisY = Math.round((view === 'elevation' ? layout.rimY : layout.planY) * layout.ratio)
      for (const stem of stems) {
        const sprite = sprites[view].get(stem.id)
        if (!sprite) continue
        const at = projectPoint(stem.stem.tip, angleOf(view, turn))
        const left = axisX + Math.round(at[0] * scale) + sprite.left
        const top = axisY + Math.round(-at[1] * scale) + sprite.top
        widenPatch(patch, left, top, left + sprite.width, top + sprite.height)
      }
    },
    misses: () => missed,
    clear: () => {
      live += 1
      for (const view of VIEWS) {
        lanes[view].clear()
        sprites[view].clear()
      }
    },
    stop: () => {
      stopped = true
      scratch.width = scratch.height = 0
      pixels = null
    },
  }
}
