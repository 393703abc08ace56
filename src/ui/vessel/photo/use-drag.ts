import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import type { Point2 } from '../../../arrangement/index.ts'
import type { Photo } from '../../../geometry/index.ts'
import type { HandleAt } from './handle.tsx'

/** A handle is taken from so far away, CSS px: half of a target of 28, by finger of 44. */
const REACH = { mouse: 14, touch: 22 } as const

interface Held {
  key: string
  pointer: number
  grip: Point2
  began: Point2
}

/**
 * Dragging of handles on the photo. The nearest one is taken, also where their targets lie over one another. Escape, or a
 * pointer that is taken away, puts it back.
 */
export const useDrag = (photo: Photo, handles: readonly HandleAt[]) => {
  const held = useRef<Held | null>(null)
  const placeOf = (event: PointerEvent<HTMLElement>): { at: Point2; scale: number } => {
    const plate = event.currentTarget.getBoundingClientRect()
    const scale = photo.width / plate.width
    return { at: [(event.clientX - plate.left) * scale, (event.clientY - plate.top) * scale], scale }
  }
  const letGo = (putBack: boolean): void => {
    const was = held.current
    held.current = null
    if (was && putBack) handles.find((h) => h.key === was.key)?.onMove(was.began)
  }
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0 || held.current) return
      const { at, scale } = placeOf(event)
      const away = (h: HandleAt): number => Math.hypot(h.at[0] - at[0], h.at[1] - at[1]) / scale
      const nearest = handles.reduce<HandleAt | null>((best, h) => (best && away(best) <= away(h) ? best : h), null)
      if (!nearest || away(nearest) > (event.pointerType === 'touch' ? REACH.touch : REACH.mouse)) return
      event.preventDefault()
      event.currentTarget.setPointerCapture(event.pointerId)
      event.currentTarget.querySelector<HTMLElement>(`[data-handle="${nearest.key}"]`)?.focus({ preventScroll: true })
      const grip: Point2 = [nearest.at[0] - at[0], nearest.at[1] - at[1]]
      held.current = { key: nearest.key, pointer: event.pointerId, grip, began: nearest.at }
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const now = held.current
      if (now?.pointer !== event.pointerId) return
      const [x, y] = placeOf(event).at
      handles.find((h) => h.key === now.key)?.onMove([x + now.grip[0], y + now.grip[1]])
    },
    onPointerUp: () => letGo(false),
    onPointerCancel: () => letGo(true),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !held.current) return
      letGo(true)
      event.preventDefault()
      event.stopPropagation()
    },
  }
}
