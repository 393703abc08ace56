import { useEffect, useRef, useState } from 'react'
import type { Arrangement } from '../../../arrangement/index.ts'
import { painter } from '../../painter.ts'
import { type Faces, paintSheet } from '../../picture/paint.ts'
import { rastersOf } from '../../picture/rasters.ts'
import type { Laid } from '../../picture/types.ts'

interface Props {
  document: Arrangement
  laid: Laid
  faces: Faces
  /** Tells this page's drawing from others. */
  lane: string
  label: string
}

/** Dots across a page of the preview. Ours. */
const ACROSS = 620

/** A page as it will be printed, small. */
export const SheetPreview = ({ document, laid, faces, lane, label }: Props) => {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [state, setState] = useState<'drawing' | 'drawn' | 'failed'>('drawing')
  useEffect(() => {
    let live = true
    const scale = ACROSS / laid.sheet.width
    const show = async (): Promise<void> => {
      const painted = await rastersOf({ document, laid, painter: painter(), scale, lane })
      if (!live || !painted || !canvas.current) return
      paintSheet(canvas.current, { laid, scale }, painted, faces)
      setState('drawn')
    }
    show().catch(() => live && setState('failed'))
    return () => {
      live = false
    }
  }, [document, laid, faces, lane])
  return (
    <figure className="sheet-page" aria-busy={state === 'drawing'}>
      <canvas
        ref={canvas}
        role="img"
        aria-label={label}
        style={{ aspectRatio: `${laid.sheet.width} / ${laid.sheet.height}` }}
      />
      <figcaption>{state === 'failed' ? `${label}: it could not be drawn here` : label}</figcaption>
    </figure>
  )
}
