import type { KeyboardEvent } from 'react'
import type { Point2 } from '../../../arrangement/index.ts'
import type { Photo } from '../../../geometry/index.ts'

/** Pixels of the photo that an arrow key moves a handle; with Shift more. */
const STEP = 1
const LARGE_STEP = 10
const ARROWS: Record<string, Point2> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** One handle on the photo: what it is called, where it is (pixels of the photo), and what moving it does. */
export interface HandleAt {
  kind: 'rim' | 'base' | 'side'
  key: string
  name: string
  at: Point2
  onMove: (to: Point2) => void
  onDrop?: () => void
}

const SHAPES: Record<HandleAt['kind'], string> = {
  // Two bars where the rim is, a wedge on which the base stands, a ring at the side.
  rim: 'M-3 -7V7M3 -7V7',
  base: 'M0 -1L7 8H-7Z',
  side: 'M5 0A5 5 0 1 1 -5 0A5 5 0 1 1 5 0Z',
}

/** A handle for the keys: arrows (Shift: ten pixels), Delete. The pointer is the plate's business. */
export const Handle = ({ handle, photo, describedBy }: { handle: HandleAt; photo: Photo; describedBy: string }) => {
  const { kind, name, at, onMove, onDrop } = handle
  const onKey = (event: KeyboardEvent): void => {
    const way = ARROWS[event.key]
    if (event.key === 'Delete' && onDrop) onDrop()
    else if (way && !event.ctrlKey && !event.metaKey && !event.altKey) {
      const by = event.shiftKey ? LARGE_STEP : STEP
      onMove([at[0] + way[0] * by, at[1] + way[1] * by])
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <button
      type="button"
      className="plate-handle"
      data-handle={handle.key}
      style={{ left: `${(at[0] / photo.width) * 100}%`, top: `${(at[1] / photo.height) * 100}%` }}
      aria-label={name}
      aria-describedby={describedBy}
      onKeyDown={onKey}
    >
      <svg width={20} height={20} viewBox="-10 -10 20 20" aria-hidden="true">
        <path className="halo" d={SHAPES[kind]} />
        <path className="core" d={SHAPES[kind]} />
      </svg>
    </button>
  )
}
