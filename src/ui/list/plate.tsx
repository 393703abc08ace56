import { useEffect, useRef, useState } from 'react'
import { painter } from '../painter.ts'

interface Props {
  plant: string
  colour: string
  openness?: number
  /** CSS px, the longer side. */
  size?: number
  /** With its stem; else the head alone. */
  whole?: boolean
}

/** A small drawing of one cut stem, made in the worker; decorative, the words beside it say the same. */
export const Plate = ({ plant, colour, openness = 0.85, size = 28, whole = false }: Props) => {
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
        // In a list the head alone: a square from the top as wide as the head, or half as tall as a spike.
        const { width, height } = picture
        const side = whole ? height : Math.max(width, Math.round(height * 0.52))
        to.width = whole ? width : side
        to.height = Math.min(side, height)
        const image = new ImageData(new Uint8ClampedArray(picture.rgba), width, height)
        to.getContext('2d')?.putImageData(image, Math.floor((to.width - width) / 2), 0)
        setDone(true)
      })
    return () => {
      live = false
    }
  }, [plant, colour, openness, size, whole])
  return (
    <span className="plate" style={{ width: size, height: size }} aria-hidden="true">
      <canvas ref={canvas} style={{ visibility: done ? 'visible' : 'hidden' }} />
    </span>
  )
}
