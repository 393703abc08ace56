import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react'
import type { Arrangement, Light } from '../arrangement/index.ts'
import { LIGHT_WORDS } from './tell.ts'
import { dragged, PRESS, STEP, sideWords, snapped } from './turns.ts'
import { type OpenPort, useStage } from './use-stage.ts'

interface Props {
  documents: Arrangement[]
  which: number
  light: Light
  /** The drawing in words. */
  words: string
  /** Width to height. */
  aspect: number
  open: OpenPort
}

/** The drawing, that turns under a finger, by two buttons, by a slider and by the arrow keys. */
export const Stage = ({ documents, which, light, words, aspect, open }: Props) => {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [turn, setTurn] = useState(0)
  const [moving, setMoving] = useState(false)
  const hold = useRef<{ x: number; turn: number } | null>(null)
  const painting = useStage(canvas, open, documents, { which, turn, light }, moving)

  const by = (degrees: number): void => setTurn((now) => snapped(now + degrees))
  const onKey = (event: KeyboardEvent): void => {
    const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key]
    if (way === undefined || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    by(way * (event.target instanceof HTMLInputElement ? STEP : PRESS))
  }
  const release = (event: PointerEvent): void => {
    if (!hold.current) return
    // A finger that was taken away by the page's own scrolling leaves the drawing as it was.
    if (event.type === 'pointercancel') setTurn(hold.current.turn)
    hold.current = null
    setMoving(false)
  }
  const side = sideWords(turn)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys of the buttons and the slider inside, caught at one place
    <div className="stage" onKeyDown={onKey}>
      <canvas
        ref={canvas}
        role="img"
        style={{ aspectRatio: Math.min(2, Math.max(0.7, aspect)) }}
        aria-label={`${words}. Seen ${side}.`}
        onPointerDown={(event) => {
          if (event.button !== 0 || !event.isPrimary) return
          event.currentTarget.setPointerCapture(event.pointerId)
          hold.current = { x: event.clientX, turn }
          setMoving(true)
        }}
        onPointerMove={(event) => {
          if (hold.current && event.isPrimary)
            setTurn(dragged(hold.current.turn, event.clientX - hold.current.x, event.currentTarget.clientWidth))
        }}
        onPointerUp={release}
        onPointerCancel={release}
      />
      <div className="turn">
        <button type="button" aria-label="Turn it to the left" onClick={() => by(-PRESS)}>
          ‹
        </button>
        <label>
          <span className="unseen">Turn it round</span>
          <input
            type="range"
            min={0}
            max={360 - STEP}
            step={STEP}
            value={turn}
            aria-valuetext={`${Math.round(turn)} degrees, seen ${side}`}
            onPointerDown={() => setMoving(true)}
            onPointerUp={() => setMoving(false)}
            onPointerCancel={() => setMoving(false)}
            onChange={(event) => setTurn(snapped(Number(event.target.value)))}
          />
        </label>
        <button type="button" aria-label="Turn it to the right" onClick={() => by(PRESS)}>
          ›
        </button>
      </div>
      <p className="side">
        {painting === 'waiting' ? 'It is being drawn …' : `seen ${side}, in ${LIGHT_WORDS[light]}`}
        <span className="hint by-finger">Turn it with a finger, or here.</span>
        <span className="hint by-mouse">Turn it by dragging, or here.</span>
      </p>
      {typeof painting === 'object' ? (
        <p role="alert" className="problem">
          It can’t be drawn here: {painting.failed}. Its flowers and colours are listed below.
        </p>
      ) : null}
    </div>
  )
}
