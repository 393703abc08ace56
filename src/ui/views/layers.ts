import Konva from 'konva/lib/Core.js'
import type { Layer } from 'konva/lib/Layer.js'
import type { Pen } from './pen.ts'

/** Two canvases one over the other, drawn with the next frame when asked to. */
export interface Layers {
  /** What stands, and what may change while the hand moves. */
  still(): void
  live(): void
  /** CSS px, and device px to one of them. */
  size(width: number, height: number, ratio: number): void
  stop(): void
}

/**
 * Lays the two layers of the views into an element. Konva keeps canvas, size and frame; what is drawn is one shape a
 * layer, so its binding for React (a second reconciler, a tenth of all scripts) is left out.
 */
export const layInto = (container: HTMLDivElement, draw: { still(pen: Pen): void; live(pen: Pen): void }): Layers => {
  const stage = new Konva.Stage({ container, width: 1, height: 1, listening: false })
  const layerOf = (paint: (pen: Pen) => void): Layer => {
    const layer = new Konva.Layer({ listening: false })
    layer.add(new Konva.Shape({ listening: false, sceneFunc: (context) => paint(context._context as Pen) }))
    stage.add(layer)
    return layer
  }
  const still = layerOf(draw.still)
  const live = layerOf(draw.live)
  const redraw = (): void => {
    still.batchDraw()
    live.batchDraw()
  }
  return {
    still: () => still.batchDraw(),
    live: () => live.batchDraw(),
    size: (width, height, ratio) => {
      stage.size({ width, height })
      for (const layer of [still, live]) layer.getCanvas().setPixelRatio(ratio)
      redraw()
    },
    stop: () => stage.destroy(),
  }
}
