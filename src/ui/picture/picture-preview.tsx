import { useEffect, useRef, useState } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { painter } from '../painter.ts'
import { type Faces, paintSheet } from './paint.ts'
import { makeReady, PREVIEW_LANE, rastersOf } from './rasters.ts'
import type { Laid } from './types.ts'

interface Props {
  document: Arrangement
  laid: Laid
  faces: Faces
  /** Id of the text that says the same. */
  describedBy: string
}

/** Steps of the preview's width: a window that is being pulled doesn't ask for a drawing at every pixel. CSS px; ours. */
const STEP = 80

/** The sheet at the size there is. */
export const PicturePreview = ({ document, laid, faces, describedBy }: Props) => {
  const frame = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const [width, setWidth] = useState(0)
  const [state, setState] = useState<'drawing' | 'drawn' | 'failed'>('drawing')

  useEffect(() => {
    const box = frame.current
    if (!box) return
    const watch = new ResizeObserver(() => setWidth(Math.ceil(box.clientWidth / STEP) * STEP))
    watch.observe(box)
    return () => watch.disconnect()
  }, [])

  useEffect(() => {
    if (width === 0) return
    let live = true
    setState('drawing')
    const scale = Math.min(1, (width * Math.min(2, window.devicePixelRatio || 1)) / laid.sheet.width)
    // Drawn beside the one that is seen, so that nothing flickers.
    const next = window.document.createElement('canvas')
    const subject = { document, laid, painter: painter() }
    const show = async (): Promise<void> => {
      const painted = await rastersOf({ ...subject, scale, lane: PREVIEW_LANE })
      const seen = canvas.current
      if (!live || !painted || !seen) return
      paintSheet(next, { laid, scale }, painted, faces)
      seen.width = next.width
      seen.height = next.height
      seen.getContext('2d')?.drawImage(next, 0, 0)
      setState('drawn')
      makeReady(subject)
    }
    show().catch(() => {
      if (live) setState('failed')
    })
    return () => {
      live = false
    }
  }, [document, laid, faces, width])

  return (
    <div
      className="picture-preview"
      data-size={laid.sheet.name}
      ref={frame}
      aria-busy={state === 'drawing'}
      style={{ aspectRatio: `${laid.sheet.width} / ${laid.sheet.height}` }}
    >
      <canvas ref={canvas} role="img" aria-label="The picture to send" aria-describedby={describedBy} />
      {state === 'drawn' ? null : (
        <p className="picture-state">{state === 'drawing' ? 'Drawing …' : 'The picture could not be drawn here.'}</p>
      )}
    </div>
  )
}
