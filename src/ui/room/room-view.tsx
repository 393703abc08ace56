import { useEffect, useMemo, useRef } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { underLight } from '../../colour/index.ts'
import { type Layer, roomBox, roomMarks, type Scene, wallIn } from '../../drawing/index.ts'
import type { Resolved } from '../../geometry/index.ts'
import { drawMarks } from '../draw-marks.ts'
import { painter } from '../painter.ts'
import { putPicture } from '../small-view.tsx'

interface Props {
  design: Arrangement
  resolved: Resolved
  scene: Scene
  /** CSS px; the height follows from the table. */
  width: number
  label: string
}

/** From a little above, so that the whole table is seen; degrees. Ours. */
const ANGLE = { turn: 0, pitch: 16 }
/** Wall beside and over the table, and cloth under its edge, mm. Ours. */
const AIR_mm = 40
const CLOTH_mm = 110
/** No narrower than this for its height, so that a small table leaves room for what can be chosen. Ours. */
const WIDE = 2.3
/** From one line of hatching to the next, CSS px. Ours. */
const HATCH = 3.2
/** A hairline, CSS px at so many CSS px per mm: thinner on a long table, which is small. Ours. */
const hairAt = (scale: number): number => Math.min(0.8, 0.25 + 0.85 * scale)
/** A petal may reach a few mm farther than its box says; ours. */
const PAD_mm = 8

type Rect = ReturnType<typeof roomBox>

/** The table and the arrangement on it, as wide as either is. */
const frameOf = (scene: Scene, vesselHeight: number, still: Rect): Rect => {
  const table = roomBox(scene, ANGLE, vesselHeight)
  const bottom = Math.min(table.bottom - CLOTH_mm, still.bottom - AIR_mm)
  const top = Math.max(table.top, still.top) + AIR_mm
  const half = Math.max(
    Math.max(table.right, still.right) + AIR_mm,
    AIR_mm - Math.min(table.left, still.left),
    (WIDE * (top - bottom)) / 2,
  )
  return { left: -half, right: half, bottom, top }
}

/** The design on its table in its light, from a little above: the flowers painted, what stands round them in thin ink. */
export const RoomView = ({ design, resolved, scene, width, label }: Props) => {
  const canvas = useRef<HTMLCanvasElement>(null)
  const { light } = design.setting
  const ratio = Math.min(2, window.devicePixelRatio || 1)
  const shown = useMemo(() => ({ design, resolved, scene, light }), [design, resolved, scene, light])
  useEffect(() => {
    let live = true
    const show = async () => {
      const { design, resolved, scene, light } = shown
      const [still] = (await painter().boxes('room', design, [ANGLE])) ?? []
      const at = canvas.current
      if (!live || !still || !at) return
      const frame = frameOf(scene, design.vessel.height, still)
      const scale = (width * ratio) / (frame.right - frame.left)
      const size = [Math.round(width * ratio), Math.round((frame.top - frame.bottom) * scale)] as const
      const marks = roomMarks(resolved, scene, ANGLE, { step_mm: (HATCH * ratio) / scale, wall: wallIn(light) })
      const part = {
        left: still.left - PAD_mm,
        right: still.right + PAD_mm,
        bottom: still.bottom - PAD_mm,
        top: still.top + PAD_mm,
        scale,
      }
      for (const quality of ['draft', 'fine'] as const) {
        const picture = await painter().paint('room', design, ANGLE, part, {
          quality,
          section: false,
          vessel: 'own',
          light,
        })
        if (!live || !picture || !canvas.current) return
        const alone = document.createElement('canvas')
        putPicture(alone, picture)
        at.width = size[0]
        at.height = size[1]
        const pen = at.getContext('2d')
        if (!pen) return
        pen.fillStyle = underLight(wallIn(light), light)
        pen.fillRect(0, 0, at.width, at.height)
        const draw = (layer: Layer): void =>
          drawMarks(
            pen,
            marks.filter((m) => m.layer === layer),
            { ...frame, scale },
            light,
            hairAt(scale / ratio) * ratio,
          )
        draw('behind')
        pen.drawImage(alone, Math.round((part.left - frame.left) * scale), Math.round((frame.top - part.top) * scale))
        draw('before')
        at.dataset.shown = quality
      }
    }
    show().catch(() => undefined)
    return () => {
      live = false
    }
  }, [shown, width, ratio])
  return <canvas ref={canvas} className="room-view" role="img" aria-label={label} />
}
