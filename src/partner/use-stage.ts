import { type RefObject, useEffect, useRef } from 'react'
import type { Arrangement } from '../arrangement/index.ts'
import { vesselHalfWidth } from '../geometry/index.ts'
import { drawStage } from './draw-stage.ts'
import type { Ask, Port, Reply, View } from './protocol.ts'
import { createTurntable, type Seen, type Turntable } from './turntable.ts'

/** Opens the way to a painter; with `broken`, one that needs no worker. `onBroken` is called should it fail. */
export type OpenPort = (broken: boolean, onBroken: () => void) => Port<Ask, Reply>

/** Keeps the canvas painted: with the view, the size of the canvas and the dots of the screen. */
export const useStage = (
  canvas: RefObject<HTMLCanvasElement | null>,
  open: OpenPort,
  documents: Arrangement[],
  view: View,
  moving: boolean,
): void => {
  const table = useRef<Turntable | null>(null)
  const shown = useRef({ view, moving })
  shown.current = { view, moving }
  useEffect(() => {
    const element = canvas.current
    const design = documents[0]
    if (!element || !design) return
    const { vessel, setting } = design
    const ground = { table: setting.table, foot: vesselHalfWidth(vessel, 0), height: vessel.height }
    const ratio = (): number => Math.min(2, window.devicePixelRatio || 1)
    let newest: Seen | null = null
    const turntable = createTurntable(open, documents, (seen) => {
      newest = seen
      drawStage(element, seen, ground, ratio())
      element.dataset.level = seen.level
      element.dataset.turn = String(seen.view.turn)
    })
    table.current = turntable
    const refit = (): void => {
      turntable.resize(element.clientWidth, element.clientHeight, ratio())
      if (newest) drawStage(element, newest, ground, ratio())
    }
    const watcher = new ResizeObserver(refit)
    watcher.observe(element)
    refit()
    turntable.show(shown.current.view, shown.current.moving)
    return () => {
      watcher.disconnect()
      turntable.stop()
      table.current = null
    }
  }, [canvas, open, documents])
  const { which, turn, light } = view
  useEffect(() => table.current?.show({ which, turn, light }, moving), [which, turn, light, moving])
}
