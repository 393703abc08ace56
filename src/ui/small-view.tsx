import { useEffect, useMemo, useRef } from 'react'
import type { Arrangement, Light } from '../arrangement/index.ts'
import type { Picture, ViewAngle } from '../drawing/index.ts'
import type { PaintedPicture } from '../state/index.ts'
import { painter } from './painter.ts'

interface Props {
  document: Arrangement
  /** CSS px of the drawing's own grid; it shrinks to the space there is. */
  width: number
  height: number
  /** Newest request of a lane wins. */
  lane: string
  /** What it shows, in words; '' where the words beside it say it. */
  label: string
  angle?: ViewAngle
  /** As it is seen in this light; daylight if left out. */
  light?: Light
  /** Paints what lies behind the arrangement, in pixels of the picture. The same function as long as it does the same. */
  ground?: (pen: CanvasRenderingContext2D, painted: PaintedPicture) => void
}

const FRONT: ViewAngle = { turn: 0, pitch: 0 }

/** Puts a picture of the painter on a canvas. */
export const putPicture = (canvas: HTMLCanvasElement, { width, height, rgba }: Picture): void => {
  canvas.width = width
  canvas.height = height
  canvas.getContext('2d')?.putImageData(new ImageData(new Uint8ClampedArray(rgba), width, height), 0, 0)
}

/** The same over a ground. */
const putOnGround = (
  canvas: HTMLCanvasElement,
  painted: PaintedPicture,
  ground: NonNullable<Props['ground']>,
): void => {
  const alone = document.createElement('canvas')
  putPicture(alone, painted)
  canvas.width = painted.width
  canvas.height = painted.height
  const pen = canvas.getContext('2d')
  if (!pen) return
  ground(pen, painted)
  pen.drawImage(alone, 0, 0)
}

/** The whole arrangement, small, from one side. */
export const SmallView = (props: Props) => {
  const { document: design, width, height, lane, label, angle = FRONT, light = 'daylight', ground } = props
  const canvas = useRef<HTMLCanvasElement>(null)
  const filled = useRef(false)
  const { turn, pitch } = angle
  const view = useMemo(() => ({ turn, pitch }), [turn, pitch])
  useEffect(() => {
    let live = true
    const shown = canvas.current
    // For tests: a canvas can't be asked what is on it.
    if (shown) delete shown.dataset.shown
    const ratio = Math.min(2, window.devicePixelRatio || 1)
    const frame = { width: Math.round(width * ratio), height: Math.round(height * ratio) }
    const show = async () => {
      // Once a picture stands there, a sketch of the next one would only flicker.
      const levels = filled.current ? (['draft', 'fine'] as const) : (['sketch', 'draft', 'fine'] as const)
      for (const level of levels) {
        const sketch = level === 'sketch'
        const options = { quality: sketch ? 'draft' : level, sketch, section: false, vessel: 'own', light } as const
        const picture = await painter().paint(lane, design, view, frame, options)
        if (!live || !picture) return
        if (canvas.current && ground) putOnGround(canvas.current, picture, ground)
        else if (canvas.current) putPicture(canvas.current, picture)
        filled.current = true
        if (canvas.current) canvas.current.dataset.shown = level
      }
    }
    show().catch(() => undefined)
    return () => {
      live = false
    }
  }, [design, view, width, height, lane, light, ground])
  return (
    <canvas
      ref={canvas}
      className="small-view"
      style={{ width: '100%', maxWidth: width, aspectRatio: `${width} / ${height}` }}
      {...(label ? { role: 'img', 'aria-label': label } : { 'aria-hidden': true })}
    />
  )
}
