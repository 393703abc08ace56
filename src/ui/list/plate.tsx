import { useEffect, useRef, useState } from 'react'
import { painter } from '../painter.ts'

interface Props {
  plant: string
  colour: string
  openness?: number
  /** CSS px, the longer side. */
  size?: number
}

/** A small drawing of one cut stem, made in the worker; decorative, the words beside it say the same. */
export const Plate = ({ plant, colour, openness = 0.85, size = 28 }: Props) => {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [done, setDone] = useState(false)
  useEffect(() => {
    let live = true
    // A plate is as tall as its stem is long; it shrinks to the space it has, so this only sets how sharp it is.
    const sharp = (size * Math.min(2, window.devicePixelRatio || 1)) / 60
    painter()
      .plate(plant, colour, openness, sharp)
      .then((picture) => {
        const to = canvas.current
        if (!live || !picture || !to) return
        // The head and a little of the stem: a square from the top, as wide as the head, taller for spikes.
        const side = Math.max(picture.width, Math.min(picture.height, Math.round(picture.width * 1.7)))
        to.width = side
        to.height = Math.min(side, picture.height)
        const image = new ImageData(new Uint8ClampedArray(picture.rgba), picture.width, picture.height)
        to.getContext('2d')?.putImageData(image, Math.floor((side - picture.width) / 2), 0)
        setDone(true)
      })
    return () => {
      live = false
    }
  }, [plant, colour, openness, size])
  return (
    <span className="plate" style={{ width: size, height: size }} aria-hidden="true">
      <canvas ref={canvas} style={{ visibility: done ? 'visible' : 'hidden' }} />
    </span>
  )
}
