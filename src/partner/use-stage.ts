import { type RefObject, useEffect, useRef, useState } from 'react'
import type { Arrangement } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import { bareTable, createStage } from './draw-stage.ts'
import type { Ask, Port, Reply, View } from './protocol.ts'
import { createTurntable, type Seen, type Turntable } from './turntable.ts'

/** Opens the way to a painter; with `broken`, one that needs no worker. `onBroken` is called should it fail. */
export type OpenPort = (broken: boolean, onBroken: () => void) => Port<Ask, Reply>

/** How the painting stands: nothing is to be seen yet, something is, or in words why nothing will be. */
export type Painting = 'waiting' | 'seen' | { failed: string }

/** Keeps the canvas painted: with the view, the size of the canvas and the dots of the screen. */
export const useStage = (
  canvas: RefObject<HTMLCanvasElement | null>,
  open: OpenPort,
  documents: Arrangement[],
  view: View,
  moving: boolean,
): Painting => {
  const table = useRef<Turntable | null>(null)
  const [painting, setPainting] = useState<Painting>('waiting')
  const shown = useRef({ view, moving })
  shown.current = { view, moving }
  useEffect(() => {
    const element = canvas.current
    const design = documents[0]
    if (!element || !design) return
    const { table: top, linen } = design.setting
    const draw = createStage(element, { resolved: resolveArrangement(design), scene: bareTable(top, linen) })
    const ratio = (): number => Math.min(2, window.devicePixelRatio || 1)
    let newest: Seen | null = null
    const show = (seen: Seen): void => {
      newest = seen
      draw(seen, ratio())
      element.dataset.level = seen.level
      element.dataset.turn = String(seen.view.turn)
      setPainting('seen')
    }
    const turntable = createTurntable(open, documents, show, (failed) => newest ?? setPainting({ failed }))
    table.current = turntable
    const refit = (): void => {
      turntable.resize(element.clientWidth, element.clientHeight, ratio())
      if (newest) draw(newest, ratio())
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
  return painting
}
