import { useEffect, useRef } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import type { Frame } from '../../drawing/index.ts'
import type { ReadingId } from '../../readings/index.ts'
import { turnTo, useStudio } from '../../state/index.ts'
import { painter } from '../painter.ts'
import { putPicture } from '../small-view.tsx'
import { tellSides, unitOfSides } from './words.ts'

/** The sides that are read: every 30°. Outlines from opposite sides mirror each other, colours do not. */
const STEP = 30
const SIDES = Array.from({ length: 360 / STEP }, (_, i) => i * STEP)
const WIDTH = 62
const HEIGHT = 48
/** The small ones wait until the hand rests. Ours. */
const REST_MS = 350

/** One frame that holds every side, so that they can be compared; null when a newer document has overtaken it. */
const frameForAll = async (document: Arrangement, ratio: number): Promise<Frame | null> => {
  const angles = SIDES.map((turn) => ({ turn, pitch: 0 }))
  const boxes = await painter().boxes('round', document, angles)
  if (!boxes) return null
  const half = Math.max(...boxes.flatMap((b) => [-b.left, b.right]))
  const [bottom, top] = [Math.min(...boxes.map((b) => b.bottom)), Math.max(...boxes.map((b) => b.top))]
  const scale = 0.96 * ratio * Math.min(WIDTH / (2 * half), HEIGHT / (top - bottom))
  const [w, h] = [(WIDTH * ratio) / scale / 2, (HEIGHT * ratio) / scale / 2]
  return { left: -w, right: w, bottom: (bottom + top) / 2 - h, top: (bottom + top) / 2 + h, scale }
}

/** All the way round, in small, with a reading's value from each side; pressing one turns the sheet. */
export const AllTheWayRound = ({ of }: { of: ReadingId }) => {
  const document = useStudio((s) => s.document)
  const turn = useStudio((s) => s.turn)
  const units = useStudio((s) => s.units)
  const ways = useStudio((s) => s.readings.find((r) => r.id === of)?.ways)
  const canvases = useRef<(HTMLCanvasElement | null)[]>([])
  useEffect(() => {
    let live = true
    const show = async (): Promise<void> => {
      const frame = await frameForAll(document, Math.min(2, window.devicePixelRatio || 1))
      if (!live || !frame) return
      for (const [i, side] of SIDES.entries()) {
        const options = { quality: 'draft', section: false, vessel: 'own' } as const
        const picture = await painter().paint('round', document, { turn: side, pitch: 0 }, frame, options)
        // Overtaken by a newer document, which paints them all.
        if (!live || !picture) return
        const canvas = canvases.current[i]
        if (canvas) putPicture(canvas, picture)
      }
    }
    const timer = setTimeout(() => void show().catch(() => undefined), REST_MS)
    return () => {
      live = false
      clearTimeout(timer)
    }
  }, [document])
  const nearest = (Math.round(turn / STEP) * STEP) % 360
  const told = ways ? tellSides(ways, units) : []
  return (
    <section className="round" aria-labelledby="round-head">
      <div className="row-line">
        <h3 id="round-head">All the way round</h3>
        <span className="quiet">{ways ? `${ways.name}${unitOfSides(ways, units)}` : 'press one to turn'}</span>
      </div>
      <ul>
        {SIDES.map((side, i) => (
          <li key={side}>
            <button
              type="button"
              aria-pressed={side === nearest}
              aria-label={`${side}°, turn the sheet to this side${told[i] ? `: ${told[i].words}` : ''}`}
              onClick={() => turnTo(side)}
            >
              <canvas
                ref={(canvas) => {
                  canvases.current[i] = canvas
                }}
                width={WIDTH}
                height={HEIGHT}
              />
              {side}° <span className={`side-value${told[i]?.worst ? ' worst' : ''}`}>{told[i]?.figure ?? '–'}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
