import { useEffect, useRef, useState } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { painter } from '../painter.ts'
import { type Faces, paintSheet } from './paint.ts'
import { type Item, SHEET } from './types.ts'

interface Props {
  document: Arrangement
  items: readonly Item[]
  faces: Faces
  /** Id of the text that says the same. */
  describedBy: string
}

/** Steps of the preview's width: a window that is being pulled doesn't ask for a drawing at every pixel. CSS px; ours. */
const STEP = 80

/** The sheet at the size there is. */
export const PicturePreview = ({ document, items, faces, describedBy }: Props) => {
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
    const scale = Math.min(1, (width * Math.min(2, window.devicePixelRatio || 1)) / SHEET.width)
    // Drawn beside the one that is seen, so that nothing flickers.
    const next = window.document.createElement('canvas')
    paintSheet(next, { document, items, faces, painter: painter(), scale, lane: 'picture preview' }).then(
      (drawn) => {
        const seen = canvas.current
        if (!live || !drawn || !seen) return
        seen.width = next.width
        seen.height = next.height
        seen.getContext('2d')?.drawImage(next, 0, 0)
        setState('drawn')
      },
      () => {
        if (live) setState('failed')
      },
    )
    return () => {
      live = false
    }
  }, [document, items, faces, width])

  return (
    <div className="picture-preview" ref={frame} aria-busy={state === 'drawing'}>
      <canvas ref={canvas} role="img" aria-label="The picture to send" aria-describedby={describedBy} />
      {state === 'drawn' ? null : (
        <p className="picture-state">{state === 'drawing' ? 'Drawing …' : 'The picture could not be drawn here.'}</p>
      )}
    </div>
  )
}
