import type { Patch } from './patch.ts'
import type { Pen } from './pen.ts'

export interface Draw {
  still(pen: Pen): void
  /** Whether the marks that were drawn last are no longer what they should be. */
  stale(): boolean
  live(pen: Pen): void
  /** Where what is in the hand is drawn; null when nothing is. */
  patch(): Patch | null
  hand(pen: Pen, patch: Patch): void
}

/** Canvases one over the other, drawn with the next frame when asked to. */
export interface Layers {
  /** What stands, and what may change while the hand moves. */
  still(): void
  live(): void
  /** CSS px, and device px to one of them. */
  size(width: number, height: number, ratio: number): void
  stop(): void
}

/** The patch of the hand grows by steps, or every few frames would need a new canvas, device px. Ours. */
const STEP_PX = 64

interface Sheet {
  canvas: HTMLCanvasElement
  draw(ratio: number): void
}

/** A canvas that covers its element; what is painted is measured in CSS px. */
const sheetOf = (container: HTMLElement, paint: (pen: Pen) => void): Sheet => {
  const canvas = document.createElement('canvas')
  canvas.style.cssText = 'position:absolute;left:0;top:0'
  container.append(canvas)
  const pen = canvas.getContext('2d')
  return {
    canvas,
    draw: (ratio) => {
      if (!pen) return
      pen.setTransform(1, 0, 0, 1, 0, 0)
      pen.clearRect(0, 0, canvas.width, canvas.height)
      pen.save()
      pen.scale(ratio, ratio)
      paint(pen)
      pen.restore()
    },
  }
}

/**
 * Lays the layers of the views into an element: what stands, what is in the hand, marks over both. A browser copies and
 * puts together whole canvases, so the hand has one of its own that is no larger than what moves and goes along with it.
 * Two canvases and a frame are all that is needed here; a library of shapes for it was a tenth of all scripts.
 */
export const layInto = (container: HTMLDivElement, draw: Draw): Layers => {
  const room = document.createElement('div')
  room.style.position = 'relative'
  container.append(room)
  const wanted = { still: false, live: false, fresh: true }
  let ratio = 1
  let frame = 0
  const still = sheetOf(room, draw.still)
  const hand = document.createElement('canvas')
  hand.style.cssText = 'position:absolute;left:0;top:0;transform-origin:0 0'
  hand.style.display = 'none'
  room.append(hand)
  const live = sheetOf(room, draw.live)
  const pen = hand.getContext('2d')

  const drawHand = (): void => {
    const patch = draw.patch()
    if (!patch || !pen) {
      hand.style.display = 'none'
      if (hand.width > 1) hand.width = hand.height = 1
      return
    }
    const stepped = (px: number): number => Math.ceil(px / STEP_PX) * STEP_PX
    const width = Math.max(hand.width, stepped(patch.right - patch.left))
    const height = Math.max(hand.height, stepped(patch.bottom - patch.top))
    if (width === hand.width && height === hand.height) {
      pen.setTransform(1, 0, 0, 1, 0, 0)
      pen.clearRect(0, 0, width, height)
    } else {
      hand.width = width
      hand.height = height
    }
    hand.style.transform = `translate(${patch.left / ratio}px, ${patch.top / ratio}px) scale(${1 / ratio})`
    hand.style.display = 'block'
    draw.hand(pen, patch)
  }
  // All in one frame, so that what is put down leaves one layer as it comes into the other.
  const drawFrame = (): void => {
    frame = 0
    if (wanted.still) still.draw(ratio)
    if (wanted.live) {
      drawHand()
      if (wanted.fresh || draw.stale()) live.draw(ratio)
    }
    wanted.still = wanted.live = wanted.fresh = false
  }
  const want = (which: 'still' | 'live'): void => {
    wanted[which] = true
    frame ||= requestAnimationFrame(drawFrame)
  }
  return {
    still: () => want('still'),
    live: () => want('live'),
    size: (width, height, next) => {
      ratio = next
      room.style.width = `${width}px`
      room.style.height = `${height}px`
      for (const { canvas } of [still, live]) {
        canvas.width = Math.floor(width * ratio)
        canvas.height = Math.floor(height * ratio)
        canvas.style.width = `${width}px`
        canvas.style.height = `${height}px`
      }
      wanted.fresh = true
      want('still')
      want('live')
    },
    stop: () => {
      cancelAnimationFrame(frame)
      // Some phones keep the memory of a canvas until it is made small.
      for (const { canvas } of [still, live]) canvas.width = canvas.height = 0
      hand.width = hand.height = 0
      room.remove()
    },
  }
}
